package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.shared.Verdict;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.GuidanceStep;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Drawn batches with drawn mishaps: every promise of the bench holds in each, and a planted fault is seen. */
class SeededBatchesTest {
  private static final long CANARY = 10;
  private static final Mass TOO_MUCH = Mass.ofGrams("2");

  @Test
  void in_500_drawn_batches_every_promise_holds_and_each_comes_to_its_end() {
    SeededBatches.Outcome outcome = SeededBatches.of(0, 500);
    assertThat(outcome.broken()).isEmpty();
    assertThat(outcome.runs()).hasSize(500);
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
      SeededBatch batch = new SeededBatch(seed);
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
