package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.Asked;
import candlebench.station.guidance.GuidanceEvent.Question;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.Optional;

/**
 * The pot or vessel is gone from the scale, or the scale's zero moved under it, or the program was restarted: nothing is believed until
 * it stands there as it was left.
 *
 * <p>The way back is always the same: lift it off, put it back. Lifted, the scale shows where its zero now lies; put back, the load
 * must be the one that was left.
 *
 * @param weighing the weighing to go on with
 * @param entryShown what the scale showed when this began
 * @param emptySeen whether the pan was seen empty since
 */
record Away(Weighing weighing, Why why, Optional<Mass> entryShown, boolean emptySeen)
    implements Stage {

  enum Why {
    LIFTED,
    SHIFTED,
    RESTARTED
  }

  static Away lifted(Weighing weighing) {
    return new Away(weighing, Why.LIFTED, Optional.empty(), false);
  }

  static Away restarted(Weighing weighing) {
    return new Away(weighing, Why.RESTARTED, Optional.empty(), false);
  }

  static Outcome shifted(Weighing weighing, Reading reading, Scene scene) {
    int scale = weighing.goal().scale();
    return Outcome.to(
        new Away(weighing, Why.SHIFTED, Optional.of(reading.mass()), false),
        new Asked(
            scene.now(),
            Question.ZERO_SHIFTED,
            scale,
            weighing.resting(),
            scene.load(scale, reading)));
  }

  private Goal goal() {
    return weighing.goal();
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said)
      return said.command() instanceof MakerCommand.EnterByHand
          ? weighing.on(input, scene)
          : Outcome.refuse(this, Words.of("refused.put-back"));
    if (!(input instanceof ReadingArrived arrived) || arrived.scale() != goal().scale())
      return Outcome.to(this);
    return scene
        .settled(goal().scale())
        .map(settled -> settled(settled, scene))
        .orElse(Outcome.to(this));
  }

  private Outcome settled(Reading reading, Scene scene) {
    Pan pan = scene.pan(goal().scale());
    Mass load = scene.load(goal().scale(), reading);
    if (ZeroShift.below(pan, load) || lifted(reading)) return emptied(reading, scene);
    if (why == Why.SHIFTED && !emptySeen) return Outcome.to(this);
    if (load.isLessThan(goal().gone()))
      return Outcome.to(new Away(weighing, why, entryShown, true));
    return returned(load, reading, scene);
  }

  /** Whether the number fell by at least half the container, wherever the zero lies. */
  private boolean lifted(Reading reading) {
    return why == Why.SHIFTED
        && !emptySeen
        && entryShown
            .filter(shown -> shown.minus(reading.mass()).isMoreThan(goal().gone()))
            .isPresent();
  }

  private Outcome emptied(Reading reading, Scene scene) {
    return Outcome.to(
        new Away(weighing, why, entryShown, true),
        new ZeroFound(
            scene.now(), goal().scale(), reading.indication(), reading.mass().negated()));
  }

  private Outcome returned(Mass load, Reading reading, Scene scene) {
    Pan pan = scene.pan(goal().scale());
    Mass left = weighing.resting();
    if (asLeft(pan, load, left)) return Outcome.to(Stages.back(weighing, scene));
    boolean zeroCleared = !scene.progress().zero(goal().scale()).isZero()
        && !pan.differs(reading.mass().minus(left), ZeroShift.STEPS);
    if (ZeroShift.maybeZeroed(pan, reading.mass(), scene.progress().zero(goal().scale())))
      return Outcome.to(new Away(weighing, why, entryShown, true));
    if (zeroCleared)
      return Outcome.to(
          Stages.back(weighing, scene),
          new ZeroFound(scene.now(), goal().scale(), reading.indication(), Mass.ZERO));
    boolean otherVessel = goal().isVessel() && load.isLessThan(goal().base());
    if (otherVessel || nothingAdded(pan, left, scene)) return another();
    return Outcome.to(
        new PanDiffers(weighing, load),
        new Asked(scene.now(), Question.PAN_DIFFERS, goal().scale(), left, load));
  }

  /** Taking out of the pot, it may come back with anything less than was in it. */
  private boolean asLeft(Pan pan, Mass load, Mass left) {
    boolean same = !pan.differs(load.minus(left), ZeroShift.STEPS);
    boolean takenOut = goal().direction() == Goal.Direction.OUT && load.isLessThan(left);
    return same || takenOut;
  }

  /** Nothing was in it yet, so that another pot or vessel is as good. */
  private boolean nothingAdded(Pan pan, Mass left, Scene scene) {
    boolean empty = goal().isVessel() || scene.batch().charge().inPot().isEmpty();
    return why != Why.RESTARTED
        && empty
        && !pan.differs(left.minus(goal().base()), ZeroShift.STEPS);
  }

  private Outcome another() {
    return Outcome.to(
        goal().isVessel() ? PlacingVessel.another(goal().place().number()) : PlacingPot.begin());
  }

  @Override
  public Prompt prompt(Scene scene) {
    Words thing =
        goal().isVessel() ? Words.of("now.put-vessel-back") : Words.of("now.put-pot-back");
    boolean liftFirst = why == Why.SHIFTED && !emptySeen;
    Words now = !liftFirst
        ? thing
        : goal().isVessel() ? Words.of("now.lift-vessel-off") : Words.of("now.lift-pot-off");
    return Prompt.say(Prompt.Kind.AWAY, now)
        .detail(detail())
        .cue(Cue.WAITING)
        .trouble(scene.trouble(goal().scale()))
        .byHand(scene.load(goal().scale()).isEmpty())
        .prompt();
  }

  private Words detail() {
    return switch (why) {
      case LIFTED ->
        emptySeen
            ? Words.of("detail.maybe-zeroed").and("left", weighing.resting())
            : Words.of("detail.was-left").and("left", weighing.resting());
      case SHIFTED -> Words.of("detail.zero-shifted").and("left", weighing.resting());
      case RESTARTED -> Words.of("detail.restarted").and("left", weighing.resting());
    };
  }
}
