package candlebench.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class IndicationTest {

  @ParameterizedTest
  @EnumSource
  void indication_to_mass_and_back_gives_the_same_digits(MassUnit unit) {
    SplittableRandom random = new SplittableRandom(unit.ordinal());
    int finest =
        unit == MassUnit.OUNCE || unit == MassUnit.GRAIN ? 3 : unit == MassUnit.POUND ? 7 : 4;
    for (int decimals = 0; decimals <= finest; decimals++) {
      for (int n = 0; n < 500; n++) {
        long digits = random.nextLong(1, 1_000 * (long) Math.pow(10, decimals));
        String number = java.math.BigDecimal.valueOf(
                random.nextBoolean() ? digits : -digits, decimals)
            .toPlainString();
        Mass mass = Indication.of(number, unit).mass(unit);
        assertThat(mass.text(unit, decimals)).isEqualTo(number);
      }
    }
  }

  @Test
  void eighths_of_an_ounce_come_back_too() {
    for (int eighths = 0; eighths < 800; eighths++) {
      String number = java.math.BigDecimal.valueOf(eighths * 125L, 3).toPlainString();
      assertThat(Indication.of(number, MassUnit.OUNCE).mass(MassUnit.OUNCE).text(MassUnit.OUNCE, 3))
          .isEqualTo(number);
    }
  }

  @Test
  void the_number_stays_as_shown() {
    Indication shown = Indication.of("-0.00", MassUnit.GRAM);
    assertThat(shown).hasToString("-0.00 g");
    assertThat(shown.mass(MassUnit.GRAM)).isEqualTo(Mass.ZERO);
    assertThat(shown.decimals()).isEqualTo(2);
  }

  @Test
  void a_unit_that_was_not_named_is_the_one_given() {
    assertThat(Indication.withoutUnit("2.0").mass(MassUnit.KILOGRAM))
        .isEqualTo(Mass.ofGrams("2000"));
    assertThat(Indication.of("2.0", MassUnit.GRAM).mass(MassUnit.KILOGRAM))
        .isEqualTo(Mass.ofGrams("2"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "-", "+1", "01", "1.", ".5", "1e3", " 1", "1 ", "1,5", "--1", "1.2.3", "٣"})
  void what_is_no_plain_number_is_refused(String number) {
    assertThatThrownBy(() -> Indication.withoutUnit(number))
        .hasMessageContaining("plain decimal text");
  }
}
