package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.simulator.MakerTraits;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Place;
import candlebench.station.guidance.Prompt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole small batch of the demonstration, with a virtual scale and a maker's hands that pour gently. */
class HarbourLaneTest {
  private static final MakerTraits GENTLE =
      new MakerTraits(0.3, 0, 0.05, 0.5, 1, 0.5, 0, 0.03, 1.3);

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_batch_runs_to_done_with_no_key_pressed(int rate) {
    VirtualBench bench = new VirtualBench(
        VirtualBench.Make.of(BenchSetup.of(HarbourLane.all())).rate(rate).seed(rate));
    bench.run(3);
    bench.start("harbour-lane-quick", 3);
    VirtualMaker hands = new VirtualMaker(GENTLE, Slips.none(), 5, bench.nanos());
    FollowingMaker maker = new FollowingMaker(bench, hands, Mass.ofGrams("352.4"), 5);
    bench.around(maker::advanceTo);
    bench.runUntil(Prompt.Kind.DONE, 900);

    assertThat(maker.keys()).isZero();
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    assertThat(bench.all(WeightAccepted.class))
        .allMatch(weight -> weight.verdict() == Verdict.WITHIN)
        .extracting(WeightAccepted::place)
        .containsExactly(
            new Place(Place.Kind.PART, 0),
            new Place(Place.Kind.PART, 1),
            new Place(Place.Kind.VESSEL, 0),
            new Place(Place.Kind.VESSEL, 1),
            new Place(Place.Kind.VESSEL, 2));
  }
}
