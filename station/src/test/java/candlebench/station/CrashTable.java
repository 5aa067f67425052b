package candlebench.station;

import candlebench.station.journal.CrashPoints.Point;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Not a test, but the long form of several: every way to end a bench badly, many times, as one table. What had been shown as recorded
 * is lost or doubled nowhere, or a row says so. Of none in n tries the 95 % bound is 3/n.
 *
 * <p>{@code mvn -q -pl station -am -Ptables test-compile exec:java
 * -Dexec.mainClass=candlebench.station.CrashTable [-Dexec.args="KILLS STOPS SEED"]}: how many kills at random instants, how many stops at each named one, and the seed.
 */
public final class CrashTable {
  private static final int KILLS_PER_RECORD = 20;
  private static final int BATCHES = 4;
  private static final int LUCKS = 4;
  private static final int FULL_DISKS = 50;
  private static final String ROW = "%-62s %7s %7s  %s%n";

  private final Path folder;
  private final int kills;
  private final int stops;
  private final long seed;

  private CrashTable(Path folder, int kills, int stops, long seed) {
    this.folder = folder;
    this.kills = kills;
    this.stops = stops;
    this.seed = seed;
  }

  public static void main(String[] args) throws Exception {
    int kills = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    int stops = args.length > 1 ? Integer.parseInt(args[1]) : 5;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 20261125L;
    Path folder = Files.createTempDirectory("candlebench-crashes");
    try {
      System.out.printf("seed %d%n", seed);
      System.out.printf(ROW, "how it ended", "tries", "faults", "95 % bound");
      CrashTable table = new CrashTable(folder, kills, stops, seed);
      table.stoppedDead();
      table.killed();
      table.wholeBatches();
      table.powerCut();
      table.fullDisk();
    } finally {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path each : all.sorted(Comparator.reverseOrder()).toList()) Files.delete(each);
      }
    }
  }

  private void stoppedDead() throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    for (Point point : Point.values()) {
      CrashRuns runs = CrashRuns.ofOil(Files.createDirectory(folder.resolve(point.name())));
      List<String> faults = new ArrayList<>();
      int[] inFlight = {0};
      for (int i = 0; i < stops; i++)
        attempt(faults, () -> {
          if (runs.stopDead(point, 2 + random.nextInt(6)).inFlight()) inFlight[0]++;
        });
      row("stopped dead at " + point, stops, faults);
      inFlight(inFlight[0]);
    }
  }

  /** A record grows with each kill and each check reads all of it, so a new one is begun now and then. */
  private void killed() throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    List<String> faults = new ArrayList<>();
    int[] inFlight = {0};
    for (int done = 0; done < kills; done += KILLS_PER_RECORD) {
      CrashRuns runs = CrashRuns.ofOil(Files.createDirectory(folder.resolve("killed" + done)));
      for (int i = done; i < Math.min(kills, done + KILLS_PER_RECORD); i++)
        attempt(faults, () -> {
          if (runs.kill(random).inFlight()) inFlight[0]++;
        });
      attempt(faults, () -> runs.finish(1));
    }
    row("killed at a random instant", kills, faults);
    inFlight(inFlight[0]);
  }

  /** The same over whole small batches: each named instant, and as many random ones. */
  private void wholeBatches() throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    List<String> faults = new ArrayList<>();
    CrashRuns stopped =
        CrashRuns.ofWholeBatches(Files.createDirectory(folder.resolve("whole-stopped")));
    for (Point point : Point.values())
      for (int i = 0; i < stops; i++)
        attempt(faults, () -> stopped.stopDead(point, 2 + random.nextInt(20)));
    attempt(faults, () -> stopped.finish(1));
    row("whole batch, stopped dead at each", stops * Point.values().length, faults);
    List<String> killed = new ArrayList<>();
    for (int done = 0; done < kills; done += KILLS_PER_RECORD) {
      CrashRuns runs =
          CrashRuns.ofWholeBatches(Files.createDirectory(folder.resolve("whole" + done)));
      for (int i = done; i < Math.min(kills, done + KILLS_PER_RECORD); i++)
        attempt(killed, () -> runs.kill(random));
      attempt(killed, () -> runs.finish(1));
    }
    row("whole batch, killed at a random instant", kills, killed);
  }

  private static void inFlight(int times) {
    System.out.println("  times more was on disk than had been shown yet: " + times);
  }

  private void powerCut() throws Exception {
    Optional<Path> library = DiskLog.library(folder);
    if (library.isEmpty()) {
      System.out.printf(ROW, "power cut: needs Linux and a C compiler", "-", "-", "-");
      return;
    }
    PowerCutRuns full = PowerCutRuns.of(folder, library.get(), "FULL", BATCHES);
    System.out.printf(
        "power cuts in a run of %d batches: %d steps on the disk, %d of them syncs%n",
        BATCHES, full.steps(), full.syncs());
    row(
        "power cut after each step, nothing kept that was not synced",
        full.cut(1, Optional.empty()));
    int tries = 0;
    List<String> faults = new ArrayList<>();
    for (long luck = 1; luck <= LUCKS; luck++) {
      PowerCutRuns.Result result = full.cut(1, Optional.of(seed + luck));
      tries += result.cuts();
      faults.addAll(result.faults());
    }
    row("power cut after each step, sectors kept by luck", tries, faults);
    for (String hasty : List.of("NORMAL", "OFF")) {
      PowerCutRuns.Result caught =
          PowerCutRuns.of(folder, library.get(), hasty, 1).cut(1, Optional.empty());
      System.out.printf(
          ROW,
          "the same with synchronous=" + hasty + ", to be caught",
          caught.cuts(),
          caught.faults().size(),
          caught.faults().isEmpty() ? "NOT CAUGHT" : "caught");
    }
  }

  private void fullDisk() throws Exception {
    FullDiskRuns runs = new FullDiskRuns(folder);
    List<String> undisturbed = runs.undisturbed();
    List<String> faults = new ArrayList<>();
    List<Integer> full = new ArrayList<>();
    for (int i = 0; i < FULL_DISKS; i++) {
      int note = 40 + i * 65;
      attempt(faults, () -> {
        FullDiskRuns.Left left = runs.run(note, undisturbed);
        if (left.wasFull()) full.add(left.entriesThen());
      });
    }
    row("disk full in mid batch, then room again", full.size(), faults);
    System.out.println("  full after so many entries, times: "
        + new TreeMap<>(
            full.stream().collect(Collectors.groupingBy(n -> n, Collectors.counting()))));
  }

  /** Something to try. */
  private interface Attempt {
    void run() throws Exception;
  }

  private static void attempt(List<String> faults, Attempt attempt) throws Exception {
    try {
      attempt.run();
    } catch (AssertionError fault) {
      faults.add(fault.getMessage());
    }
  }

  private static void row(String how, PowerCutRuns.Result result) {
    row(how, result.cuts(), result.faults());
  }

  private static void row(String how, int tries, List<String> faults) {
    String bound = faults.isEmpty()
        ? String.format("%.1f %%", Math.min(100, 300.0 / Math.max(1, tries)))
        : "FAULTS";
    System.out.printf(ROW, how, tries, faults.size(), bound);
    faults.forEach(fault -> System.out.println("  " + fault));
  }
}
