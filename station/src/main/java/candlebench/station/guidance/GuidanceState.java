package candlebench.station.guidance;

import candlebench.shared.Stamp;
import candlebench.station.batch.BatchCode;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.BatchAbandoned;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.Undone;
import candlebench.station.guidance.GuidanceInput.LineChanged;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.NoWeightShown;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.time.LocalDate;
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

  private GuidanceState(BenchSetup setup, BenchProgress progress, List<Pan> pans, Stage stage) {
    this.setup = setup;
    this.progress = progress;
    this.pans = List.copyOf(pans);
    this.stage = stage;
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
        stageFor(progress));
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

  public GuidanceStep on(GuidanceInput input) {
    List<Pan> seen = panned(input);
    Scene scene = new Scene(setup, progress, seen, input.stamp());
    Outcome outcome = input instanceof MakerSaid said ? said(said, scene) : stage.on(input, scene);
    List<GuidanceEvent> events = new ArrayList<>(outcome.events());
    BenchProgress after = progress.after(events);
    if (after.running().filter(batch -> batch.step().isEmpty()).isPresent()) {
      BatchDone done = new BatchDone(input.stamp());
      events.add(done);
      after = after.after(done);
    }
    BenchProgress known = after;
    Stage next = outcome.next().orElseGet(() -> stageFor(known));
    return new GuidanceStep(
        new GuidanceState(setup, after, seen, next), events, effects(input, outcome));
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

  /** Commands that mean the same in every stage; the rest is the stage's. */
  private Outcome said(MakerSaid said, Scene scene) {
    MakerCommand command = said.command();
    if (command instanceof MakerCommand.StartBatch start) return start(start, scene);
    if (command instanceof MakerCommand.Undo) return undo(scene);
    if (command instanceof MakerCommand.Abandon abandon)
      return progress.running().isPresent()
          ? Outcome.record(new BatchAbandoned(scene.now(), abandon.reason()))
          : Outcome.refuse(stage, Words.of("refused.no-batch"));
    return Bookkeeping.of(command, scene, stage).orElseGet(() -> stage.on(said, scene));
  }

  private Outcome start(MakerCommand.StartBatch start, Scene scene) {
    if (progress.running().isPresent())
      return Outcome.refuse(stage, Words.of("refused.batch-runs"));
    Optional<Recipe> recipe = setup.recipe(start.recipe());
    if (recipe.isEmpty())
      return Outcome.refuse(stage, Words.of("refused.no-recipe").and("recipe", start.recipe()));
    if (start.vessels() < 1 || start.vessels() > BatchPlan.MOST_VESSELS)
      return Outcome.refuse(stage, Words.of("refused.vessels").and("most", BatchPlan.MOST_VESSELS));
    LocalDate today = scene.now().wall().atZone(setup.zone()).toLocalDate();
    BatchCode code = new BatchCode(today, progress.begun() + 1);
    return Outcome.record(new BatchStarted(
        scene.now(), code.toString(), recipe.get(), start.vessels(), start.person(), start.lots()));
  }

  private Outcome undo(Scene scene) {
    return undoable(scene.now())
        .map(undo -> Outcome.record(new Undone(scene.now(), undo.what())))
        .orElseGet(() -> Outcome.refuse(stage, Words.of("refused.nothing-to-undo")));
  }

  /** What may be taken back at a moment, if it is not too late. */
  private Optional<BatchProgress.Undo> undoable(Stamp now) {
    return progress
        .batch()
        .flatMap(BatchProgress::undo)
        .filter(undo -> now.since(undo.at()).compareTo(setup.timing().undo()) <= 0);
  }

  /** The time left to take the last step back; empty where there is none, or it is too late. */
  public Optional<Prompt.Running> undoTime(Stamp now) {
    long total = setup.timing().undo().toNanos();
    return undoable(now)
        .map(undo -> new Prompt.Running(
            Words.of("undo." + undo.what()), total - now.since(undo.at()).toNanos(), total));
  }

  /** The stage in which what is known leaves the bench. */
  private static Stage stageFor(BenchProgress progress) {
    if (progress.batch().isEmpty()) return new Idle();
    BatchProgress batch = progress.batch().get();
    if (!batch.runs()) return new Finished();
    if (batch.goal().isPresent()) return Weighing.towards(batch.goal().get());
    Step step = batch.step().orElseThrow();
    if (step instanceof Step.PlacePot) return new PlacingPot(CountIn.NONE);
    throw new AssertionError(step);
  }
}
