package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.station.batch.Loss;
import candlebench.station.record.LossLearnt.Sample;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What stays behind, by hand: 8 g in the pot and 0.3 g at each vessel. */
class LossLearntTest {

  private static Sample sample(int vessels, String lost) {
    return new Sample(vessels, Mass.ofGrams(lost));
  }

  private static Loss loss(String perPot, String perVessel) {
    return new Loss(Mass.ofGrams(perPot), Mass.ofGrams(perVessel));
  }

  @Test
  void batches_of_different_sizes_tell_the_pot_from_the_vessels() {
    assertThat(LossLearnt.fitted(
            List.of(sample(4, "9.2"), sample(10, "11"), sample(20, "14"), sample(12, "11.6"))))
        .isEqualTo(loss("8", "0.3"));
  }

  /** n = 2, 4, 6 lost 10, 9, 14 g: slope 1 and start 7, by the normal equations. */
  @Test
  void scatter_is_fitted_by_least_squares() {
    assertThat(LossLearnt.fitted(List.of(sample(2, "10"), sample(4, "9"), sample(6, "14"))))
        .isEqualTo(loss("7", "1"));
  }

  @Test
  void batches_of_one_size_tell_only_what_a_pot_loses() {
    assertThat(LossLearnt.fitted(List.of(sample(12, "11"), sample(12, "12"), sample(12, "13"))))
        .isEqualTo(loss("12", "0"));
  }

  @Test
  void no_loss_is_ever_negative() {
    assertThat(LossLearnt.fitted(List.of(sample(4, "12"), sample(20, "8"))))
        .isEqualTo(loss("10", "0"));
    assertThat(LossLearnt.fitted(List.of(sample(2, "1"), sample(4, "10"))).perPot())
        .isEqualTo(Mass.ZERO);
  }

  @Test
  void too_few_batches_teach_nothing() {
    assertThat(LossLearnt.of("any", List.of())).isEmpty();
  }
}
