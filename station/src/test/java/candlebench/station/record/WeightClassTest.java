package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.station.batch.planning.AccuracyClass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Weights to check a scale with. */
class WeightClassTest {

  private static Mass milligrams(String milligrams) {
    return Mass.ofGrams(milligrams).times(1, 1000);
  }

  @ParameterizedTest
  @CsvFileSource(resources = "r111.tsv", delimiter = '\t', numLinesToSkip = 2, encoding = "UTF-8")
  void errors_are_those_of_table_1(
      String grams, String e2, String f1, String f2, String m1, String m2) {
    Mass nominal = Mass.ofGrams(grams);
    assertThat(WeightClass.E2.mostOff(nominal)).contains(milligrams(e2));
    assertThat(WeightClass.F1.mostOff(nominal)).contains(milligrams(f1));
    assertThat(WeightClass.F2.mostOff(nominal)).contains(milligrams(f2));
    assertThat(WeightClass.M1.mostOff(nominal)).contains(milligrams(m1));
    assertThat(WeightClass.M2.mostOff(nominal)).contains(milligrams(m2));
  }

  /** Derived from OIML R 76-1:2006, Table 6 and 3.7.1, and OIML R 111-1:2004, Table 1. */
  @ParameterizedTest
  @CsvSource({
    "III, 1, 500, M2",
    "III, 1, 1000, M2",
    "II, 0.1, 200, M1",
    "II, 0.1, 500, F2",
    "III, 0.1, 500, M1"
  })
  void the_coarsest_weight_that_will_do(
      AccuracyClass scale, String interval, String grams, WeightClass asked) {
    Mass nominal = Mass.ofGrams(grams);
    Mass verified = scale.errorInService(nominal, Mass.ofGrams(interval)).times(1, 2);
    assertThat(WeightClass.coarsestFor(nominal, verified)).contains(asked);
  }

  @Test
  void a_mass_that_is_no_weight_of_the_table_or_a_scale_too_fine_for_all_has_none() {
    assertThat(WeightClass.coarsestFor(Mass.ofGrams("300"), Mass.ofGrams("1"))).isEmpty();
    assertThat(WeightClass.coarsestFor(Mass.ofGrams("500"), milligrams("2"))).isEmpty();
  }
}
