package candlebench.station.guidance;

import candlebench.shared.Stamp;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.MixCompared;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.GuidanceEvent.WaitStarted;
import java.util.Optional;

/**
 * What follows by itself from an event: a wait begins with its step, the mix left is held against the vessels left, and a batch whose
 * steps are all done is done.
 */
final class Consequences {

  private Consequences() {}

  static Optional<GuidanceEvent> of(BenchProgress progress, Stamp now) {
    return progress.running().flatMap(batch -> of(batch, now));
  }

  private static Optional<GuidanceEvent> of(BatchProgress batch, Stamp now) {
    if (batch.step().isEmpty()) return Optional.of(new BatchDone(now));
    if (batch.open().waiting().isPresent()) return Optional.empty();
    Step step = batch.step().get();
    if (step instanceof Step.Melt melt)
      return Optional.of(new WaitStarted(now, Wait.MELT, melt.time()));
    if (step instanceof Step.Mix mix)
      return Optional.of(new WaitStarted(now, Wait.MIX, mix.time()));
    if (step instanceof Step.FillVessel fill && batch.open().vessel().isEmpty())
      return compared(batch, fill, now);
    return Optional.empty();
  }

  /** Said once, when it becomes so, and again when it becomes worse. */
  private static Optional<GuidanceEvent> compared(
      BatchProgress batch, Step.FillVessel fill, Stamp now) {
    MixStanding standing = Fills.standing(batch);
    int left = batch.vesselsLeft();
    return standing.compareTo(batch.mix()) <= 0
        ? Optional.empty()
        : Optional.of(new MixCompared(
            now, fill.vessel(), batch.mixLeft(), left, Fills.evenFill(batch, left), standing));
  }
}
