package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Stamp;
import candlebench.shared.Verdict;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.Place;
import candlebench.station.journal.CrashPoints.Point;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.JournalAudit;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.station.journal.MemoryJournal;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.view.Views;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;

/** Runs a bench in other processes on one record, kills it, and checks what is left against what had been shown. */
final class CrashRuns {
  private static final int MANY_BATCHES = 100_000;

  /** What one killed run left, for a table. */
  record Left(String how, long entries, long shown, boolean inFlight) {}

  private final Path folder;
  private final String recipe;
  private final int linesPerBatch;
  private final StationConfig config;
  private final List<String[]> recorded = new ArrayList<>();
  private final Set<String> answered = new HashSet<>();
  private String pan = "0.0";
  private int run;

  /** Batches of oil alone: short, so that many kills fit into a little time. */
  static CrashRuns ofOil(Path folder) throws JournalFailed {
    return new CrashRuns(folder, CrashedBench.OIL, 30);
  }

  /** Whole small batches, from setting out to the last vessel lifted off. */
  static CrashRuns ofWholeBatches(Path folder) throws JournalFailed {
    return new CrashRuns(folder, CrashedBench.WHOLE_BATCH, 280);
  }

  private CrashRuns(Path folder, String recipe, int linesPerBatch) throws JournalFailed {
    this.folder = folder;
    this.recipe = recipe;
    this.linesPerBatch = linesPerBatch;
    try (StationRig rig = StationRig.on(new MemoryJournal(Purpose.RECORD))) {
      this.config = rig.config;
    }
  }

  /** Runs until a named instant is met for the nth time, and stops dead there. */
  Left stopDead(Point point, int nth) throws Exception {
    Process process = start(MANY_BATCHES, point.name(), Integer.toString(nth));
    listen(process, Integer.MAX_VALUE);
    assertThat(process.waitFor()).isEqualTo(CrashedBench.STOPPED_DEAD);
    return check(point.name());
  }

  /** Runs, and is killed from outside at a random instant. */
  Left kill(RandomGenerator random) throws Exception {
    Process process = start(MANY_BATCHES);
    BufferedReader lines = listen(process, 1 + random.nextInt(linesPerBatch));
    // The process works on; only this end waits a little for it to end, which it does not.
    boolean ended = process.waitFor(random.nextInt(20_000), TimeUnit.MICROSECONDS);
    assertThat(ended).as("it ended by itself").isFalse();
    process.toHandle().destroyForcibly();
    drain(lines);
    process.waitFor();
    return check("killed");
  }

  /** Runs on undisturbed to the end of some batches. */
  Left finish(int batches) throws Exception {
    Process process = start(batches);
    listen(process, Integer.MAX_VALUE);
    assertThat(process.waitFor()).isZero();
    return check("finished");
  }

