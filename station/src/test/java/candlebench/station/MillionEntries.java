package candlebench.station;

import candlebench.station.journal.BatchRow;
import candlebench.station.journal.Checkpoint;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.EntryText;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.Projections;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.record.BatchScript;
import candlebench.station.record.Recorded;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;

/**
 * A benchmark, not a test: a practice journal of a million entries, how long a bench takes to start on it, and how long it takes from a
 * lot to its batches and back.
 *
 * <p>{@code mvn -q -pl station -am -Ptables test-compile exec:java
 * -Dexec.mainClass=candlebench.station.MillionEntries -Dexec.args="DIR [ENTRIES]"}. Where DIR holds a journal already it is only
 * measured, so that a second run shows a start from a checkpoint in a process that has read nothing.
 */
public final class MillionEntries {
  private static final int QUESTIONS = 200;
  private static final int VESSELS = 12;

  private MillionEntries() {}

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    long entries = args.length > 1 ? Long.parseLong(args[1]) : 1_000_000;
    Path file = Purpose.PRACTICE.under(folder);
    if (!Files.exists(file)) {
      print("write " + entries + " entries", timed(() -> write(file, entries)));
      System.out.printf("  %.0f MB%n", Files.size(file) / 1e6);
      print("first build of the projections", timed(() -> {
        try (SqliteJournal journal = SqliteJournal.open(file, Purpose.PRACTICE);
            Projections projections = Projections.open(Projections.beside(file), journal)) {
          projections.catchUp();
        }
        return "";
      }));
      System.out.printf("  %.0f MB%n", Files.size(Projections.beside(file)) / 1e6);
    }
    measure(file);
  }

  private static void measure(Path file) throws Exception {
    long begun = System.nanoTime();
    Duration busyBefore = processorTime();
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.PRACTICE);
        Projections projections = Projections.open(Projections.beside(file), journal)) {
      Checkpoint from = projections.checkpoint();
      Recollection.of(journal, from);
      long took = System.nanoTime() - begun;
      System.out.printf(
          "start with %d entries, %d of them read: %.2f s, %.2f s of them of a processor%n",
          journal.length(),
          journal.length() - from.entries(),
          took / 1e9,
          processorTime().minus(busyBefore).toMillis() / 1e3);
      List<BatchRow> rows = projections.batches(Long.MAX_VALUE, Projections.MOST_ROWS);
      Random random = new Random(5);
      ask("lot → batches and vessels", () -> projections.batchesOf(lot(random, 40, 20_000), ""));
      ask(
          "batch → lots",
          () -> projections.lotsOf(rows.get(random.nextInt(rows.size())).code()));
      ask(
          "batch → its whole record, from the journal",
          () -> projections.record(rows.get(random.nextInt(rows.size())).code()));
      ask("newest 50 batches", () -> projections.batches(Long.MAX_VALUE, 50));
      print("stock of all lots", timed(() -> projections.stock(1000)));
    }
  }

  private static void ask(String what, Callable<Object> question) throws Exception {
    long[] nanos = new long[QUESTIONS];
    for (int i = 0; i < QUESTIONS; i++) nanos[i] = timed(question);
    Arrays.sort(nanos);
    System.out.printf(
        "%-60s median %.1f ms, 99 %% %.1f ms, worst %.1f ms of %d%n",
        what,
        nanos[QUESTIONS / 2] / 1e6,
        nanos[QUESTIONS * 99 / 100] / 1e6,
        nanos[QUESTIONS - 1] / 1e6,
        QUESTIONS);
  }

  private static String write(Path file, long entries) throws JournalFailed, IOException {
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.PRACTICE)) {
      for (int number = 1; journal.length() < entries; ) {
        List<EntryText> texts = new ArrayList<>();
        while (texts.size() < 2_000)
          for (Recorded each : batch(number++).entries()) texts.add(EntryJson.text(each.event()));
        journal.append("2026-11-25T09:00:00+01:00", texts);
      }
    }
    return "";
  }

  private static BatchScript batch(int number) {
    Map<String, String> lots = BatchScript.lots(
        "W-" + number / 40, "Q-" + number / 25, "G-" + number / 30, "K-" + number / 90);
    return BatchScript.candles("20261125-" + number, VESSELS, lots);
  }

  private static String lot(Random random, int batchesEach, int batches) {
    return "W-" + random.nextInt(batches / batchesEach);
  }

  private static Duration processorTime() {
    return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
  }

  private static long timed(Callable<?> work) throws Exception {
    long begun = System.nanoTime();
    work.call();
    return System.nanoTime() - begun;
  }

  private static void print(String what, long nanos) {
    System.out.printf("%-60s %.2f s%n", what, nanos / 1e9);
  }
}
