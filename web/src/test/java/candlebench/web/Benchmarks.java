package candlebench.web;

import candlebench.station.journal.EntryText;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What is aimed at and what comes of it on this computer, as one table; what falls short is marked. Run by {@code bash .ci/benchmarks},
 * which measures how fast frames are read before, and hands its table in.
 */
public final class Benchmarks {
  private static final int STARTS = 5;
  private static final int COMMITS = 3_000;
  private static final int SECONDS = 30;

  private Benchmarks() {}

  /** @param args the table of the decoding benchmark, and a folder for a journal of a million entries, which is kept */
  public static void main(String[] args) throws Exception {
    Path folder = Files.createTempDirectory("benchmarks");
    System.out.println(Machine.words());
    System.out.println();
    System.out.println("| what | aim | measured | |");
    System.out.println("| --- | --- | --- | --- |");
    starts(folder.resolve("starts"));
    oneScale(folder.resolve("one"));
    manyScales(folder.resolve("many"));
    idle(folder.resolve("idle"));
    commits(folder.resolve("commits"));
    decoding(Path.of(args[0]));
    millionEntries(Path.of(args[1]));
  }

  private static void starts(Path folder) throws Exception {
    start(folder, 0, "start to first page served, no scale");
    start(folder, 1, "start to first page served, a scale and the journal opened");
  }

  /** Where the computer is busy, the processor's time tells more than the clock's. */
  private static void start(Path folder, int scales, String what) throws Exception {
    Files.createDirectories(folder);
    double[] seconds = new double[STARTS];
    double[] busy = new double[STARTS];
    for (int i = 0; i < STARTS; i++) {
      try (MeasuredProgram program = new MeasuredProgram(folder, scales)) {
        if (RawHttp.get(program.port(), "/").status() != 200)
          throw new IOException("the page is not served");
        seconds[i] = (System.nanoTime() - program.begun()) / 1e9;
        busy[i] = program.processorSeconds();
      }
    }
    Arrays.sort(seconds);
    Arrays.sort(busy);
    double median = seconds[STARTS / 2];
    row(what + ", median of " + STARTS, "1.2 s", "%.2f s", median, median <= 1.2);
    row("the same, of a processor", "", "%.2f s", busy[STARTS / 2], true);
  }

  private static void oneScale(Path folder) throws Exception {
    Files.createDirectories(folder);
    try (MeasuredProgram program = new MeasuredProgram(folder, 1)) {
      WireToPage.Result result = WireToPage.of(program, 1, 50, SECONDS);
      row(
          "last byte to page, 1 scale x 50 Hz, p50",
          "0.8 ms",
          "%.2f ms",
          result.millis(0.5),
          result.millis(0.5) <= 0.8);
      row("the same, p99", "2 ms", "%.2f ms", result.millis(0.99), result.millis(0.99) <= 2);
    }
  }

  private static void manyScales(Path folder) throws Exception {
    Files.createDirectories(folder);
    try (MeasuredProgram program = new MeasuredProgram(folder, 32)) {
      WireToPage.Result result = WireToPage.of(program, 32, 20, SECONDS);
      long lost = result.sent() - result.understood();
      row("32 scales x 20 Hz, readings lost of " + result.sent(), "0", "%.0f", lost, lost == 0);
      row(
          "the same, last byte to page, p99",
          "5 ms",
          "%.2f ms",
          result.millis(0.99),
          result.millis(0.99) <= 5);
      row(
          "the same, of one core, with a page open",
          "25 %",
          "%.1f %%",
          result.percent(),
          result.percent() <= 25);
      row(
          "the same, resident memory",
          "130 MB",
          "%.0f MB",
          result.megabytes(),
          result.megabytes() <= 130);
    }
  }

