package candlebench.station.guidance;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.PotReweighed;
import candlebench.station.guidance.GuidanceEvent.VesselLifted;
import candlebench.station.guidance.GuidanceEvent.WaitEnded;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WholeBatchTest {

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_small_batch_runs_to_done_without_a_touch(int rate) {
    BenchRig bench = new BenchRig(BenchSetup.of(HarbourLane.all()), rate);
    bench.rest(1);
    bench.start("harbour-lane-quick", 3);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.PREPARE);
    bench.rest(5);
    bench.put("350.2");
    bench.rest(6);

    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    assertThat(bench.prompt().cue()).isEqualTo(Cue.PIECES);
    bench.put("1052.4");
    bench.rest(5);
    assertThat(bench.last(WeightAccepted.class).net()).isEqualTo(Mass.ofGrams("702.2"));
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.MELT);

    bench.put("0");
    bench.rest(16);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.RETURN_POT);
    bench.put("1052.2");
    bench.rest(5);
    assertThat(bench.last(PotReweighed.class).gross()).isEqualTo(Mass.ofGrams("1052.2"));

    assertThat(bench.prompt().weighing().orElseThrow().target()).isEqualTo(Mass.ofGrams("56.16"));
    bench.followCues(4, 1);
    WeightAccepted oil = bench.last(WeightAccepted.class);
    assertThat(oil.verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(oil.target()).isEqualTo(Mass.ofGrams("56.16"));
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.MIX);

    bench.rest(11);
    assertThat(bench.all(WaitEnded.class)).hasSize(2);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.PLACE_VESSEL);
    bench.put("0");
    for (int vessel = 0; vessel < 3; vessel++) {
      bench.rest(2);
      bench.put(List.of("181.3", "184.0", "179.6").get(vessel));
      bench.rest(5);
      assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.FILL_VESSEL);
      bench.followCues(15, 3);
      bench.rest(1);
      assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.LIFT_VESSEL);
      bench.put("0");
      bench.rest(1);
    }
    assertThat(bench.all(VesselLifted.class)).hasSize(3);
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    assertThat(bench.all(WeightAccepted.class))
        .hasSize(5)
        .allSatisfy(weight -> assertThat(weight.verdict()).isEqualTo(Verdict.WITHIN));
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.let-set-and-trim");
  }
}