  private Process start(int batches, String... where) throws IOException {
    String classes =
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    List<String> command = new ArrayList<>(List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:TieredStopAtLevel=1",
        "-XX:+UseSerialGC",
        "-Xmx96m",
        "-cp",
        classes,
        CrashedBench.class.getName(),
        folder.toString(),
        Integer.toString(run++),
        pan,
        Integer.toString(batches)));
    command.addAll(List.of(where));
    ProcessBuilder bench =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
    bench.environment().put(CrashedBench.RECIPE, recipe);
    return bench.start();
  }

  /** Takes in what is told, up to so many lines or the end. */
  private BufferedReader listen(Process process, int most) throws IOException {
    BufferedReader lines =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    for (int i = 0; i < most; i++) {
      String line = lines.readLine();
      if (line == null) break;
      take(line);
    }
    return lines;
  }

  /** What was told before the kill was seen; a line cut by the kill was not. */
  private void drain(BufferedReader lines) throws IOException {
    StringBuilder rest = new StringBuilder();
    for (int c = lines.read(); c >= 0; c = lines.read()) {
      if (c != '\n') {
        rest.append((char) c);
        continue;
      }
      take(rest.toString());
      rest.setLength(0);
    }
  }

  private void take(String line) {
    String[] words = line.split(" ");
    switch (words[0]) {
      case "recorded" -> recorded.add(words);
      case "answered" -> answered.add(words[1]);
      case "pan" -> pan = words[1];
      case "ready" -> {}
      default -> throw new AssertionError(line);
    }
  }

  /** Holds what is on disk against all that was shown; throws where they do not agree. */
  Left check(String how) throws Exception {
    List<JournalEntry> entries = entries();
    long shown = 0;
    for (String[] words : recorded) {
      int count = Integer.parseInt(words[1]);
      shown = Math.max(shown, count);
      assertThat(entries)
          .as("nothing shown as recorded is lost")
          .hasSizeGreaterThanOrEqualTo(count);
      if (count > 0)
        assertThat(entries.get(count - 1).hash())
            .as("entry %s as it was shown", count)
            .isEqualTo(words[2]);
    }
    checkSteps(entries);
    checkNothingDoubled(entries);
    checkReopened(entries);
    boolean inFlight = entries.size() > shown;
    if (inFlight)
      assertThat(entries.subList((int) shown, entries.size()).stream()
              .map(JournalEntry::wall)
              .distinct())
          .as("at most the append under way was not shown yet")
          .hasSize(1);
    return new Left(how, entries.size(), shown, inFlight);
  }

  /** What was shown at each point is what the entries up to there fold into. */
  private void checkSteps(List<JournalEntry> entries) throws JournalFailed {
    Map<Integer, String> shown = new HashMap<>();
    for (String[] words : recorded) shown.put(Integer.parseInt(words[1]), words[3]);
    BenchProgress progress = BenchProgress.EMPTY;
    for (int count = 0; count <= entries.size(); count++) {
      if (count > 0) progress = progress.after(EntryJson.event(entries.get(count - 1)));
      if (shown.containsKey(count))
        assertThat(signature(progress))
            .as("step after entry %s", count)
            .isEqualTo(shown.get(count));
    }
  }

  private String signature(BenchProgress progress) {
    return CrashedBench.signature(
        Views.of(GuidanceState.resume(config.setup(), progress), new Stamp(Instant.EPOCH, 0)));
  }

  private void checkNothingDoubled(List<JournalEntry> entries) throws JournalFailed {
    Set<String> commands = new HashSet<>();
    Set<Place> weights = new HashSet<>();
    int wanted = 0;
    int pots = 0;
    int batches = 0;
    for (JournalEntry entry : entries) {
      GuidanceEvent event = EntryJson.event(entry);
      if (event instanceof GuidanceEvent.CommandTaken taken)
        assertThat(commands.add(taken.commandId()))
            .as("command %s done once", taken.commandId())
            .isTrue();
      if (event instanceof GuidanceEvent.BatchStarted started) {
        batches++;
        weights.clear();
        wanted = started.recipe().parts().size()
            + (started.recipe().fillsVessels() ? started.vessels() : 0);
        pots = 0;
      }
      if (event instanceof GuidanceEvent.PotTared) pots++;
      if (event instanceof GuidanceEvent.WeightAccepted weight) {
        assertThat(weights.add(weight.place()))
            .as("%s of batch %s taken once", weight.place(), batches)
            .isTrue();
        assertThat(weight.verdict()).isEqualTo(Verdict.WITHIN);
      }
      assertThat(pots).as("pots of batch %s", batches).isLessThanOrEqualTo(1);
      if (event instanceof GuidanceEvent.BatchDone) assertThat(weights).hasSize(wanted);
    }
    assertThat(commands).as("what was answered as done is recorded").containsAll(answered);
  }

  private void checkReopened(List<JournalEntry> entries) throws JournalFailed {
    try (SqliteJournal journal = SqliteJournal.open(Purpose.RECORD.under(folder), Purpose.RECORD);
        StationRig rig = StationRig.on(journal)) {
      assertThat(rig.view().record().entries()).isEqualTo(entries.size());
      assertThat(journal.length()).as("opening adds nothing").isEqualTo(entries.size());
    }
  }

  private List<JournalEntry> entries() throws JournalFailed {
    List<JournalEntry> entries = new ArrayList<>();
    JournalAudit audit = JournalAudit.of(Purpose.RECORD);
    // Opened by the journal first, as a restart does: it takes in what the log still holds.
    SqliteJournal.open(Purpose.RECORD.under(folder), Purpose.RECORD).close();
    try (JournalFile file = JournalFile.open(Purpose.RECORD.under(folder))) {
      file.scan(1, entry -> {
        audit.accept(entry);
        entries.add(entry);
      });
    }
    assertThat(audit.report().findings()).isEmpty();
    return entries;
  }
}
