package candlebench.station;

import candlebench.station.journal.CrashPoints.Point;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Many kills of a working bench, as a table. Run by hand: {@code CrashTable [random kills] [stops at each named instant] [seed]}. Each
 * kill is checked as in the test; the first that loses, doubles or mistakes anything ends it.
 */
final class CrashTable {

  private CrashTable() {}

  public static void main(String[] args) throws Exception {
    int kills = args.length > 0 ? Integer.parseInt(args[0]) : 50;
    int stops = args.length > 1 ? Integer.parseInt(args[1]) : 5;
    SplittableRandom random = new SplittableRandom(args.length > 2 ? Long.parseLong(args[2]) : 1);
    Path folder = Files.createTempDirectory("crash");
    CrashRuns runs = new CrashRuns(folder);
    System.out.println(
        "killed at        kills   on disk, not yet shown   lost or doubled or wrong step   95 % bound");
    int all = 0;
    for (Point point : Point.values()) {
      List<CrashRuns.Left> left = new ArrayList<>();
      for (int i = 0; i < stops; i++) left.add(runs.stopDead(point, 1 + random.nextInt(12)));
      row(point.name(), left);
      all += stops;
    }
    List<CrashRuns.Left> left = new ArrayList<>();
    for (int i = 0; i < kills; i++) left.add(runs.kill(random));
    row("random instants", left);
    row("all", all + kills, runs.finish(1).entries());
  }

  private static void row(String how, List<CrashRuns.Left> left) {
    long inFlight = left.stream().filter(CrashRuns.Left::inFlight).count();
    System.out.printf(
        Locale.ROOT,
        "%-16s %5d   %22d   %29d   %s%n",
        how,
        left.size(),
        inFlight,
        0,
        bound(left.size()));
  }

  private static void row(String how, int kills, long entries) {
    System.out.printf(
        Locale.ROOT,
        "%-16s %5d   %22s   %29d   %s   (%d entries at the end)%n",
        how,
        kills,
        "",
        0,
        bound(kills),
        entries);
  }

  /** None in n: with 95 % confidence fewer than 3 in n (the rule of three). */
  private static String bound(int kills) {
    return kills == 0 ? "-" : String.format(Locale.ROOT, "< %.1f %%", Math.min(100, 300.0 / kills));
  }
}
