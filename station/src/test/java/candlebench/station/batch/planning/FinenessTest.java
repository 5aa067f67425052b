package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class FinenessTest {

  private static Fineness fineness(String d, String s, String grams, Fraction tolerance) {
    Mass step = Mass.ofGrams(d);
    BenchScale scale = new BenchScale(
        "scale", step.times(10_000), new Division(step), Optional.empty(), step, Mass.ofGrams(s));
    return new Fineness(scale, Mass.ofGrams(grams), tolerance);
  }

  private static Fraction share(String decimal) {
    return Fraction.percent(new BigDecimal(decimal).movePointRight(2).toPlainString());
  }

  @ParameterizedTest(name = "d = {0} g, s = {1} g, {2}: {4}")
  @CsvFileSource(
      resources = "min-weight.tsv",
      delimiter = '\t',
      numLinesToSkip = 3,
      encoding = "UTF-8",
      quoteCharacter = '\0')
  void the_minimum_weight_is_the_published_one(
      String d, String s, String tolerance, String least, String source) {
    Fineness at = fineness(d, s, least, share(tolerance));
    assertThat(at.minimumWeight()).isEqualTo(Mass.ofGrams(least));
    assertThat(at.heavyEnough()).isTrue();
    Mass under = Mass.ofGrams(least).minus(new Mass(1));
    assertThat(new Fineness(at.scale(), under, at.tolerance()).heavyEnough()).isFalse();
  }

  @Test
  void six_grams_of_oil_to_1_percent_cannot_be_weighed_in_steps_of_1_g() {
    Fineness coarse = fineness("1", "0", "6.3", share("0.01"));
    assertThat(coarse.broken()).contains(Rule.STEP_WITHIN_TOLERANCE);
    assertThat(coarse.widestStep()).isEqualTo(Mass.ofGrams("0.021"));
    assertThat(coarse.minimumWeight()).isEqualTo(Mass.ofGrams("82"));
    assertThat(fineness("0.01", "0", "6.3", share("0.01")).suffices()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"0.1, 0, true", "0.1667, 0, false", "0.1, 0.25, true", "0.1, 0.2501, false"})
  void fifty_six_grams_to_half_a_gram(String d, String s, boolean suffices) {
    Fraction tolerance = Fraction.ratio(Mass.ofGrams("0.5"), Mass.ofGrams("56"));
    assertThat(fineness(d, s, "56", tolerance).suffices()).isEqualTo(suffices);
  }

  @Test
  void a_step_of_exactly_a_third_of_the_tolerance_is_fine_enough() {
    assertThat(fineness("0.2", "0", "60", share("0.01")).stepFits()).isTrue();
    assertThat(fineness("0.2", "0", "59.999999999999", share("0.01")).stepFits())
        .isFalse();
  }
}
