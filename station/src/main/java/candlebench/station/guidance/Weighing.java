package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.shared.Verdict;
import candlebench.station.guidance.BenchProgress.Pourer;
import candlebench.station.guidance.GuidanceEvent.Asked;
import candlebench.station.guidance.GuidanceEvent.HabitsLearnt;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.PanNoted;
import candlebench.station.guidance.GuidanceEvent.Question;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import candlebench.station.guidance.pour.PourCue;
import candlebench.station.guidance.pour.PourWatch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Something is poured, put in or taken out, towards a target; settled within its tolerance it is counted in and taken.
 *
 * @param falls notices what lay in it or beside it and was taken away
 * @param resting what stood on the pan when it was last at rest, however shortly
 * @param held what stood on the pan when this weight was taken back: not taken again until it changes
 */
record Weighing(
    Goal goal,
    Optional<PourWatch> pour,
    CountIn countIn,
    OverWatch over,
    LeapWatch leap,
    Trace trace,
    FallWatch falls,
    Mass resting,
    Held held)
    implements Stage {
  /** At rest so long is enough to remember what stood there. */
  private static final long SHORT_REST = 250_000_000L;

  /** Nothing moved for so long: a stop that is still said then is over, whatever the line through the pour made of it. */
  private static final long LONG_REST = 6_000_000_000L;

  /** Whether a weight was taken back, and at what load. */
  record Held(boolean yes, Optional<Mass> load) {
    static final Held NO = new Held(false, Optional.empty());

    Held seen(Mass now, Pan pan) {
      if (!yes) return this;
      if (load.isEmpty()) return new Held(true, Optional.of(now));
      return pan.differs(now.minus(load.get()), 1) ? NO : this;
    }
  }

  static Weighing towards(Goal goal, Open open) {
    return new Weighing(
        goal,
        Optional.empty(),
        CountIn.NONE,
        OverWatch.NONE,
        LeapWatch.CALM,
        Trace.EMPTY,
        FallWatch.at(goal.net(open.left().orElse(goal.base()))),
        open.left().orElse(goal.base()),
        new Held(open.held(), Optional.empty()));
  }

  /** The same weighing, where the container was away meanwhile. */
  Weighing again() {
    return new Weighing(
        goal,
        Optional.empty(),
        CountIn.NONE,
        OverWatch.NONE,
        LeapWatch.CALM,
        trace,
        FallWatch.at(goal.net(resting)),
        resting,
        held);
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof ReadingArrived arrived && arrived.scale() == goal.scale())
      return weighed(arrived.reading(), scene);
    if (input instanceof MakerSaid said) return said(said.command(), scene);
    return Outcome.to(scene.load(goal.scale()).isPresent() ? this : interrupted());
  }

  /** A number that may not be trusted breaks the count-in. */
  private Weighing interrupted() {
    return countIn.fromNanos().isEmpty()
        ? this
        : new Weighing(goal, pour, CountIn.NONE, over, leap, trace, falls, resting, held);
  }

  private Outcome weighed(Reading reading, Scene scene) {
    Pan pan = scene.pan(goal.scale());
    Mass load = scene.load(goal.scale(), reading);
    Mass zero = scene.progress().zero(goal.scale());
    if (ZeroShift.jumped(pan, reading, zero, resting)) return Away.shifted(this, reading, scene);
    if (load.isLessThan(goal.gone())) return Outcome.to(Away.lifted(this));
    if (isLighterThanEmpty(load, scene)) return lighter(load, scene);
    Weighing next = seen(reading, goal.net(load), load, scene);
    Optional<Mass> fallenFrom = next.fallenFrom(this, goal.net(load));
    if (fallenFrom.isPresent())
      return next.resting(goal.load(fallenFrom.get())).differing(load, scene, List.of());
    if (next.isOver(scene)) return next.overPoured(scene);
    if (scene.countedIn(next.countIn))
      return Outcome.record(next.taken(scene.settled(goal.scale()).orElseThrow(), "", scene));
    return next.isToBeNoted(load, scene)
        ? Outcome.to(next, new PanNoted(scene.now(), goal.scale(), load))
        : Outcome.to(next);
  }

  /** Less than before anything went in: a spoon was in the pot when it was weighed, or something was taken out. */
  boolean isLighterThanEmpty(Mass load, Scene scene) {
    return goal.direction() == Goal.Direction.IN
        && scene.settled(goal.scale()).isPresent()
        && load.isLessThan(goal.base())
        && scene.pan(goal.scale()).differs(load.minus(goal.base()), ZeroShift.STEPS);
  }

  /**
   * What was there before it got lighter, by a leap that is over or for a second: no stream takes away, so something was taken out, or
   * lay beside it. More than was wanted never was there, but fell or leant on it.
   */
  private Optional<Mass> fallenFrom(Weighing before, Mass net) {
    return before
        .leap
        .from()
        .filter(was -> !leap.pending() && was.minus(net).isMoreThan(FallWatch.LEAST))
        .filter(was -> !was.isMoreThan(most()))
        .or(falls::from)
        .filter(was -> goal.direction() == Goal.Direction.IN);
  }

  private Mass most() {
    return goal.target().plus(goal.tolerance().over());
  }

  /** While nothing is in it, an empty pot or vessel is simply weighed again; else the maker is asked. */
  private Outcome lighter(Mass load, Scene scene) {
    if (nothingIn(scene)) return Outcome.to(weighedAgain());
    return resting(goal.base()).differing(load, scene, List.of());
  }

  private Stage weighedAgain() {
    if (goal.isInCup()) return PlacingCup.begin();
    return goal.isVessel() ? PlacingVessel.another(goal.place().number()) : PlacingPot.begin();
  }

  /** Whether nothing went into the container yet, as far as was seen. */
  boolean nothingIn(Scene scene) {
    boolean first =
        goal.isVessel() || goal.isInCup() || scene.batch().charge().inPot().isEmpty();
    return first && trace.isFlat(goal.container().times(1, 100));
  }

  /** The same weighing, remembering what stood there. */
  Weighing resting(Mass load) {
    return new Weighing(goal, pour, countIn, over, leap, trace, falls, load, held);
  }

  Outcome differing(Mass load, Scene scene, List<GuidanceEvent> first) {
    List<GuidanceEvent> events = new ArrayList<>(first);
    events.add(new Asked(scene.now(), Question.PAN_DIFFERS, goal.scale(), resting, load));
    return Outcome.to(new PanDiffers(this, load), events);
  }

  /** What is about to be taken need not be noted before. */
  private boolean isToBeNoted(Mass load, Scene scene) {
    Pan pan = scene.pan(goal.scale());
    Mass noted = scene.batch().open().left().orElse(goal.base());
    return scene.settled(goal.scale()).isPresent()
        && pan.differs(load.minus(noted), ZeroShift.STEPS)
        && verdict(goal.net(load), pan) != Verdict.WITHIN;
  }

  private Weighing seen(Reading reading, Mass net, Mass load, Scene scene) {
    Pan pan = scene.pan(goal.scale());
    long nanos = reading.stamp().nanos();
    LeapWatch leaps = goal.byPieces() ? leap : leap.seen(nanos, net, goal.kind(), pan);
    FallWatch fallen = falls.seen(nanos, net, most(), pan);
    Held nowHeld = held.seen(load, pan);
    Optional<PourWatch> watch = watched(nanos, net, leaps, scene);
    boolean nothingWanted = watch.map(PourWatch::isDone).orElse(true);
    boolean calm = !leaps.pending() && fallen.open().isEmpty() && !nowHeld.yes();
    return new Weighing(
        goal,
        watch,
        countIn.on(calm && nothingWanted && mayBeTaken(scene), nanos),
        leaps.pending() ? OverWatch.NONE : over.seen(nanos, net, goal, pan),
        leaps,
        trace.and(nanos, net),
        fallen,
        fallen
            .open()
            .map(fall -> goal.load(net.plus(fall.by())))
            .orElse(restedShortly(pan) ? load : resting),
        nowHeld);
  }

  /**
   * No line is drawn through a leap; after it the watch begins anew, and once in a long rest whose "stop" does not end: only once,
   * since a new watch also forgets how long nobody has added anything.
   */
  private Optional<PourWatch> watched(long nanos, Mass net, LeapWatch leaps, Scene scene) {
    if (goal.byPieces() || leaps.pending()) return Optional.empty();
    long rested = scene.pan(goal.scale()).steady().map(Steady::rested).orElse(0L);
    return Optional.of(pour.map(watch -> watch.seen(nanos, net))
        .filter(watch -> rested < LONG_REST
            || rested >= watch.sinceBegun(nanos)
            || watch.cue(nanos).kind() != PourCue.Kind.STOP)
        .orElseGet(() -> unwatched(nanos, net, scene)));
  }

  private PourWatch unwatched(long nanos, Mass net, Scene scene) {
    return PourWatch.begin(
        goal.kind(),
        goal.target(),
        goal.tolerance(),
        scene.pan(goal.scale()).division(),
        scene.habits(goal.scale(), goal.kind()),
        nanos,
        net);
  }

  /** The watch, or one that has seen no more than what is there now. */
  PourWatch watch(Mass net, Scene scene) {
    return pour.orElseGet(() -> unwatched(scene.now().nanos(), net, scene));
  }

  private boolean mayBeTaken(Scene scene) {
    return scene
        .settled(goal.scale())
        .filter(taken -> verdict(net(taken, scene), scene.pan(goal.scale())) == Verdict.WITHIN)
        .isPresent();
  }

  private Verdict verdict(Mass net, Pan pan) {
    return goal.tolerance().judge(goal.target(), net, pan.division());
  }

  private static boolean restedShortly(Pan pan) {
    return pan.steady().filter(run -> run.spans(SHORT_REST)).isPresent();
  }

  private boolean isOver(Scene scene) {
    if (leap.pending()) return false;
    Mass net = goal.net(scene.load(goal.scale()).orElseThrow());
    return OverWatch.settledOver(net, goal, scene.pan(goal.scale()))
        || over.stays(scene.now().nanos(), goal);
  }

  private Outcome overPoured(Scene scene) {
    Mass net = goal.net(scene.load(goal.scale()).orElseThrow());
    List<GuidanceEvent> events = new ArrayList<>();
    boolean settled = OverWatch.settledOver(net, goal, scene.pan(goal.scale()));
    events.add(new OverPoured(
        scene.now(), goal.place(), goal.name(), goal.target(), goal.tolerance(), net, settled));
    if (settled) learnt(scene).ifPresent(events::add);
    return Outcome.to(OverPour.from(this, Optional.of(net)), events);
  }

  private List<GuidanceEvent> taken(Reading reading, String reason, Scene scene) {
    List<GuidanceEvent> events =
        new ArrayList<>(new Taking(goal, trace, scene).settled(reading, reason));
    learnt(scene).ifPresent(events::add);
    return events;
  }

  private Optional<GuidanceEvent> learnt(Scene scene) {
    Pourer who = new Pourer(goal.scale(), scene.person(), goal.kind());
    return pour.map(PourWatch::shown)
        .filter(shown -> !shown.isNothing())
        .map(shown -> new HabitsLearnt(
            scene.now(),
            who.scale(),
            who.person(),
            who.kind(),
            shown,
            scene.progress().habits(who).learn(shown)));
  }

  private Outcome said(MakerCommand command, Scene scene) {
    if (command instanceof MakerCommand.GoOn) return goOn(scene);
    if (command instanceof MakerCommand.EnterByHand entry) return byHand(entry, scene);
    return Outcome.refuse(this, Words.of("refused.not-now"));
  }

  /** Takes it as it is: within, without waiting for the count-in; or short, where no more can be had. */
  private Outcome goOn(Scene scene) {
    Optional<Reading> settled = scene.settledLately(goal.scale());
    if (settled.isEmpty()) return Outcome.refuse(this, Words.of("refused.not-settled"));
    return verdict(net(settled.get(), scene), scene.pan(goal.scale())) == Verdict.WITHIN
        ? Outcome.record(taken(settled.get(), "", scene))
        : mayBeTakenShort(scene)
            ? Outcome.record(taken(settled.get(), "short", scene))
            : Outcome.refuse(this, Words.of("refused.not-now"));
  }

  private Mass net(Reading reading, Scene scene) {
    return goal.net(scene.load(goal.scale(), reading));
  }

  private boolean mayBeTakenShort(Scene scene) {
    Pan pan = scene.pan(goal.scale());
    return scene
        .settledLately(goal.scale())
        .map(reading -> net(reading, scene))
        .filter(net -> !net.isNegative() && pan.differs(net, ZeroShift.STEPS))
        .filter(net -> verdict(net, pan) == Verdict.UNDER)
        .isPresent();
  }

  private Outcome byHand(MakerCommand.EnterByHand entry, Scene scene) {
    return ByHand.refusal(entry, goal.scale(), scene)
        .map(words -> Outcome.refuse(this, words))
        .orElseGet(() ->
            Outcome.record(new Taking(goal, trace, scene).byHand(entry.net(), entry.reason())));
  }

  @Override
  public Prompt prompt(Scene scene) {
    return new WeighingWords(this, scene).prompt(mayBeTakenShort(scene));
  }
}
