package candlebench.station.view;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Sources of the factors: NIST SP 811 (2008), appendix B.8: pound (avoirdupois) 4.535 924 E-01 kg, ounce 2.834 952 E-02 kg;
 * NIST Handbook 44, appendix C: 1 pound = 453.592 37 grams exactly, 16 ounces to the pound.
 */
class FiguresTest {
  private static final Division TENTH = Division.ofDecimals(1, MassUnit.GRAM);

  @ParameterizedTest(name = "{0} g by steps of {1} {2} is {4} {3}")
  @CsvSource({
    "56.1,       0.1,   g,  g,     56.1,     56.1 g",
    "453.59237,  0.01,  g,  g,     453.59,   453.59 g",
    "453.59237,  0.1,   g,  kg,    0.4536,   0.4536 kg",
    "453.59237,  0.01,  oz, oz,    16.00,    16.00 oz",
    "453.59237,  0.01,  oz, lb:oz, 1:00.00,  1 lb 0.00 oz",
    "28.349523125, 0.005, oz, oz,  1.000,    1.000 oz",
    "453.6,      0.1,   g,  oz,    16.000,   16.000 oz",
    "56.1,       0.1,   g,  oz,    1.978,    1.978 oz",
    "700.4,      0.1,   g,  lb:oz, 1:08.706, 1 lb 8.706 oz",
    "56.1,       0.1,   g,  lb:oz, 0:01.978, 1.978 oz",
    "-56.1,      0.1,   g,  lb:oz, -0:01.978, -1.978 oz",
    "-0.04,      0.1,   g,  g,     0.0,      0.0 g",
    "-0.04,      0.1,   g,  lb:oz, 0:00.000, 0.000 oz",
    "453.59237,  1,     g,  oz,    16.02,    16.02 oz",
    "453.59237,  0.0005, oz, oz,   16.0000,  16.0000 oz",
    "100,        0.125, oz, oz,    3.500,    3.500 oz",
    "100,        0.1,   lb, oz,    3.2,      3.2 oz",
    "100,        0.005, oz, g,     99.9,     99.9 g",
    "12345.67,   5,     g,  kg,    12.345,   12.345 kg",
    "12345.67,   50,    g,  g,     12350,    12350 g",
  })
  void a_mass_is_shown_in_the_makers_unit_to_a_step_the_scale_can_show(
      String grams, String step, String of, String unit, String shown, String said) {
    MassUnit stepUnit = List.of(MassUnit.values()).stream()
        .filter(each -> each.symbol().equals(of))
        .findFirst()
        .orElseThrow();
    Figures figures = Figures.of(ShownUnit.named(unit), new Division(Mass.of(step, stepUnit)));
    assertThat(figures.text(Mass.ofGrams(grams))).isEqualTo(shown);
    assertThat(figures.sentence(Mass.ofGrams(grams))).isEqualTo(said);
  }

  @Test
  void the_step_is_the_scales_own_where_it_is_round_in_the_unit_and_else_no_coarser() {
    assertThat(step(ShownUnit.GRAM, TENTH)).isEqualTo("0.1 own");
    assertThat(step(ShownUnit.KILOGRAM, TENTH)).isEqualTo("0.0001 own");
    assertThat(step(ShownUnit.OUNCE, TENTH)).isEqualTo("0.002");
    assertThat(step(ShownUnit.POUND_OUNCE, Division.ofDecimals(0, MassUnit.GRAM)))
        .isEqualTo("0.02");
    assertThat(step(ShownUnit.OUNCE, new Division(Mass.of("0.005", MassUnit.OUNCE))))
        .isEqualTo("0.005 own");
    assertThat(step(ShownUnit.GRAM, new Division(Mass.of("0.005", MassUnit.OUNCE))))
        .isEqualTo("0.1");
  }

  @Test
  void a_division_more_on_the_scale_is_another_figure_in_every_unit() {
    Random random = new Random(44);
    for (ShownUnit unit : ShownUnit.values())
      for (String step : List.of("0.01", "0.02", "0.1", "0.5", "1", "2", "5")) {
        Division division = new Division(Mass.ofGrams(step));
        Figures figures = Figures.of(unit, division);
        for (int i = 0; i < 500; i++) {
          Mass mass = division.steps(random.nextInt(100_000));
          String figure = figures.text(mass);
          assertThat(figures.text(mass.plus(division.step())))
              .as(mass + " by " + step)
              .isNotEqualTo(figure);
          assertThat(ounces(unit, figure).subtract(inUnit(unit, mass)).abs())
              .as(figure)
              .isLessThanOrEqualTo(figures.step().divide(BigDecimal.valueOf(2)));
        }
      }
  }

  @Test
  void an_exact_target_keeps_two_decimals_more() {
    assertThat(Figures.of(ShownUnit.GRAM, TENTH).exact(Mass.ofGrams("56.032"))).isEqualTo("56.032");
    assertThat(Figures.of(ShownUnit.GRAM, TENTH).exact(Mass.ofGrams("56"))).isEqualTo("56.0");
    assertThat(Figures.of(ShownUnit.POUND_OUNCE, TENTH).exact(Mass.of("17.5", MassUnit.OUNCE)))
        .isEqualTo("1:01.500");
  }

  /** A figure as a number again: pounds and ounces in ounces. */
  private static BigDecimal ounces(ShownUnit unit, String figure) {
    if (unit != ShownUnit.POUND_OUNCE) return new BigDecimal(figure);
    String[] parts = figure.split(":");
    return new BigDecimal(parts[0]).multiply(BigDecimal.valueOf(16)).add(new BigDecimal(parts[1]));
  }

  private static BigDecimal inUnit(ShownUnit unit, Mass mass) {
    String grams = switch (unit) {
      case GRAM -> "1";
      case KILOGRAM -> "1000";
      case OUNCE, POUND_OUNCE -> "28.349523125";
    };
    return new BigDecimal(mass.grams())
        .divide(new BigDecimal(grams), new java.math.MathContext(30));
  }

  private static String step(ShownUnit unit, Division division) {
    Figures figures = Figures.of(unit, division);
    return figures.stepText() + (figures.scalesOwn() ? " own" : "");
  }
}
