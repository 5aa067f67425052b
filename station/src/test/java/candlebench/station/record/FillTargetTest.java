package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.record.FillTarget.Rule;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FillTargetTest {

  private static Mass g(double grams) {
    return Mass.of(BigDecimal.valueOf(Math.round(grams * 1e6), 6), MassUnit.GRAM);
  }

  /** Offsets of mean b and standard deviation s exactly: half of them b - x, half b + x. */
  private static Spread offsets(int even, double bias, double deviation) {
    double x = deviation * Math.sqrt((even - 1) / (double) even);
    List<Mass> masses = new ArrayList<>();
    for (int i = 0; i < even; i++) masses.add(g(bias + (i % 2 == 0 ? x : -x)));
    return Spread.of(masses);
  }

  @ParameterizedTest(name = "{0} fills, bias {1} g, spread {2} g, next {3}")
  @CsvSource({"12, 0, 1, 12", "6, -0.4, 0.8, 12", "40, 1.5, 2, 3", "6, 0, 6, 60"})
  void the_aim_is_the_prediction_limit_that_an_independent_library_gives(
      int count, double bias, double deviation, int next) {
    double t = new TDistribution(Math.min(count - 1, 30)).inverseCumulativeProbability(0.975);
    double forMean = 227 - bias + t * deviation * Math.sqrt(1.0 / next + 1.0 / count);
    double forSingle = 227 - 9 - bias + t * deviation * Math.sqrt(1 + 1.0 / count);
    FillTarget target =
        FillTarget.of(g(227), offsets(count, bias, deviation), next).orElseThrow();
    assertThat(target.aim().roughGrams())
        .isCloseTo(Math.max(forMean, forSingle), within(6e-4 * deviation + 1e-5));
    assertThat(target.rule())
        .isEqualTo(forSingle > forMean ? Rule.SINGLE_NOT_BELOW_T1 : Rule.MEAN_NOT_BELOW_LABEL);
  }

  @Test
  void about_one_spread_over_the_label_for_a_dozen_by_a_steady_maker() {
    FillTarget target = FillTarget.of(g(227), offsets(12, 0, 1), 12).orElseThrow();
    assertThat(target.overLabel().roughGrams()).isCloseTo(0.9, within(0.05));
    assertThat(target.rule()).isEqualTo(Rule.MEAN_NOT_BELOW_LABEL);
  }

  @Test
  void a_maker_who_pours_over_the_target_is_told_to_aim_lower() {
    FillTarget target = FillTarget.of(g(227), offsets(40, 2, 0.5), 12).orElseThrow();
    assertThat(target.aim()).isLessThan(g(227));
  }

  @Test
  void four_fills_say_too_little() {
    assertThat(FillTarget.of(g(227), offsets(4, 0, 1), 12)).isEmpty();
  }

  @Test
  void aimed_so_39_of_40_batches_keep_their_mean_by_simulation_seed_7() {
    Random random = new Random(7);
    int kept = 0;
    int batches = 4000;
    for (int i = 0; i < batches; i++) {
      Spread past = Spread.NONE;
      for (int k = 0; k < 10; k++) past = past.and(g(-0.3 + 1.2 * random.nextGaussian()));
      double aim = FillTarget.of(g(227), past, 12).orElseThrow().aim().roughGrams();
      double sum = 0;
      for (int k = 0; k < 12; k++) sum += aim - 0.3 + 1.2 * random.nextGaussian();
      if (sum / 12 >= 227) kept++;
    }
    // 97.5 % of 4000 is 3900; three standard deviations of that count are 30.
    assertThat(kept).isBetween(3870, 3930);
  }
}
