package candlebench.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceTest {
  private static final Division TENTH = new Division(Mass.ofGrams("0.1"));

  @ParameterizedTest
  @CsvSource({
    "56.0, WITHIN",
    "55.5, WITHIN",
    "56.5, WITHIN",
    "55.4, UNDER",
    "56.6, OVER",
    "0, UNDER",
    "61, OVER",
    "56.500000000001, WITHIN",
    "55.499999999999, WITHIN",
  })
  void a_weight_is_judged_in_divisions_so_that_a_picogram_never_decides(
      String net, Verdict verdict) {
    Tolerance tolerance = Tolerance.ofGrams("0.5", "0.5");
    assertThat(tolerance.judge(Mass.ofGrams("56"), Mass.ofGrams(net), TENTH)).isEqualTo(verdict);
  }

  @Test
  void the_two_sides_are_their_own() {
    Tolerance fill = Tolerance.ofGrams("1", "3");
    assertThat(fill.judge(Mass.ofGrams("227"), Mass.ofGrams("229.9"), TENTH))
        .isEqualTo(Verdict.WITHIN);
    assertThat(fill.judge(Mass.ofGrams("227"), Mass.ofGrams("225.8"), TENTH))
        .isEqualTo(Verdict.UNDER);
  }

  @Test
  void an_allowance_below_zero_is_refused() {
    assertThatThrownBy(() -> Tolerance.ofGrams("-0.1", "0.5")).hasMessageContaining("zero or more");
  }
}
