package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class VolumeTest {

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(
      resources = "volumes.tsv",
      delimiter = '\t',
      numLinesToSkip = 3,
      encoding = "UTF-8")
  void units_of_volume_have_their_published_sizes(String unit, String millilitres) {
    assertThat(Typed.volume("1 " + unit).millilitres()).isEqualByComparingTo(millilitres);
  }

  @Test
  void a_US_fluid_ounce_is_the_128th_part_of_231_cubic_inches() {
    BigDecimal cubicInch = new BigDecimal("2.54").pow(3);
    assertThat(VolumeUnit.US_FLUID_OUNCE.millilitres().multiply(new BigDecimal(128)))
        .isEqualByComparingTo(cubicInch.multiply(new BigDecimal(231)));
    assertThat(VolumeUnit.IMPERIAL_FLUID_OUNCE.millilitres().multiply(new BigDecimal(160)))
        .isEqualByComparingTo("4546.09");
  }

  /** Worked by hand: 8 of each of them. A fluid ounce of water weighs 1.04 oz, not 1. */
  @Test
  void eight_ounces_are_three_different_things() {
    assertThat(Typed.volume("8 US fl oz").millilitres()).isEqualByComparingTo("236.5882365");
    assertThat(Typed.volume("8 imp fl oz").millilitres()).isEqualByComparingTo("227.3045");
    assertThat(Typed.mass("8 oz")).isEqualTo(Mass.ofGrams("226.796185"));
    Mass water = Typed.volume("1 US fl oz").of(new Density(BigDecimal.ONE));
    assertThat(water.text(MassUnit.OUNCE, 2)).isEqualTo("1.04");
  }
}
