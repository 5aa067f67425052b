package candlebench.station.guidance;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OnePartTest {

  private static BenchRig potOnTheScale(int rate) {
    BenchRig bench = new BenchRig(BenchSetup.of(HarbourLane.all()), rate);
    bench.rest(1);
    bench.start("harbour-lane-oil", 1);
    bench.rest(1);
    bench.put("350.2");
    bench.rest(5);
    return bench;
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void oil_poured_to_its_target_is_taken_without_a_touch(int rate) {
    BenchRig bench = potOnTheScale(rate);
    assertThat(bench.last(PotTared.class).tare()).isEqualTo(Mass.ofGrams("350.2"));

    bench.pour(4, 5);
    assertThat(bench.prompt().cue()).isEqualTo(Cue.POUR);
    while (bench.prompt().cue() != Cue.STOP && bench.prompt().cue() != Cue.HOLD_STILL)
      bench.pour(4, 0.02);
    Mass atStop =
        bench.state().prompt(bench.now()).weighing().orElseThrow().net().orElseThrow();
    assertThat(atStop).isLessThan(Mass.ofGrams("56"));
    bench.put(Mass.ofGrams("350.2").plus(Mass.ofGrams("55.8")).grams());
    bench.rest(12);

    WeightAccepted oil = bench.last(WeightAccepted.class);
    assertThat(oil.net()).isEqualTo(Mass.ofGrams("55.8"));
    assertThat(oil.tare()).isEqualTo(Mass.ofGrams("350.2"));
    assertThat(oil.indication()).hasToString("406.0 g");
    assertThat(oil.verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(bench.all(WeightAccepted.class)).hasSize(1);
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.DONE);
  }
}
