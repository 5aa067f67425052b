package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.LotChanged;
import candlebench.station.guidance.GuidanceEvent.LotReceived;
import candlebench.station.guidance.GuidanceEvent.Noted;
import candlebench.station.guidance.GuidanceEvent.PotTaught;
import candlebench.station.guidance.GuidanceEvent.ScaleChecked;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What the maker writes down beside the weighing: lots, checks of a scale, remarks and corrections. None of it moves the bench from its stage. */
final class Bookkeeping {
  /** The longest lot, remark or reason: a few lines, and an end to a scanner gone wild. */
  static final int LONGEST = 500;

  private static final Pattern GRAMS = Pattern.compile("\\d{1,6}(\\.\\d{1,6})?");

  private Bookkeeping() {}

  /** What a command of this kind comes to; empty for any other. */
  static Optional<Outcome> of(MakerCommand command, Scene scene, Stage stage) {
    if (command instanceof MakerCommand.ReceiveLot receive)
      return Optional.of(received(receive, scene, stage));
    if (command instanceof MakerCommand.ChangeLot change)
      return Optional.of(changed(change, scene, stage));
    if (command instanceof MakerCommand.CheckScale check)
      return Optional.of(checked(check, scene, stage));
    if (command instanceof MakerCommand.TeachPot teach)
      return Optional.of(taught(teach, scene, stage));
    if (command instanceof MakerCommand.Note note) return Optional.of(noted(note, scene, stage));
    if (command instanceof MakerCommand.Correct correct)
      return Optional.of(corrected(correct, scene, stage));
    return Optional.empty();
  }

  private static Outcome received(MakerCommand.ReceiveLot receive, Scene scene, Stage stage) {
    if (isNoLine(receive.material())
        || isNoLine(receive.lot())
        || receive.note().length() > LONGEST) return Outcome.refuse(stage, Words.of("refused.lot"));
    if (receive.amount().isNegative())
      return Outcome.refuse(stage, Words.of("refused.negative-amount"));
    return Outcome.to(
        stage,
        new LotReceived(
            scene.now(),
            receive.material().strip(),
            receive.lot().strip(),
            receive.amount(),
            receive.note().strip(),
            receive.person()));
  }

  private static Outcome changed(MakerCommand.ChangeLot change, Scene scene, Stage stage) {
    if (isNoLine(change.material()) || change.lot().length() > LONGEST)
      return Outcome.refuse(stage, Words.of("refused.lot"));
    Optional<BatchProgress> running = scene.progress().running();
    if (running.isEmpty()) return Outcome.refuse(stage, Words.of("refused.no-batch"));
    Optional<Goal> weighed =
        running.get().goal().filter(goal -> goal.name().equals(change.material()));
    Optional<Mass> net = weighed.flatMap(goal -> scene.load(goal.scale()).map(goal::net));
    if (weighed.isPresent() && net.isEmpty())
      return Outcome.refuse(stage, Words.of("refused.no-weight-for-lot"));
    return Outcome.to(
        stage,
        new LotChanged(
            scene.now(),
            change.material(),
            running.get().started().lots().getOrDefault(change.material(), ""),
            change.lot().strip(),
            net.orElse(Mass.ZERO),
            scene.person()));
  }

  /** What a scale shows of a known mass, by its number alone: no shifted zero is made good, for that too is to be seen. */
  private static Outcome checked(MakerCommand.CheckScale check, Scene scene, Stage stage) {
    if (!scene.progress().isQuiet())
      return Outcome.refuse(stage, Words.of("refused.check-between-batches"));
    if (check.known().compareTo(Mass.ZERO) <= 0)
      return Outcome.refuse(stage, Words.of("refused.no-weight"));
    List<String> names =
        scene.setup().scales().stream().map(BenchSetup.Scale::name).toList();
    int scale = names.indexOf(check.scale());
    if (scale < 0)
      return Outcome.refuse(stage, Words.of("refused.no-such-scale").and("scale", check.scale()));
    Optional<Reading> settled = scene.settledLately(scale);
    if (settled.isEmpty()) return Outcome.refuse(stage, Words.of("refused.not-settled"));
    Reading reading = settled.get();
    if (isAnotherThing(reading.mass(), check.known()))
      return Outcome.refuse(
          stage, Words.of("refused.nothing-to-check-by").and("shown", reading.mass()));
    return Outcome.to(
        stage,
        new ScaleChecked(
            scene.now(),
            scale,
            check.scale(),
            check.known(),
            reading.indication(),
            reading.mass(),
            check.person()));
  }

  /** Lighter than a pot or heavier than any that a hand lifts is something else. */
  private static Outcome taught(MakerCommand.TeachPot teach, Scene scene, Stage stage) {
    if (!scene.progress().isQuiet())
      return Outcome.refuse(stage, Words.of("refused.teach-between-batches"));
    if (isNoLine(teach.pot())) return Outcome.refuse(stage, Words.of("refused.teach-name"));
    List<String> names =
        scene.setup().scales().stream().map(BenchSetup.Scale::name).toList();
    int scale = names.indexOf(teach.scale());
    if (scale < 0)
      return Outcome.refuse(stage, Words.of("refused.no-such-scale").and("scale", teach.scale()));
    Optional<Reading> settled = scene.settledLately(scale);
    if (settled.isEmpty()) return Outcome.refuse(stage, Words.of("refused.not-settled"));
    Mass empty = scene.load(scale, settled.get());
    if (empty.isLessThan(PlacingPot.LIGHTEST_POT))
      return Outcome.refuse(stage, Words.of("refused.teach-empty"));
    return Outcome.to(
        stage,
        new PotTaught(
            scene.now(),
            scale,
            teach.scale(),
            teach.pot().strip(),
            settled.get().indication(),
            empty,
            teach.person()));
  }

  /** A scale is not wrong by half or by double: then something else lies there, or nothing. */
  private static boolean isAnotherThing(Mass shown, Mass known) {
    return shown.times(2).isLessThan(known) || shown.isMoreThan(known.times(2));
  }

  private static Outcome noted(MakerCommand.Note note, Scene scene, Stage stage) {
    if (note.text().isBlank() || note.text().length() > LONGEST)
      return Outcome.refuse(stage, Words.of("refused.note").and("most", LONGEST));
    return Outcome.to(
        stage, new Noted(scene.now(), note.batch(), note.text().strip(), note.person()));
  }

  private static Outcome corrected(MakerCommand.Correct correct, Scene scene, Stage stage) {
    if (correct.reason().isBlank() || correct.reason().length() > LONGEST)
      return Outcome.refuse(stage, Words.of("refused.reason"));
    if (correct.now().length() > LONGEST)
      return Outcome.refuse(stage, Words.of("refused.note").and("most", LONGEST));
    if (correct.what() == Correctable.WEIGHT
        && !GRAMS.matcher(correct.now().strip()).matches())
      return Outcome.refuse(stage, Words.of("refused.correct-weight"));
    boolean runs = Stream.concat(
            scene.progress().running().stream(), scene.progress().aside().stream())
        .anyMatch(batch -> batch.started().code().equals(correct.batch()));
    if (runs && correct.what() == Correctable.WEIGHT)
      return Outcome.refuse(stage, Words.of("refused.correct-when-done"));
    return Outcome.to(
        stage,
        new Corrected(
            scene.now(),
            correct.batch(),
            correct.entry(),
            correct.what(),
            correct.material(),
            correct.was(),
            correct.now().strip(),
            correct.reason().strip(),
            correct.person()));
  }

  private static boolean isNoLine(String text) {
    return text.isBlank() || text.length() > LONGEST;
  }
}
