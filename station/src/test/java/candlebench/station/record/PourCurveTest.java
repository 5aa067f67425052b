package candlebench.station.record;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PourCurveTest {

  private static WeightAccepted oil(boolean byHand) {
    BatchScript script = new BatchScript()
        .start("20261125-1", HarbourLane.CANDLE, 3, Map.of())
        .prepared()
        .pot("350.2")
        .part(0, "700")
        .waited(Wait.MELT)
        .reweighed();
    (byHand ? script.byHand(1, "56", "silent") : script.part(1, "56")).waited(Wait.MIX);
    return script.record().partLines(1).get(0).counts();
  }

  @Test
  void time_runs_to_the_right_and_weight_upwards_with_the_tolerance_below_the_top() {
    PourCurve curve = PourCurve.of(oil(false)).orElseThrow();
    assertThat(curve.path()).startsWith("M0 " + PourCurve.HEIGHT + "L").doesNotContain("-");
    assertThat(curve.path()).contains("L" + PourCurve.WIDTH + " " + curve.targetY());
    assertThat(curve.overY()).isBetween(1, curve.targetY() - 1);
    assertThat(curve.underY()).isGreaterThan(curve.targetY());
    assertThat(curve.seconds()).isEqualTo("10.0");
  }

  @Test
  void a_weight_entered_by_hand_has_no_picture() {
    assertThat(PourCurve.of(oil(true))).isEmpty();
  }
}
