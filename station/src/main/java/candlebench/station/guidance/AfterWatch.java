package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.Optional;

/**
 * Watches the pan for a while after a weight was taken: if it moves by itself, by a drip or by a flag that lied, the weight was taken
 * too early and is weighed again.
 *
 * <p>A container that is lifted ends the watch, and a zero that may have been lost in a silence. A slow loss is no movement: steam takes up to 0.02 g/s (two published recordings).
 * Where the next part goes into the same pot at once, only a drip's worth counts: more is the next part. A leap no stream can make is a
 * hand or a spoon at the pot, and says nothing of how the weight was taken; pieces leap by nature.
 */
record AfterWatch(WeightAccepted taken, Goal goal, LeapWatch leap) {
  static final long LASTS = 10_000_000_000L;
  private static final long DRIP_STEPS = 5;
  private static final Mass LIFTED = Mass.ofGrams("20");
  private static final Mass LOSS_PER_SECOND = Mass.ofGrams("0.02");

  static Optional<AfterWatch> of(WeightAccepted taken, Goal goal) {
    return taken.how() == How.BY_HAND
        ? Optional.empty()
        : Optional.of(new AfterWatch(taken, goal, LeapWatch.STUBBORN));
  }

  /** Goes on watching; empty once the time is over, the container gone, or the step taken back. */
  Optional<AfterWatch> seen(Scene scene) {
    Optional<Mass> load = scene.load(goal.scale());
    boolean lost = ZeroShift.isInDoubt(goal.scale(), scene);
    if (isOver(scene) || lost || load.filter(this::isTakenAway).isPresent())
      return Optional.empty();
    if (load.isEmpty()) return Optional.of(this);
    long nanos = scene.pan(goal.scale()).last().orElseThrow().stamp().nanos();
    LeapWatch leaps = leap.seen(nanos, goal.net(load.get()), goal.kind(), scene.pan(goal.scale()));
    return Optional.of(new AfterWatch(taken, goal, leaps));
  }

  /** So much less is no drip: the container was lifted, and something else may stand there. */
  private boolean isTakenAway(Mass load) {
    return load.isLessThan(taken.gross().minus(LIFTED));
  }

  private boolean isOver(Scene scene) {
    boolean late = scene.now().since(taken.at()).toNanos() > LASTS;
    boolean isLast = scene
        .progress()
        .batch()
        .flatMap(BatchProgress::undo)
        .filter(undo -> undo.at().equals(taken.at()))
        .isPresent();
    return late || !isLast;
  }

  /** That the weight moved, once it has come to rest elsewhere. */
  Optional<AcceptanceReopened> moved(Scene scene) {
    return scene
        .settled(goal.scale())
        .map(reading -> goal.net(scene.load(goal.scale(), reading)))
        .filter(net -> differs(net, scene) && !leapt() && !isNextPart(net, scene))
        .map(net -> new AcceptanceReopened(scene.now(), taken.place(), taken.net(), net));
  }

  private boolean leapt() {
    return leap.pending() && !goal.byPieces();
  }

  private boolean differs(Mass net, Scene scene) {
    Pan pan = scene.pan(goal.scale());
    Mass change = net.minus(taken.net());
    if (!change.isNegative()) return pan.differs(change, 1);
    long seconds = scene.now().since(taken.at()).toSeconds() + 1;
    Mass steam = LOSS_PER_SECOND.times(seconds);
    return !change.abs().isLessThan(steam) && pan.differs(change.plus(steam), 1);
  }

  private boolean isNextPart(Mass net, Scene scene) {
    boolean samePot = !goal.isFromBottle()
        && scene.batch().goal().filter(next -> !next.isVessel()).isPresent();
    return samePot && scene.pan(goal.scale()).differs(net.minus(taken.net()), DRIP_STEPS);
  }
}
