package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Stamp;
import candlebench.station.batch.BatchCode;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.PotShare;
import candlebench.station.batch.Product;
import candlebench.station.batch.Recipe;
import candlebench.station.guidance.GuidanceEvent.BatchAbandoned;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.MixSpilt;
import candlebench.station.guidance.GuidanceEvent.Undone;
import candlebench.station.guidance.GuidanceEvent.WorkDivided;
import candlebench.station.guidance.GuidanceEvent.WorkEnded;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Commands that mean the same in every stage; the rest is the stage's. */
final class Commands {
  /** Colder or hotter is no wax but a slip of the finger: wax smokes at about 120 °C (published makers' advice). */
  private static final int COLDEST_TENTHS = -200;

  private static final int HOTTEST_TENTHS = 2000;

  private Commands() {}

  static Outcome said(MakerSaid said, Stage stage, Scene scene) {
    MakerCommand command = said.command();
    if (command instanceof MakerCommand.StartBatch start) return start(start, stage, scene);
    if (command instanceof MakerCommand.Undo) return undo(stage, scene);
    if (command instanceof MakerCommand.Abandon abandon) return abandon(abandon, stage, scene);
    if (command instanceof MakerCommand.NoteTemperature noted) return noted(noted, stage, scene);
    if (command instanceof MakerCommand.NoteSpill spill) return spilt(spill, stage, scene);
    return Bookkeeping.of(command, scene, stage).orElseGet(() -> stage.on(said, scene));
  }

  private static Outcome start(MakerCommand.StartBatch start, Stage stage, Scene scene) {
    if (!scene.progress().isQuiet()) return Outcome.refuse(stage, Words.of("refused.batch-runs"));
    Optional<Product> product = scene.setup().product(start.recipe());
    if (product.isEmpty())
      return Outcome.refuse(stage, Words.of("refused.no-recipe").and("recipe", start.recipe()));
    if (start.vessels() < 1 || start.vessels() > BatchPlan.MOST_VESSELS)
      return Outcome.refuse(stage, Words.of("refused.vessels").and("most", BatchPlan.MOST_VESSELS));
    Optional<String> refusal = product.get().refusal(start.vessels());
    if (refusal.isPresent())
      return Outcome.refuse(stage, Words.of("refused.plan").and("why", refusal.get()));
    List<PotShare> shares = product.get().shares(start.vessels());
    if (!shares.isEmpty()) return divide(start, shares, stage, scene);
    Recipe recipe = product.get().forVessels(start.vessels());
    return noRoom(new BatchPlan(recipe, start.vessels()), scene)
        .map(words -> Outcome.refuse(stage, words))
        .orElseGet(() -> Outcome.record(new BatchStarted(
            scene.now(), nextCode(scene), recipe, start.vessels(), start.person(), start.lots())));
  }

  /** Too much for one pot: the first pot's share begins at once. */
  private static Outcome divide(
      MakerCommand.StartBatch start, List<PotShare> shares, Stage stage, Scene scene) {
    for (PotShare share : shares) {
      Optional<Words> noRoom = noRoom(new BatchPlan(share.recipe(), share.vessels()), scene);
      if (noRoom.isPresent()) return Outcome.refuse(stage, noRoom.get());
    }
    WorkDivided divided =
        new WorkDivided(scene.now(), start.recipe(), start.person(), start.lots(), shares);
    BenchProgress then = scene.progress().after(divided);
    List<GuidanceEvent> events = new ArrayList<>();
    events.add(divided);
    events.addAll(OtherPots.begin(new Scene(scene.setup(), then, scene.pans(), scene.now()), 0));
    return Outcome.record(events);
  }

  private static Optional<Words> noRoom(BatchPlan plan, Scene scene) {
    Optional<Mass> most = mostOnAnyScale(scene.setup());
    return most.filter(plan.total()::isMoreThan)
        .map(capacity ->
            Words.of("refused.no-room").and("total", plan.total()).and("capacity", capacity));
  }

  /** What the next batch is called. */
  static String nextCode(Scene scene) {
    LocalDate today = scene.now().wall().atZone(scene.setup().zone()).toLocalDate();
    return new BatchCode(today, scene.progress().begun() + 1).toString();
  }

  /** The most that the strongest scale carries; empty where one's capacity is not known. */
  private static Optional<Mass> mostOnAnyScale(BenchSetup setup) {
    if (setup.scales().stream().anyMatch(scale -> scale.capacity().isEmpty()))
      return Optional.empty();
    return setup.scales().stream()
        .map(scale -> scale.capacity().orElseThrow())
        .max(Mass::compareTo);
  }

  private static Outcome abandon(MakerCommand.Abandon abandon, Stage stage, Scene scene) {
    List<GuidanceEvent> events = new ArrayList<>();
    if (scene.progress().running().isPresent())
      events.add(new BatchAbandoned(scene.now(), abandon.reason()));
    if (!scene.progress().toCome().isEmpty())
      events.add(new WorkEnded(scene.now(), abandon.reason()));
    if (events.isEmpty()) return Outcome.refuse(stage, Words.of("refused.no-batch"));
    return abandon.reason().isBlank()
        ? Outcome.refuse(stage, Words.of("refused.reason-needed"))
        : Outcome.record(events);
  }

  private static Outcome noted(MakerCommand.NoteTemperature noted, Stage stage, Scene scene) {
    if (scene.progress().running().isEmpty())
      return Outcome.refuse(stage, Words.of("refused.no-batch"));
    int tenths = noted.tenthsCelsius();
    return tenths < COLDEST_TENTHS || tenths > HOTTEST_TENTHS
        ? Outcome.refuse(stage, Words.of("refused.temperature"))
        : Outcome.to(stage, Temperatures.noted(tenths, scene));
  }

  private static Outcome spilt(MakerCommand.NoteSpill spill, Stage stage, Scene scene) {
    Optional<BatchProgress> running = scene.progress().running();
    if (running.isEmpty()) return Outcome.refuse(stage, Words.of("refused.no-batch"));
    boolean possible =
        !spill.amount().isNegative() && !spill.amount().isMoreThan(running.get().mixLeft());
    return possible
        ? Outcome.to(stage, new MixSpilt(scene.now(), spill.amount()))
        : Outcome.refuse(
            stage, Words.of("refused.spill").and("left", running.get().mixLeft()));
  }

  private static Outcome undo(Stage stage, Scene scene) {
    return undoable(scene)
        .map(undo -> Outcome.record(new Undone(scene.now(), undo.what())))
        .orElseGet(() -> Outcome.refuse(stage, Words.of("refused.nothing-to-undo")));
  }

  /**
   * What may be taken back, if it is not too late by either clock: after a restart the one that never goes back began anew.
   */
  private static Optional<BatchProgress.Undo> undoable(Scene scene) {
    Duration time = scene.setup().timing().undo();
    Stamp now = scene.now();
    return scene.progress().batch().flatMap(BatchProgress::undo).filter(undo -> {
      Duration elapsed = now.since(undo.at());
      Duration byWall = Duration.between(undo.at().wall(), now.wall());
      return !elapsed.isNegative() && elapsed.compareTo(time) <= 0 && byWall.compareTo(time) <= 0;
    });
  }

  static Optional<Prompt.Running> undoTime(Scene scene) {
    long total = scene.setup().timing().undo().toNanos();
    return undoable(scene)
        .map(undo -> new Prompt.Running(
            Words.of("undo." + undo.what()),
            total - scene.now().since(undo.at()).toNanos(),
            total));
  }
}
