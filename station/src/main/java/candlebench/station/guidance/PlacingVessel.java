package candlebench.station.guidance;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.VesselLifted;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.GuidanceEvent.VesselsLeftOut;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An empty vessel is awaited; settled, its own weight is taken. The pot is not to be taken for one, nor a vessel that is filled.
 *
 * @param number of the vessel, from zero
 * @param placement how what stands there came to stand there
 * @param odd what seems wrong with what stands there, if anything
 */
record PlacingVessel(int number, CountIn countIn, Placement placement, Optional<Words> odd)
    implements Stage {
  /** Lighter than this is no vessel (common practice, no source). */
  static final Mass LIGHTEST_VESSEL = Mass.ofGrams("5");

  private static final String LEAVE_OUT = "leave-out";

  /** Vessels of one kind differ in weight by less than a third (common practice, no source). */
  private static final long UNLIKE_PERCENT = 35;

  static PlacingVessel begin(Step.FillVessel step) {
    return new PlacingVessel(step.vessel(), CountIn.NONE, Placement.UNKNOWN, Optional.empty());
  }

  /** In the place of one that was put on before and taken away. */
  static PlacingVessel another(int number) {
    return new PlacingVessel(number, CountIn.NONE, Placement.PUT, Optional.empty());
  }

  private static int scale(Scene scene) {
    return scene.batch().charge().pot().orElseThrow().scale();
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said) return said(said.command(), scene);
    if (!(input instanceof ReadingArrived arrived) || arrived.scale() != scale(scene))
      return Outcome.to(scene.load(scale(scene)).isPresent() ? this : waiting());
    Optional<Outcome> zero = ZeroShift.whileEmpty(arrived, waiting(), scene);
    if (zero.isPresent()) return zero.get();
    Mass load = scene.load(scale(scene), arrived.reading());
    Placement now = placement.seen(arrived.stamp().nanos(), load, LIGHTEST_VESSEL);
    boolean clear =
        load.isLessThan(LIGHTEST_VESSEL) && scene.resting(scale(scene)).isPresent();
    PlacingVessel next = with(clear ? now.clear() : now);
    return scene
        .settled(scale(scene))
        .map(reading -> next.settled(reading, scene.load(scale(scene), reading), scene))
        .orElse(Outcome.to(next.waiting()));
  }

  private PlacingVessel with(Placement next) {
    return new PlacingVessel(number, countIn, next, odd);
  }

  private PlacingVessel waiting() {
    return new PlacingVessel(number, CountIn.NONE, placement, Optional.empty());
  }

  private Outcome settled(Reading reading, Mass load, Scene scene) {
    if (load.isLessThan(LIGHTEST_VESSEL)) return Outcome.to(waiting());
    Optional<Words> wrong = wrong(load, scene);
    if (wrong.isPresent())
      return Outcome.to(new PlacingVessel(number, CountIn.NONE, placement, wrong));
    CountIn next = countIn.on(true, scene.now().nanos());
    return scene.countedIn(next)
        ? Outcome.record(tared(reading, load, scene))
        : Outcome.to(new PlacingVessel(number, next, placement, Optional.empty()));
  }

  private Optional<Words> wrong(Mass load, Scene scene) {
    if (placement.below() || ZeroShift.isInDoubt(scale(scene), scene))
      return Optional.of(Words.of("detail.clear-scale"));
    if (placement.grew(load)) return Optional.of(Words.of("detail.grew-vessel"));
    Optional<String> other = new OtherPots(scene).nameLike(scale(scene), load);
    if (other.isPresent())
      return Optional.of(Words.of("detail.that-is-pot").and("pot", other.get()));
    Optional<Mass> usual = usual(scene);
    if (usual.isPresent()) {
      Mass off = load.minus(usual.get()).abs();
      return off.isMoreThan(usual.get().times(UNLIKE_PERCENT, 100))
          ? Optional.of(Words.of("detail.odd-vessel").and("load", load).and("usual", usual.get()))
          : Optional.empty();
    }
    boolean potGone = placement.isGone(scene.batch().charge().tare(), load);
    if (!placement.clearSeen() && !potGone) return Optional.of(Words.of("detail.clear-scale"));
    return isPot(load, scene) ? Optional.of(Words.of("detail.that-is-the-pot")) : Optional.empty();
  }

  /** What the vessels of this batch weighed so far, empty. */
  private static Optional<Mass> usual(Scene scene) {
    List<Mass> tares = scene.batch().charge().weights().stream()
        .filter(weight -> weight.place().kind() == Place.Kind.VESSEL)
        .filter(weight -> weight.how() != How.BY_HAND)
        .map(GuidanceEvent.WeightAccepted::tare)
        .toList();
    if (tares.isEmpty()) return Optional.empty();
    return Optional.of(tares.stream().reduce(Mass.ZERO, Mass::plus).times(1, tares.size()));
  }

  private static boolean isPot(Mass load, Scene scene) {
    Mass pot = scene.batch().charge().gross().minus(scene.batch().charge().filled());
    return !load.minus(pot).abs().isMoreThan(pot.times(1, 20));
  }

  private VesselTared tared(Reading reading, Mass load, Scene scene) {
    return new VesselTared(
        scene.now(),
        number,
        scale(scene),
        scene.setup().scales().get(scale(scene)).name(),
        reading.indication(),
        reading.basis(),
        load,
        scene.how());
  }

  private static boolean isShort(Scene scene) {
    return Fills.standing(scene.batch()) == MixStanding.TOO_LITTLE
        && Fills.toLeaveOut(scene.batch()) > 0;
  }

  private Outcome said(MakerCommand command, Scene scene) {
    if (command instanceof MakerCommand.Choose choose
        && choose.choice().equals(LEAVE_OUT)
        && isShort(scene))
      return Outcome.to(
          this,
          new VesselsLeftOut(
              scene.now(), Fills.toLeaveOut(scene.batch()), scene.batch().mixLeft()));
    if (command instanceof MakerCommand.EnterByHand entry)
      return ByHand.refusal(entry, scale(scene), scene)
          .map(words -> Outcome.refuse(this, words))
          .orElseGet(() -> Outcome.record(byHand(entry, scene)));
    if (!(command instanceof MakerCommand.GoOn) || odd.isEmpty())
      return Outcome.refuse(this, Words.of("refused.place-vessel"));
    return scene
        .settledLately(scale(scene))
        .map(reading -> Outcome.record(tared(reading, scene.load(scale(scene), reading), scene)))
        .orElse(Outcome.refuse(this, Words.of("refused.not-settled")));
  }

  /** Filled by eye or on another scale: only its net weight is known. */
  private List<GuidanceEvent> byHand(MakerCommand.EnterByHand entry, Scene scene) {
    VesselTared unweighed = new VesselTared(
        scene.now(),
        number,
        scale(scene),
        scene.setup().scales().get(scale(scene)).name(),
        Indication.of("0", MassUnit.GRAM),
        Basis.UNSTATED,
        Mass.ZERO,
        How.BY_HAND);
    Goal goal = scene.batch().vessel(unweighed).goal().orElseThrow();
    List<GuidanceEvent> events = new ArrayList<>();
    events.add(unweighed);
    events.addAll(new Taking(goal, Trace.EMPTY, scene).byHand(entry.net(), entry.reason()));
    events.add(new VesselLifted(scene.now(), number));
    return events;
  }

  @Override
  public Prompt prompt(Scene scene) {
    Saying saying = Prompt.say(
            Prompt.Kind.PLACE_VESSEL,
            ZeroShift.isBelow(scale(scene), scene)
                ? Words.of("now.keep-off")
                : Words.of("now.place-vessel")
                    .and("vessel", number + 1)
                    .and("of", scene.batch().started().vessels()))
        .detail(odd.or(() -> placement.thereAlready(scene.now().nanos())).or(() -> balance(scene)))
        .cue(countIn.fromNanos().isPresent() ? Cue.HOLD_STILL : Cue.WAITING)
        .trouble(scene.trouble(scale(scene)))
        .byHand(scene.load(scale(scene)).isEmpty())
        .countIn(scene.countIn(countIn, Words.of("count-in.vessel")));
    if (odd.isPresent()) saying.confirm(Words.of("confirm.use-vessel"));
    if (isShort(scene)) saying.choices(List.of(leaveOut(scene.batch())));
    return saying.prompt();
  }

  private static Prompt.Option leaveOut(BatchProgress batch) {
    int out = Fills.toLeaveOut(batch);
    int filled = batch.vesselsLeft() - out;
    BatchProgress then = batch.leftOut(out);
    return new Prompt.Option(
        LEAVE_OUT,
        Words.of("choice.leave-out").and("vessels", out),
        Optional.of(
            Words.of("cost.leave-out").and("vessels", filled).and("fill", Fills.target(then))),
        Optional.empty(),
        false);
  }

  /** The mix left against the vessels left. */
  private static Optional<Words> balance(Scene scene) {
    BatchProgress batch = scene.batch();
    Words left = switch (Fills.standing(batch)) {
      case ENOUGH -> Words.of("detail.mix-left").and("vessels", batch.vesselsLeft());
      case EVENLY_LESS ->
        Words.of("detail.mix-evenly")
            .and("vessels", batch.vesselsLeft())
            .and("fill", Fills.target(batch));
      case TOO_LITTLE -> Words.of("detail.mix-short");
    };
    return Optional.of(left.and("left", batch.mixLeft()));
  }
}
