package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.shared.Verdict;
import candlebench.station.SeededBatch.Mishap;
import candlebench.station.VirtualBench.Cut;
import candlebench.station.VirtualBench.Make;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.GuidanceStep;
import candlebench.station.guidance.MakerCommand;
import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Drawn batches with drawn mishaps: every promise of the bench holds in each, and a planted fault is seen. */
class SeededBatchesTest {
  private static final long CANARY = 10;
  private static final Mass TOO_MUCH = Mass.ofGrams("2");

  @Test
  void in_500_drawn_batches_every_promise_holds_and_each_comes_to_its_end() {
    SeededBatches.Outcome outcome =
        SeededBatches.of(0, 500, seed -> new SeededBatch(seed, Mishap.AT_THE_BENCH));
    assertThat(outcome.broken()).isEmpty();
    assertThat(outcome.runs()).hasSize(500);
    assertThat(outcome.mishaps().keySet()).containsExactlyElementsOf(Mishap.AT_THE_BENCH);
  }

  @Test
  void every_promise_holds_with_power_cuts_other_clocks_bad_lines_and_taps_sent_again() {
    SeededBatches.Outcome outcome =
        SeededBatches.of(0, 100, seed -> new SeededBatch(seed, Mishap.AROUND_IT));
    assertThat(outcome.broken()).isEmpty();
    assertThat(outcome.mishaps().keySet()).containsExactlyElementsOf(Mishap.AROUND_IT);
    assertThat(outcome.mishaps().values())
        .allMatch(tally -> tally.met() > 0 && tally.survived() == tally.met());
  }

  /** The list names the seed, {@code bench} or {@code all} for what could go wrong, and what did. */
  static Stream<String> seedsThatOnceBroke() {
    InputStream list = SeededBatchesTest.class.getResourceAsStream("broken-seeds.txt");
    return new BufferedReader(new InputStreamReader(list, StandardCharsets.UTF_8))
        .lines()
        .filter(line -> !line.startsWith("#"));
  }

  @ParameterizedTest
  @MethodSource("seedsThatOnceBroke")
  void what_once_broke_holds(String line) {
    String[] words = line.split(" ", 3);
    Set<Mishap> possible =
        words[1].equals("bench") ? Mishap.AT_THE_BENCH : EnumSet.allOf(Mishap.class);
    assertThat(
            SeededBatches.of(Long.parseLong(words[0]), 1, seed -> new SeededBatch(seed, possible))
                .broken())
        .isEmpty();
  }

  @Test
  void of_many_mishaps_those_are_told_without_which_nothing_breaks() {
    Set<Mishap> both = EnumSet.of(Mishap.KILL, Mishap.LINE_LOSSES);
    assertThat(SeededBatches.fewest(
            EnumSet.allOf(Mishap.class), possible -> possible.containsAll(both)))
        .isEqualTo(both);
    assertThat(SeededBatches.fewest(both, possible -> true)).isEmpty();
  }

  @Test
  void kinds_of_mishap_are_left_out_by_name() {
    assertThat(SeededBatches.possible("only=KILL,CABLE"))
        .containsExactlyInAnyOrder(Mishap.KILL, Mishap.CABLE);
    assertThat(SeededBatches.possible("without=KILL"))
        .doesNotContain(Mishap.KILL)
        .hasSize(Mishap.values().length - 1);
    assertThat(SeededBatches.possible("")).hasSize(Mishap.values().length);
    assertThat(new SeededBatch(CANARY, Set.of()).run().mishaps()).isEmpty();
  }

  @ParameterizedTest
  @EnumSource
  void a_tap_sent_again_after_the_power_was_gone_is_done_once(VirtualBench.Cut cut) {
    VirtualBench bench = cutAtANote(cut);
    assertThat(bench.all(GuidanceEvent.Noted.class)).hasSize(cut == Cut.AFTER_DISK ? 1 : 0);
    for (int i = 0; i < 3; i++) bench.lastTapAgain();
    assertThat(bench.all(GuidanceEvent.Noted.class)).hasSize(1);
    assertThat(bench.replayed()).isEqualTo(bench.events);
  }

  @Test
  void a_bench_that_forgets_what_it_was_told_is_noticed() {
    VirtualBench bench = cutAtANote(Cut.AFTER_DISK);
    bench.forgetTaps();
    assertThatThrownBy(bench::lastTapAgain)
        .isInstanceOf(BenchPromises.Broken.class)
        .hasMessageContaining("was done twice");
  }

  private static VirtualBench cutAtANote(Cut cut) {
    VirtualBench bench = new VirtualBench(Make.of(BenchSetup.of(HarbourLane.all())));
    bench.run(3);
    bench.start("harbour-lane-oil", 1);
    String code = bench.last(BatchStarted.class).code();
    bench.cutPower(cut);
    bench.say(new MakerCommand.Note(code, "smells of cedar", "Robin"));
    assertThat(bench.isDark()).isTrue();
    bench.restart(Duration.ofSeconds(5));
    return bench;
  }

