package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Certified values: NIST Statistical Reference Datasets, univariate summary statistics. */
class SpreadTest {

  private static Mass milligrams(String number) {
    return Mass.of(number, MassUnit.MILLIGRAM);
  }

  private static Spread alternating(String first, String low, String high) {
    List<Mass> masses = new ArrayList<>();
    masses.add(milligrams(first));
    for (int i = 0; i < 500; i++) masses.addAll(List.of(milligrams(low), milligrams(high)));
    return Spread.of(masses);
  }

  @Test
  void three_large_numbers_NumAcc1() {
    Spread spread =
        Spread.of(List.of(milligrams("10000001"), milligrams("10000003"), milligrams("10000002")));
    assertThat(spread.mean()).contains(milligrams("10000002"));
    assertThat(spread.deviation()).contains(milligrams("1"));
  }

  @ParameterizedTest(name = "{0}: mean {1}")
  @CsvSource({
    "NumAcc3, 1000000.2, 1000000.1, 1000000.3",
    "NumAcc4, 10000000.2, 10000000.1, 10000000.3"
  })
  void a_small_spread_about_a_large_mean_is_exact(
      String name, String mean, String low, String high) {
    Spread spread = alternating(mean, low, high);
    assertThat(spread.count()).isEqualTo(1001);
    assertThat(spread.mean()).contains(milligrams(mean));
    assertThat(spread.deviation()).contains(milligrams("0.1"));
  }

  @Test
  void the_same_formula_in_floating_point_fails_where_ours_does_not() {
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < 1001; i++) {
      double x = i == 0 ? 10000000.2 : i % 2 == 1 ? 10000000.1 : 10000000.3;
      sum += x;
      squares += x * x;
    }
    assertThat((squares - sum * sum / 1001) / 1000).isNotCloseTo(0.01, within(0.005));
  }

  @Test
  void a_hundred_speeds_of_light_Michelso() throws IOException {
    List<Mass> masses = new ArrayList<>();
    try (BufferedReader lines = new BufferedReader(new InputStreamReader(
        SpreadTest.class.getResourceAsStream("nist-michelso.tsv"), StandardCharsets.UTF_8))) {
      for (String line : lines.lines().toList())
        if (Character.isDigit(line.charAt(0)))
          masses.add(Mass.of(line.split("\t")[1], MassUnit.KILOGRAM));
    }
    assertThat(masses).hasSize(100);
    assertThat(Spread.of(masses).mean()).contains(Mass.of("299.8524", MassUnit.KILOGRAM));
    assertThat(Spread.of(masses).deviation())
        .contains(Mass.of("0.0790105478190518", MassUnit.KILOGRAM));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void an_independent_library_finds_the_same(long seed) {
    Random random = new Random(seed);
    DescriptiveStatistics theirs = new DescriptiveStatistics();
    List<Mass> masses = new ArrayList<>();
    int count = 2 + random.nextInt(400);
    for (int i = 0; i < count; i++) {
      Mass mass = Mass.of(
          BigDecimal.valueOf(2270 + Math.round(random.nextGaussian() * 15), 1), MassUnit.GRAM);
      masses.add(mass);
      theirs.addValue(mass.roughGrams());
    }
    Spread ours = Spread.of(masses);
    assertThat(ours.mean().orElseThrow().roughGrams()).isCloseTo(theirs.getMean(), within(1e-9));
    assertThat(ours.deviation().orElseThrow().roughGrams())
        .isCloseTo(theirs.getStandardDeviation(), within(1e-9));
  }

  @Test
  void nothing_has_no_mean_and_one_weight_no_spread() {
    assertThat(Spread.NONE.mean()).isEmpty();
    Spread one = Spread.of(List.of(milligrams("7")));
    assertThat(one.mean()).contains(milligrams("7"));
    assertThat(one.deviation()).isEmpty();
  }

  @Test
  void a_mean_a_third_of_a_picogram_under_the_label_is_under_it() {
    Spread spread = Spread.of(List.of(new Mass(100), new Mass(100), new Mass(99)));
    assertThat(spread.mean()).contains(new Mass(100));
    assertThat(spread.meanIsLessThan(new Mass(100))).isTrue();
    assertThat(spread.meanIsLessThan(new Mass(99))).isFalse();
  }
}
