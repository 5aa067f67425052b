package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.Asked;
import candlebench.station.guidance.GuidanceEvent.Question;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.List;
import java.util.Optional;

/**
 * The pot or vessel is gone from the scale, or the scale's zero moved under it, or the program was restarted: nothing is believed until
 * it stands there as it was left.
 *
 * <p>The way back is always the same: lift it off, put it back. Lifted, the scale shows where its zero now lies; put back, the load
 * must be the one that was left.
 *
 * @param weighing the weighing to go on with
 * @param entryShown the most that the scale showed since its zero moved under what stands there
 * @param empty what it showed since then with nothing on it, as far as can be told
 */
record Away(Weighing weighing, Why why, Optional<Mass> entryShown, EmptyPan empty)
    implements Stage {

  enum Why {
    LIFTED,
    /** Lifted when asked about, or without a number: it may have changed before that. */
    ASKED,
    SHIFTED,
    RESTARTED
  }

  static Away lifted(Weighing weighing) {
    return new Away(weighing, Why.LIFTED, Optional.empty(), EmptyPan.UNSEEN);
  }

  static Away asked(Weighing weighing) {
    return new Away(weighing, Why.ASKED, Optional.empty(), EmptyPan.UNSEEN);
  }

  static Away restarted(Weighing weighing) {
    return new Away(weighing, Why.RESTARTED, Optional.empty(), EmptyPan.UNSEEN);
  }

  static Outcome shifted(Weighing weighing, Reading reading, Scene scene) {
    return shifted(weighing, reading.mass(), reading, scene);
  }

  /** With what was shown while the container stood there. */
  static Outcome shifted(Weighing weighing, Mass shownThere, Reading reading, Scene scene) {
    int scale = weighing.goal().scale();
    return Outcome.to(
        new Away(weighing, Why.SHIFTED, Optional.of(shownThere), EmptyPan.UNSEEN),
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
      return Outcome.to(scene.load(goal().scale()).isPresent() ? this : unheard());
    Optional<Reading> resting = scene.resting(goal().scale());
    if (resting.isEmpty()) return Outcome.to(this);
    if (isEmpty(resting.get(), scene)) return emptied(resting.get(), scene);
    boolean stillThere = why == Why.SHIFTED && !empty.wasSeen();
    if (stillThere) return Outcome.to(standing(resting.get()));
    return scene.settled(goal().scale()).isEmpty()
        ? Outcome.to(this)
        : returned(resting.get(), scene);
  }

  /** What is put on meanwhile, onto a pan that was taken for loaded, must be lifted off again all the same. */
  private Away standing(Reading reading) {
    return new Away(
        weighing,
        why,
        entryShown
            .filter(shown -> !shown.isLessThan(reading.mass()))
            .or(() -> Optional.of(reading.mass())),
        empty);
  }

  /** Without a number it cannot be seen to be lifted, nor that the zero stays: what stands there afterwards must speak for itself. */
  private Away unheard() {
    Why then = why == Why.SHIFTED ? Why.ASKED : why;
    return new Away(weighing, then, Optional.empty(), EmptyPan.UNSEEN);
  }

  private boolean isEmpty(Reading reading, Scene scene) {
    int scale = goal().scale();
    return ZeroShift.below(scene.pan(scale), scene.load(scale, reading))
        || lifted(reading)
        || (why != Why.SHIFTED || empty.wasSeen())
            && empty.isEmpty(scale, reading, goal().gone(), scene);
  }

  /** Whether the number fell by at least half the container, wherever the zero lies. */
  private boolean lifted(Reading reading) {
    return why == Why.SHIFTED
        && entryShown
            .filter(shown -> shown.minus(reading.mass()).isMoreThan(goal().gone()))
            .isPresent();
  }

  /** Below nothing, or known to be lifted, what is shown is the zero; else it is only kept in mind. */
  private Outcome emptied(Reading reading, Scene scene) {
    Away next = new Away(weighing, why, entryShown, empty.seen(goal().scale(), reading, scene));
    Optional<ZeroFound> zero = lifted(reading)
        ? Optional.of(ZeroShift.found(goal().scale(), reading, scene))
        : ZeroShift.atEmpty(goal().scale(), reading, scene);
    return zero.filter(found -> isNews(found, scene))
        .map(found -> Outcome.to(next, found))
        .orElse(Outcome.to(next));
  }

  private boolean isNews(ZeroFound found, Scene scene) {
    Pan pan = scene.pan(goal().scale());
    Mass moved = found.zero().minus(scene.progress().zero(goal().scale()));
    return pan.zeroDoubt().isAny() || pan.differs(moved, ZeroShift.STEPS);
  }

  /**
   * Something stands there. By the zero that is known, or else by what was shown while nothing was there, it must be what was left;
   * a scale whose tare was cleared shows that itself.
   */
  private Outcome returned(Reading reading, Scene scene) {
    Mass byZero = scene.load(goal().scale(), reading);
    if (asLeft(byZero, scene)) return Outcome.to(Stages.back(weighing, scene));
    if (ZeroShift.showsItself(goal().scale(), reading, weighing.resting(), scene))
      return Outcome.to(
          Stages.back(weighing, scene), ZeroShift.cleared(goal().scale(), reading, scene));
    Mass sinceEmpty = empty.load(reading);
    boolean otherwise =
        scene.pan(goal().scale()).differs(sinceEmpty.minus(byZero), ZeroShift.STEPS);
    boolean bySinceEmpty = otherwise && (empty.wasSeen() || asLeft(sinceEmpty, scene));
    return bySinceEmpty
        ? returned(sinceEmpty, List.of(empty.zero(goal().scale(), reading, scene)), scene)
        : returned(byZero, List.of(), scene);
  }

  private Outcome returned(Mass load, List<GuidanceEvent> zero, Scene scene) {
    if (asLeft(load, scene)) return Outcome.to(Stages.back(weighing, scene), zero);
    boolean otherVessel = goal().isVessel() && load.isLessThan(goal().base());
    boolean another = otherVessel || nothingAdded(scene);
    return another && scene.batch().open().over().isEmpty()
        ? Outcome.to(another(), zero)
        : weighing.differing(load, scene, zero);
  }

  /** As it was left, or less where it was lifted to take something out. */
  private boolean asLeft(Mass load, Scene scene) {
    Mass left = weighing.resting();
    boolean same = !scene.pan(goal().scale()).differs(load.minus(left), ZeroShift.STEPS);
    boolean takesOut = goal().direction() == Goal.Direction.OUT
        || scene.batch().open().over().isPresent() && Overs.isApart(goal(), scene.batch());
    return same || takesOut && load.isLessThan(left) && !load.isLessThan(least());
  }

  private Mass least() {
    return goal().isFromBottle() ? goal().gone() : goal().container();
  }

  /** Nothing was in it yet, so that another pot or vessel is as good. */
  private boolean nothingAdded(Scene scene) {
    boolean atBase = !scene
        .pan(goal().scale())
        .differs(weighing.resting().minus(goal().base()), ZeroShift.STEPS);
    return why == Why.LIFTED && atBase && weighing.nothingIn(scene);
  }

  private Stage another() {
    if (goal().isFromBottle()) return PlacingBottle.begin();
    if (goal().isInCup()) return PlacingCup.begin();
    return goal().isVessel() ? PlacingVessel.another(goal().place().number()) : PlacingPot.begin();
  }

  @Override
  public Prompt prompt(Scene scene) {
    return Prompt.say(Prompt.Kind.AWAY, now(scene))
        .detail(detail(scene))
        .cue(Cue.WAITING)
        .trouble(scene.trouble(goal().scale()))
        .byHand(scene.load(goal().scale()).isEmpty())
        .prompt();
  }

  private Words now(Scene scene) {
    if (why == Why.SHIFTED && !empty.wasSeen())
      return ofThing(
          "now.lift-pot-off", "now.lift-vessel-off", "now.lift-bottle-off", "now.lift-cup-off");
    if (ZeroShift.isBelow(goal().scale(), scene)) return Words.of("now.keep-off");
    if (isBeingChecked(scene)) return Words.of("now.checking");
    return ofThing(
        "now.put-pot-back", "now.put-vessel-back", "now.put-bottle-back", "now.put-cup-back");
  }

  private Words ofThing(String pot, String vessel, String bottle, String cup) {
    if (goal().isFromBottle()) return Words.of(bottle);
    if (goal().isInCup()) return Words.of(cup);
    return Words.of(goal().isVessel() ? vessel : pot);
  }

  /** Something stands there, and not long enough yet to be told. */
  private boolean isBeingChecked(Scene scene) {
    boolean there = scene
        .load(goal().scale())
        .filter(load -> !load.isLessThan(goal().gone()))
        .isPresent();
    return there
        && scene
            .resting(goal().scale())
            .filter(reading -> isEmpty(reading, scene))
            .isEmpty();
  }

  private Words lifted() {
    return empty.wasSeen()
        ? Words.of("detail.maybe-zeroed").and("left", weighing.resting())
        : Words.of("detail.was-left").and("left", weighing.resting());
  }

  /** Who pours out of a bottle beside the scale pours about so much, and puts it back to see. */
  private Words toGo() {
    Mass toGo = goal().target().minus(goal().net(weighing.resting()));
    return toGo.isNegative()
        ? Words.of("detail.was-left").and("left", weighing.resting())
        : Words.of("detail.bottle-to-go").and("toGo", toGo);
  }

  private Words detail(Scene scene) {
    if (scene.load(goal().scale()).isEmpty()) return Words.of("detail.off-and-on");
    return switch (why) {
      case LIFTED, ASKED -> goal().isFromBottle() ? toGo() : lifted();
      case SHIFTED -> Words.of("detail.zero-shifted").and("left", weighing.resting());
      case RESTARTED -> Words.of("detail.restarted").and("left", weighing.resting());
    };
  }
}