  /** What may go wrong between a weight that was seen and the record of it, and the words by which it is noticed. */
  enum Fault {
    ANOTHER_GROSS(
        weight -> List.of(with(
            weight, weight.gross().plus(TOO_MUCH), weight.net().plus(TOO_MUCH), weight.verdict())),
        "was recorded as"),
    ANOTHER_NET(
        weight ->
            List.of(with(weight, weight.gross(), weight.net().plus(TOO_MUCH), weight.verdict())),
        "the parts sum to"),
    ANOTHER_NUMBER(
        weight -> List.of(new WeightAccepted(
            weight.at(),
            weight.place(),
            weight.name(),
            weight.lot(),
            weight.target(),
            weight.shownTarget(),
            weight.tolerance(),
            Indication.of("123.4", MassUnit.GRAM),
            weight.basis(),
            weight.tare(),
            weight.gross(),
            weight.net(),
            weight.verdict(),
            weight.how(),
            weight.reason(),
            weight.scale(),
            weight.scaleName(),
            weight.person(),
            weight.trace())),
        "numbers that moved, had a gap, or no unit"),
    TWICE(weight -> List.of(weight, weight), "was recorded twice"),
    OVER_AND_UNSAID(
        weight -> List.of(with(weight, weight.gross(), weight.net(), Verdict.OVER)),
        "not announced");

    private final Function<WeightAccepted, List<GuidanceEvent>> planted;
    private final String noticed;

    Fault(Function<WeightAccepted, List<GuidanceEvent>> planted, String noticed) {
      this.planted = planted;
      this.noticed = noticed;
    }

    private static WeightAccepted with(
        WeightAccepted weight, Mass gross, Mass net, Verdict verdict) {
      return new WeightAccepted(
          weight.at(),
          weight.place(),
          weight.name(),
          weight.lot(),
          weight.target(),
          weight.shownTarget(),
          weight.tolerance(),
          weight.indication(),
          weight.basis(),
          weight.tare(),
          gross,
          net,
          verdict,
          weight.how(),
          weight.reason(),
          weight.scale(),
          weight.scaleName(),
          weight.person(),
          weight.trace());
    }
  }

  @ParameterizedTest
  @EnumSource
  void the_canary_dies_of_every_planted_fault(Fault fault) {
    assertThat(brokenBy(event ->
            event instanceof WeightAccepted weight ? fault.planted.apply(weight) : List.of(event)))
        .contains(fault.noticed);
  }

  @Test
  void a_weight_that_is_not_written_down_is_noticed() {
    assertThat(broken(batch -> batch.bench.tamper(step -> new GuidanceStep(
            step.next(),
            step.events().stream()
                .filter(event -> !(event instanceof WeightAccepted))
                .toList(),
            step.effects()))))
        .contains("folds to another state");
  }

  @Test
  void inputs_that_give_other_events_when_replayed_are_noticed() {
    assertThat(brokenBy(event -> event instanceof BatchDone done
            ? List.of(new BatchDone(later(done.at())))
            : List.of(event)))
        .contains("when replayed");
  }

  private static Stamp later(Stamp at) {
    return new Stamp(at.wall(), at.nanos() + 1);
  }

  private static String brokenBy(Function<GuidanceEvent, List<GuidanceEvent>> planted) {
    return broken(
        batch -> batch.bench.tamper(new Planted(planted, batch.bench.state().progress())));
  }

  private static String broken(Consumer<SeededBatch> tampering) {
    SeededBatches.Outcome outcome = SeededBatches.of(CANARY, 1, seed -> {
      SeededBatch batch = new SeededBatch(seed, Mishap.AT_THE_BENCH);
      tampering.accept(batch);
      return batch;
    });
    assertThat(outcome.broken()).hasSize(1);
    return outcome.broken().get(0);
  }

  /** Writes down other events than happened, and lives on as if they had. */
  private static final class Planted implements UnaryOperator<GuidanceStep> {
    private final Function<GuidanceEvent, List<GuidanceEvent>> planted;
    private BenchProgress progress;

    Planted(Function<GuidanceEvent, List<GuidanceEvent>> planted, BenchProgress progress) {
      this.planted = planted;
      this.progress = progress;
    }

    @Override
    public GuidanceStep apply(GuidanceStep step) {
      List<GuidanceEvent> events =
          step.events().stream().map(planted).flatMap(List::stream).toList();
      progress = progress.after(events);
      GuidanceState next = progress.equals(step.next().progress())
          ? step.next()
          : GuidanceState.resume(step.next().setup(), progress);
      return new GuidanceStep(next, events, step.effects());
    }
  }
}
