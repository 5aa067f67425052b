package candlebench.station.guidance;

import candlebench.station.batch.Step;
import java.util.Optional;

/** From what is known to the stage it leaves the bench in: the one place where a batch finds its way on, or back after a restart. */
final class Stages {

  private Stages() {}

  /** Within a run. */
  static Stage next(BenchProgress progress) {
    return of(progress, false);
  }

  /** After a restart: the pan is compared with what was left, and timers ask the wall clock. */
  static Stage resumed(BenchProgress progress) {
    return of(progress, true);
  }

  /** Back to a weighing whose container was away; an over-pour that was open still is. */
  static Stage back(Weighing weighing, Scene scene) {
    return scene.batch().open().over().isPresent()
        ? OverPour.from(weighing.again(), Optional.empty())
        : weighing.again();
  }

  private static Stage of(BenchProgress progress, boolean restarted) {
    if (progress.batch().isEmpty()) return new Idle();
    BatchProgress batch = progress.batch().get();
    if (!batch.runs()) return progress.isQuiet() ? new Finished() : new NextPot();
    Optional<Goal> goal = batch.goal();
    return goal.isPresent()
        ? weighing(goal.get(), batch, restarted)
        : step(batch.step().orElseThrow(), batch, restarted);
  }

  private static Stage weighing(Goal goal, BatchProgress batch, boolean restarted) {
    boolean intoPot = !goal.isVessel() && !goal.isFromBottle() && !goal.isInCup();
    if (intoPot && !batch.charge().weighed()) return Returning.begin();
    Weighing weighing = Weighing.towards(goal, batch.open());
    if (restarted) return Away.restarted(weighing);
    return batch.open().over().isPresent()
        ? OverPour.from(weighing, batch.open().over().map(GuidanceEvent.OverPoured::net))
        : weighing;
  }

  private static Stage step(Step step, BatchProgress batch, boolean restarted) {
    Open open = batch.open();
    if (step instanceof Step.Prepare prepare)
      return restarted ? Preparing.restarted(prepare) : Preparing.of(prepare);
    if (step instanceof Step.PlacePot) return PlacingPot.begin();
    if (step instanceof Step.ReturnPot) return Returning.begin();
    if (step instanceof Step.Melt || step instanceof Step.Mix)
      return restarted
          ? Waiting.restarted(open.waiting().orElseThrow())
          : Waiting.of(open.waiting().orElseThrow());
    if (step instanceof Step.FillVessel fill)
      return open.vessel()
          .<Stage>map(LiftingVessel::new)
          .orElseGet(() -> PlacingVessel.begin(fill));
    if (step instanceof Step.TipCup) return TippingCup.begin();
    if (step instanceof Step.AddPart || step instanceof Step.AddMore)
      return Goals.intoPot(batch).filter(Goal::isInCup).isPresent()
          ? PlacingCup.begin()
          : PlacingBottle.begin();
    throw new AssertionError(step);
  }
}