  private static void idle(Path folder) throws Exception {
    Files.createDirectories(folder);
    try (MeasuredProgram program = new MeasuredProgram(folder, 1)) {
      program.awaitScales();
      still(program, 10);
      double busy = program.processorSeconds();
      still(program, SECONDS);
      double percent = 100 * (program.processorSeconds() - busy) / SECONDS;
      row("idle with one scale at 10 Hz, of one core", "2 %", "%.1f %%", percent, percent <= 2);
      double megabytes = program.residentMegabytes();
      row("the same, resident memory", "110 MB", "%.0f MB", megabytes, megabytes <= 110);
    }
  }

  private static void still(MeasuredProgram program, int seconds) {
    for (int i = 0; i < 10 * seconds; i++) {
      program.say(0, 35_020);
      LockSupport.parkNanos(100_000_000);
    }
  }

  private static void commits(Path folder) throws Exception {
    long[] nanos = new long[COMMITS];
    List<EntryText> entry =
        List.of(new EntryText("weight-accepted", "{\"weight\":\"" + "0".repeat(900) + "\"}"));
    try (SqliteJournal journal = SqliteJournal.open(Purpose.RECORD.under(folder), Purpose.RECORD)) {
      for (int i = 0; i < COMMITS; i++) {
        long begun = System.nanoTime();
        journal.append("2026-11-25T12:00:00Z", entry);
        nanos[i] = System.nanoTime() - begun;
      }
    }
    Arrays.sort(nanos);
    double millis = nanos[COMMITS * 99 / 100] / 1e6;
    row("an entry on disk, p99 of " + COMMITS, "2 ms", "%.2f ms", millis, millis <= 2);
  }

  /** JMH's table: each format, ours and the regular expression's frames a second. */
  private static void decoding(Path table) throws IOException {
    Map<String, Double> ours = new TreeMap<>();
    Map<String, Double> regex = new TreeMap<>();
    for (String line : Files.readAllLines(table).subList(1, lines(table))) {
      String[] cells = line.replace("\"", "").split(",");
      if (cells[0].contains(":")) continue;
      (cells[0].endsWith(".ours") ? ours : regex)
          .put(cells[cells.length - 1], Double.parseDouble(cells[4]));
    }
    for (String id : ours.keySet()) {
      double times = ours.get(id) / regex.get(id);
      row("decode " + id + ", against a regular expression", "3 x", "%.2f x", times, times >= 3);
    }
  }

  private static int lines(Path table) throws IOException {
    return Files.readAllLines(table).size();
  }

  private static void millionEntries(Path folder) throws Exception {
    Files.createDirectories(folder);
    if (!Files.exists(Purpose.PRACTICE.under(folder))) station(folder);
    String said = station(folder);
    double start = number(said, "read: ([0-9.]+) s");
    row("start on a million entries, in a fresh process", "2 s", "%.2f s", start, start <= 2);
    double batches = number(said, "lot → batches and vessels .*worst ([0-9.]+) ms");
    row("lot to batches, worst of 200", "100 ms", "%.1f ms", batches, batches <= 100);
    double lots = number(said, "batch → lots .*worst ([0-9.]+) ms");
    row("batch to lots, worst of 200", "100 ms", "%.1f ms", lots, lots <= 100);
  }

  private static String station(Path folder) throws Exception {
    Process process = new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Dstdout.encoding=UTF-8",
            "-Dfile.encoding=UTF-8",
            "-cp",
            "../station/target/test-classes:" + System.getProperty("java.class.path"),
            "candlebench.station.MillionEntries",
            folder.toString())
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) throw new IOException("the journal was not measured: " + said);
    return said;
  }

  private static double number(String said, String pattern) throws IOException {
    Matcher found = Pattern.compile(pattern).matcher(said);
    if (!found.find()) throw new IOException("not told: " + pattern + " in " + said);
    return Double.parseDouble(found.group(1));
  }

  private static void row(String what, String aim, String form, double measured, boolean met) {
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | " + form + " | %s |%n",
        what,
        aim,
        measured,
        met ? "" : "falls short");
  }
}
