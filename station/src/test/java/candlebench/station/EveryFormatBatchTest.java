package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.simulator.MakerTraits;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Prompt;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The small batch of the demonstration, from a virtual scale that speaks each format of the list to what is written down. */
class EveryFormatBatchTest {
  private static final MakerTraits GENTLE =
      new MakerTraits(0.3, 0, 0.05, 0.5, 1, 0.5, 0, 0.03, 1.3);
  private static final int ACCEPTED = 5;

  static Stream<String> formats() {
    return ScaleFormats.all().stream().map(ScaleFormat::id);
  }

  @ParameterizedTest
  @MethodSource("formats")
  void a_batch_runs_to_done_with_no_key_pressed(String format) {
    VirtualBench bench = new VirtualBench(
        VirtualBench.Make.of(BenchSetup.of(HarbourLane.all())).format(format).seed(11));
    bench.run(3);
    bench.start("harbour-lane-quick", 3);
    VirtualMaker hands = new VirtualMaker(GENTLE, Slips.none(), 5, bench.nanos());
    FollowingMaker maker = new FollowingMaker(bench, hands, Mass.ofGrams("352.4"), 5);
    bench.around(maker::advanceTo);
    bench.runUntil(Prompt.Kind.DONE, 900);

    assertThat(maker.keys()).isZero();
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    assertThat(bench.all(WeightAccepted.class))
        .hasSize(ACCEPTED)
        .allMatch(weight -> weight.verdict() == Verdict.WITHIN);
  }
}
