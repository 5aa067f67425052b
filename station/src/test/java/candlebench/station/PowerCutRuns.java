package candlebench.station;

import candlebench.station.DiskLog.Kind;
import candlebench.station.DiskLog.Step;
import candlebench.station.journal.JournalAudit;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/**
 * Runs a bench in another process with every step it does to the disk written down, and then cuts its power after each step: what is
 * left is opened as a restart would, and compared with what had been shown as recorded by then.
 */
final class PowerCutRuns {

  /** How many cuts were tried, how many entries there were at the most, and what was wrong. */
  record Result(int cuts, int entries, List<String> faults) {}

  private final Path scratch;
  private final List<Step> steps;
  private final List<JournalEntry> whole;

  private PowerCutRuns(Path scratch, List<Step> steps, List<JournalEntry> whole) {
    this.scratch = scratch;
    this.steps = steps;
    this.whole = whole;
  }

  /** Lets a bench make some batches to the end, with the database synced as named: {@code FULL} is what the program does. */
  static PowerCutRuns of(Path folder, Path library, String synchronous, int batches)
      throws Exception {
    Path data = Files.createDirectories(folder.resolve("data-" + synchronous));
    Path log = folder.resolve("disk-" + synchronous + ".log");
    ProcessBuilder bench = new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Xmx96m",
            "-cp",
            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
            CrashedBench.class.getName(),
            data.toString(),
            "0",
            "0.0",
            Integer.toString(batches))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .redirectOutput(folder.resolve("told-" + synchronous).toFile());
    bench.environment().put(CrashedBench.SYNCHRONOUS, synchronous);
    DiskLog.follow(bench, library, data, log);
    int code = bench.start().waitFor();
    if (code != 0) throw new AssertionError("the bench ended with " + code);
    return new PowerCutRuns(folder, DiskLog.read(log), entries(data));
  }

  int steps() {
    return steps.size();
  }

  int syncs() {
    return (int) steps.stream().filter(step -> step.kind() == Kind.SYNCED).count();
  }

  /** Cuts the power after every so many steps, each time with nothing kept that was not synced, or with luck by a seed. */
  Result cut(int every, Optional<Long> seed) throws Exception {
    List<String> faults = new ArrayList<>();
    int cuts = 0;
    for (int at = 0; at <= steps.size(); at += every) {
      SplittableRandom random = new SplittableRandom(seed.orElse(0L) * 1_000_003 + at);
      double kept = random.nextInt(1, 10) / 10.0;
      BooleanSupplier luck = seed.isEmpty() ? () -> false : () -> random.nextDouble() < kept;
      String when = "after step " + at + seed.map(s -> " with luck " + s).orElse("");
      fault(at, luck).ifPresent(fault -> faults.add(when + ": " + fault));
      cuts++;
    }
    return new Result(cuts, whole.size(), faults);
  }

  private Optional<String> fault(int at, BooleanSupplier luck) throws Exception {
    Path left = scratch.resolve("left");
    erase(left);
    Files.createDirectories(left);
    List<Step> done = steps.subList(0, at);
    PowerCut.leave(done, luck, left);
    int shown =
        PowerCut.told(done, "recorded").map(line -> Integer.parseInt(line[1])).orElse(0);
    try {
      List<JournalEntry> found = entries(left);
      if (found.size() < shown)
        return Optional.of(shown + " entries were shown, " + found.size() + " are left");
      if (!found.equals(whole.subList(0, found.size())))
        return Optional.of("what is left is not what was written");
      return Optional.empty();
    } catch (JournalFailed unusable) {
      return Optional.of(unusable.getMessage());
    }
  }

  private static List<JournalEntry> entries(Path data) throws JournalFailed {
    Path file = Purpose.RECORD.under(data);
    SqliteJournal.open(file, Purpose.RECORD).close();
    List<JournalEntry> entries = new ArrayList<>();
    JournalAudit audit = JournalAudit.of(Purpose.RECORD);
    try (JournalFile reading = JournalFile.open(file)) {
      reading.scan(1, entry -> {
        audit.accept(entry);
        entries.add(entry);
      });
    }
    if (!audit.report().sound())
      throw new JournalFailed(
          JournalFailed.Trouble.DAMAGED, audit.report().findings().toString());
    return entries;
  }

  private static void erase(Path folder) throws IOException {
    if (!Files.exists(folder)) return;
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) Files.delete(each);
    }
  }
}
