package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.station.batch.Fraction;
import candlebench.station.batch.HarbourLane;
import candlebench.station.batch.planning.LoadUncertainty;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.Wait;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LoadsKnownTest {

  /**
   * Variances of a reading in steps of 0.1 g, e = 0.1 g: 0.1²/12 of rounding, and a third of the square of what class III may be off in
   * use (OIML R 76-1:2006, Table 6 and 3.5.2): 0.2 g from 50 to 200 g, 0.3 g above.
   */
  private static final double ABOVE_200_G = 0.01 / 12 + 0.09 / 3;

  private static BatchScript potAndWax() {
    return new BatchScript()
        .start("20261125-1", HarbourLane.CANDLE, 3, Map.of())
        .prepared()
        .pot("350.2")
        .part(0, "700")
        .waited(Wait.MELT);
  }

  private static BatchScript notWeighedAgain() {
    BatchScript script = potAndWax();
    return script.event(new GuidanceEvent.ReweighSkipped(script.now()));
  }

  private static LoadUncertainty oil(BatchScript script) {
    return script.record().loadUncertainties().get(1);
  }

  @Test
  void wax_and_oil_in_one_pot_share_the_reading_between_them() {
    // By hand: g0 = pot, g1 = pot and wax, g2 = all; w = g1 − g0 = 700, o = g2 − g1 = 56, R = o/w =
    // 0.08:
    // dR/dg2 = 1/w, dR/dg1 = −(1 + R)/w, dR/dg0 = R/w.
    BatchScript script = notWeighedAgain().part(1, "56");
    double expected = Math.sqrt((1 + 1.08 * 1.08 + 0.08 * 0.08) * ABOVE_200_G) / 700;
    assertThat(oil(script).ofWax().doubleValue()).isCloseTo(expected, within(1e-12));
    // F = R/(1 + R), so u(F) = u(R)/(1 + R)².
    assertThat(oil(script).ofTotal().doubleValue())
        .isCloseTo(expected / (1.08 * 1.08), within(1e-12));
    assertThat(script.record().loads().get(0).ofWax()).contains(Fraction.percent("8"));
  }

  @Test
  void a_pot_weighed_again_after_the_melt_gives_the_wax_a_new_last_reading() {
    BatchScript script = potAndWax().reweighed().part(1, "56");
    double expected = Math.sqrt((1 + 1.08 * 1.08 + 0.08 * 0.08) * ABOVE_200_G) / 700;
    assertThat(oil(script).ofWax().doubleValue()).isCloseTo(expected, within(1e-12));
  }

  @Test
  void a_weight_that_was_taken_back_counts_for_nothing() {
    BatchScript script = notWeighedAgain().part(1, "50").undone();
    assertThat(script.record().loadUncertainties()).isEmpty();
  }

  @Test
  void where_nothing_was_weighed_nothing_is_said() {
    BatchScript script = new BatchScript().start("20261125-1", HarbourLane.CANDLE, 3, Map.of());
    assertThat(script.record().loadUncertainties()).isEmpty();
  }
}
