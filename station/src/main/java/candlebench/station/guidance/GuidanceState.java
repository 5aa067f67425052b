package candlebench.station.guidance;

import candlebench.shared.Stamp;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import candlebench.station.guidance.GuidanceInput.LineChanged;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.NoWeightShown;
import candlebench.station.guidance.GuidanceInput.PrintKeyPressed;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * The bench's guidance at one moment: what lasts ({@link BenchProgress}, a fold of events) and beside it what does not (what the
 * scales show, and the stage). Answers every input with the state after it; reads no clock and touches no wire.
 */
public final class GuidanceState {
  private final BenchSetup setup;
  private final BenchProgress progress;
  private final List<Pan> pans;
  private final Stage stage;
  private final Optional<AfterWatch> after;
  private final LastAnswers answered;

  private GuidanceState(
      BenchSetup setup,
      BenchProgress progress,
      List<Pan> pans,
      Stage stage,
      Optional<AfterWatch> after,
      LastAnswers answered) {
    this.setup = setup;
    this.progress = progress;
    this.pans = List.copyOf(pans);
    this.stage = stage;
    this.after = after;
    this.answered = answered;
  }

  /** A bench on which nothing ever happened. */
  public static GuidanceState begin(BenchSetup setup) {
    return resume(setup, BenchProgress.EMPTY);
  }

  /** A bench after a restart, given what was folded from the journal. */
  public static GuidanceState resume(BenchSetup setup, BenchProgress progress) {
    return new GuidanceState(
        setup,
        progress,
        Collections.nCopies(setup.scales().size(), Pan.UNHEARD),
        Stages.resumed(progress),
        Optional.empty(),
        LastAnswers.NONE);
  }

  public BenchSetup setup() {
    return setup;
  }

  public BenchProgress progress() {
    return progress;
  }

  /** What is to be said at a moment at or after the newest input. */
  public Prompt prompt(Stamp now) {
    return stage.prompt(new Scene(setup, progress, pans, now));
  }

  /** The time left to take the last step back; empty where there is none, or it is too late. */
  public Optional<Prompt.Running> undoTime(Stamp now) {
    return Commands.undoTime(new Scene(setup, progress, pans, now));
  }

  /** How the pots stand, where several take turns. */
  public List<PotStanding> pots(Stamp now) {
    return PotStanding.all(new Scene(setup, progress, pans, now));
  }

  public GuidanceStep on(GuidanceInput input) {
    if (input instanceof MakerSaid said && answered.to(said.commandId()).isPresent())
      return new GuidanceStep(
          this, List.of(), List.of(answered.to(said.commandId()).get()));
    List<Pan> seen = panned(input);
    if (input instanceof ReadingArrived arrived && seen.get(arrived.scale()).isInDoubt())
      return new GuidanceStep(
          new GuidanceState(setup, progress, seen, stage, after, answered), List.of(), List.of());
    Scene scene = new Scene(setup, progress, seen, input.stamp());
    Optional<AfterWatch> watch = after.flatMap(watching -> watching.seen(scene));
    Optional<AcceptanceReopened> moved = watch.flatMap(watching -> watching.moved(scene));
    Outcome outcome = moved.map(Outcome::record).orElseGet(() -> outcome(input, scene));
    return step(input, seen, watch, outcome);
  }

  private Outcome outcome(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said) return Commands.said(said, stage, scene);
    if (input instanceof PrintKeyPressed pressed)
      return Commands.said(
          new MakerSaid("", new MakerCommand.GoOn(), pressed.stamp()), stage, scene.byPrintKey());
    return stage.on(input, scene);
  }

  private GuidanceStep step(
      GuidanceInput input, List<Pan> seen, Optional<AfterWatch> watch, Outcome outcome) {
    List<GuidanceEvent> events = new ArrayList<>(outcome.events());
    BenchProgress known = progress.after(events);
    Optional<GuidanceEvent> follows = Consequences.of(known, input.stamp());
    while (follows.isPresent()) {
      events.add(follows.get());
      known = known.after(follows.get());
      follows = Consequences.of(known, input.stamp());
    }
    BenchProgress then = known;
    boolean otherPot = isOtherPot(events);
    Stage next =
        outcome.next().orElseGet(() -> otherPot ? Stages.resumed(then) : Stages.next(then));
    List<GuidanceEffect> effects = effects(input, outcome);
    GuidanceState state = new GuidanceState(
        setup,
        then,
        sure(seen, events),
        next,
        otherPot ? Optional.empty() : watchAfter(events, watch),
        answered.and(effects));
    return new GuidanceStep(state, events, effects);
  }

  /** Whether another pot was taken in hand: it is compared with what was left, as after a restart. */
  private static boolean isOtherPot(List<GuidanceEvent> events) {
    return events.stream().anyMatch(GuidanceEvent.PotTaken.class::isInstance);
  }

  /** Scales whose zero was just found. */
  private static List<Pan> sure(List<Pan> pans, List<GuidanceEvent> events) {
    List<Pan> known = new ArrayList<>(pans);
    for (GuidanceEvent event : events)
      if (event instanceof ZeroFound found)
        known.set(found.scale(), known.get(found.scale()).sure());
    return known;
  }

  /** A weight that was just taken is watched from now on, with the goal it was taken for. */
  private Optional<AfterWatch> watchAfter(List<GuidanceEvent> events, Optional<AfterWatch> watch) {
    return events.stream()
        .filter(WeightAccepted.class::isInstance)
        .map(WeightAccepted.class::cast)
        .findFirst()
        .map(taken -> progress
            .batch()
            .flatMap(BatchProgress::goal)
            .flatMap(goal -> AfterWatch.of(taken, goal)))
        .orElse(watch);
  }

  private static List<GuidanceEffect> effects(GuidanceInput input, Outcome outcome) {
    if (!(input instanceof MakerSaid said)) return List.of();
    GuidanceEffect effect = outcome.refused().isPresent()
        ? new GuidanceEffect.CommandRefused(said.commandId(), outcome.refused().get())
        : new GuidanceEffect.CommandDone(said.commandId());
    return List.of(effect);
  }

  private List<Pan> panned(GuidanceInput input) {
    if (input instanceof ReadingArrived arrived)
      return with(
          arrived.scale(),
          pans.get(arrived.scale()).seen(arrived.reading(), setup.scales().get(arrived.scale())));
    if (input instanceof NoWeightShown none)
      return with(none.scale(), pans.get(none.scale()).without(none.why()));
    if (input instanceof LineChanged line)
      return with(line.scale(), pans.get(line.scale()).line(line.answering()));
    return pans;
  }

  private List<Pan> with(int scale, Pan pan) {
    List<Pan> changed = new ArrayList<>(pans);
    changed.set(scale, pan);
    return changed;
  }
}
