package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.station.batch.planning.LoadUncertainty.Net;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class LoadUncertaintyTest {

  private static Offset<Double> half(double lastDigit) {
    return Offset.offset(lastDigit / 2);
  }

  @Test
  void a_reading_in_steps_of_1_g_has_a_variance_of_a_twelfth_of_a_square_gram() {
    // JCGM 100:2008, F.2.2.1: u² = (1 g)²/12, u = 0.29 g.
    BigDecimal variance = PanReading.rounding(Mass.ofGrams("1"));
    assertThat(variance.doubleValue()).isEqualTo(1.0 / 12, Offset.offset(1e-15));
    assertThat(Math.sqrt(variance.doubleValue())).isEqualTo(0.29, half(0.01));
  }

  @Test
  void a_permissible_error_is_a_rectangle_and_adds_its_third() {
    BenchScale scale = PlanFile.order("\"0.1 g\", \"class\": \"II\"", "\"1 g\", \"class\": \"III\"")
        .scales()
        .get(0);
    // 600 g on class III with e = 1 g: ± 2 g in service (OIML R 76-1:2006, Table 6); 4/3 + 1/12.
    PanReading reading = new PanReading(scale, Mass.ofGrams("600"));
    assertThat(reading.variance().doubleValue())
        .isEqualTo(4.0 / 3 + 1.0 / 12, Offset.offset(1e-12));
    assertThat(reading.ofReadingAlone().doubleValue()).isEqualTo(1.0 / 12, Offset.offset(1e-12));
  }

  @ParameterizedTest(name = "{6}")
  @CsvFileSource(
      resources = "published-uncertainties.tsv",
      delimiter = '\t',
      numLinesToSkip = 3,
      encoding = "UTF-8",
      quoteCharacter = '\0')
  void the_uncertainty_of_a_ratio_is_the_published_one(
      String w, String uw, String o, String uo, String ratio, String expected, String source) {
    List<Net> apart =
        List.of(new Net(Mass.ofGrams(w), true, 0, 1), new Net(Mass.ofGrams(o), false, 2, 3));
    BigDecimal none = BigDecimal.ZERO;
    List<BigDecimal> variances =
        List.of(none, new BigDecimal(uw).pow(2), none, new BigDecimal(uo).pow(2));
    LoadUncertainty oil = LoadUncertainty.of(1, apart, variances);
    int digits = new BigDecimal(expected).precision();
    assertThat(oil.ofWax().round(new MathContext(digits))).isEqualByComparingTo(expected);
    assertThat(oil.ofNet()).isCloseTo(new BigDecimal(uo), Offset.offset(new BigDecimal("1e-15")));
    // Of total, F = R/(1+R), so u(F) = u(R)/(1+R)².
    double r =
        new BigDecimal(o).divide(new BigDecimal(w), MathContext.DECIMAL64).doubleValue();
    double ofTotal = oil.ofWax().doubleValue() / ((1 + r) * (1 + r));
    assertThat(oil.ofTotal().doubleValue()).isEqualTo(ofTotal, Offset.offset(1e-12 * ofTotal));
  }

  @Test
  void a_reading_shared_by_two_parts_is_counted_once_with_what_it_does_to_both() {
    // By hand: g0, g1, g2 of u = 1 g each; w = g1 − g0 = 700, o = g2 − g1 = 56, R = o/w.
    // dR/dg2 = 1/w; dR/dg1 = −1/w − R/w; dR/dg0 = R/w.
    List<Net> onePot =
        List.of(new Net(Mass.ofGrams("700"), true, 0, 1), new Net(Mass.ofGrams("56"), false, 1, 2));
    BigDecimal one = BigDecimal.ONE;
    LoadUncertainty oil = LoadUncertainty.of(1, onePot, List.of(one, one, one));
    double expected = Math.sqrt(1 + 1.08 * 1.08 + 0.08 * 0.08) / 700;
    assertThat(oil.ofWax().doubleValue()).isEqualTo(expected, Offset.offset(1e-12));
    // Counted as if apart it would be less: √(2 + 2·0.08²)/700.
    assertThat(expected).isGreaterThan(Math.sqrt(2 + 2 * 0.08 * 0.08) / 700);
  }

  /** The same by drawing (JCGM 101:2008): readings rounded to the step, scales off by a rectangle, nothing else in common. */
  @Test
  void drawn_readings_scatter_as_the_plan_says() {
    PlannedCharge charge = PlanFile.plan(
            "\"0.1 g\", \"class\": \"II\"", "\"1 g\", \"class\": \"III\"")
        .charges()
        .get(0);
    LoadUncertainty said = charge.uncertainties().get(1);
    Random random = new Random(20261125);
    int draws = 40_000;
    double[] loads = {450, 1150, 1206};
    double[] errors = {1, 2, 2};
    double squares = 0;
    for (int i = 0; i < draws; i++) {
      double[] real = new double[3];
      double[] shown = new double[3];
      for (int j = 0; j < 3; j++) {
        real[j] = loads[j] + random.nextDouble();
        shown[j] = Math.rint(real[j] + (2 * random.nextDouble() - 1) * errors[j]);
      }
      squares += Math.pow(ofTotal(shown) - ofTotal(real), 2);
    }
    double deviation = Math.sqrt(squares / draws);
    double planned = said.ofTotal().doubleValue();
    assertThat(deviation).isEqualTo(planned, Offset.offset(0.03 * planned));
  }

  private static double ofTotal(double[] readings) {
    return (readings[2] - readings[1]) / (readings[2] - readings[0]);
  }

  @Test
  void parts_in_one_pot_share_readings_and_a_cup_shares_none() {
    PlannedCharge onePot = PlanFile.plan(
            "\"0.1 g\"", "\"0.5 g\"", "\"tolerance\": \"1 %\"}", "\"tolerance\": \"10 %\"}")
        .charges()
        .get(0);
    List<LoadUncertainty> alone = onePot.uncertaintiesOfReading();
    // d = 0.5 g: each net weight has d/√6; the load of one pot has (1, 1.08, 0.08) · d/√12 / 700.
    assertThat(alone.get(1).ofNet().doubleValue())
        .isEqualTo(0.5 / Math.sqrt(6), Offset.offset(1e-9));
    double shared = 0.5 / Math.sqrt(12) * Math.sqrt(1 + 1.08 * 1.08 + 0.08 * 0.08) / 700;
    assertThat(alone.get(1).ofWax().doubleValue()).isEqualTo(shared, Offset.offset(1e-9));
  }
}
