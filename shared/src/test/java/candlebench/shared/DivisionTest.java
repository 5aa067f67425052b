package candlebench.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DivisionTest {
  private static final Division TENTH = new Division(Mass.ofGrams("0.1"));

  @ParameterizedTest
  @CsvSource({
    "695.52, 695.5",
    "60.48, 60.5",
    "0.05, 0",
    "0.15, 0.2",
    "-0.05, 0",
    "-60.48, -60.5",
    "62.5, 62.5"
  })
  void a_mass_is_shown_at_the_nearest_step(String exact, String shown) {
    assertThat(TENTH.nearest(Mass.ofGrams(exact))).isEqualTo(Mass.ofGrams(shown));
  }

  @Test
  void a_step_follows_from_the_decimals_shown() {
    assertThat(Division.ofDecimals(1, MassUnit.GRAM)).isEqualTo(TENTH);
    assertThat(Division.ofDecimals(3, MassUnit.KILOGRAM).step()).isEqualTo(Mass.ofGrams("1"));
    assertThat(Division.ofDecimals(0, MassUnit.GRAM).steps(3)).isEqualTo(Mass.ofGrams("3"));
  }

  @Test
  void a_step_of_nothing_is_refused() {
    assertThatThrownBy(() -> new Division(Mass.ZERO)).hasMessageContaining("scale's step");
  }
}
