package candlebench.station.measure;

import candlebench.simulator.NumberWatcher;
import candlebench.simulator.PourKind;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Makers and scales drawn at random pour under the real guidance, in virtual time from bytes to hands, and the same makers with the number
 * on the scale alone. Ten pours make a session of one maker at one scale, of which nothing is known before the first.
 *
 * <p>After {@code mvn -q test-compile}, for 10,000 pours a row and 30,000 disturbed ones (about an hour on two cores; 2,000 do for a look):
 * {@code java -cp shared/target/classes:protocol/target/classes:simulator/target/classes:station/target/classes:station/target/test-classes
 * candlebench.station.measure.MeasurePours 10000 30000}. A third argument names the only rows wanted: a part of their names.
 */
public final class MeasurePours {
  private static final int SESSION = 10;
  private static final int WATCHED = 2000;
  private static final double[] RATES = {2, 5, 10};
  private static final double[] SLOWS_EARLY = {0.8, 1.2, 2, 3};
  private static final double[] STOPS_SHORT = {0.3, 0.8, 1.5};

  /** Beyond what is usual: so careful that hardly anything goes over. */
  private static final double[] MORE_SHORT = {2, 2.5, 3};

  private MeasurePours() {}

  public static void main(String[] args) {
    int pours = Integer.parseInt(args[0]);
    int disturbed = Integer.parseInt(args[1]);
    String wanted = args.length > 2 ? args[2] : "";
    List<Task> tasks = List.of(
        Task.oil("56", "0.5"),
        Task.oil("6.3", "0.3"),
        Task.oil("202", "2"),
        Task.vessel("227", "3"),
        Task.vessel("340", "4"),
        Task.pieces("1260", "10"));
    System.out.println(PourTable.head());
    for (Task task : tasks) {
      for (double rate : RATES)
        if (name(task, rate).contains(wanted)) guided(name(task, rate), task, rate, pours, false);
      if (task.isPoured() && task.name().contains(wanted)) watched(task, Math.min(pours, WATCHED));
    }
    if ("disturbed".contains(wanted) && disturbed > 0)
      guided("oil 56 g, disturbed, 10/s", tasks.get(0), 10, disturbed, true);
  }

  private static String name(Task task, double rate) {
    return String.format(Locale.ROOT, "%s, %.0f/s", task.name(), rate);
  }

  private static void guided(String name, Task task, double rate, int pours, boolean disturbed) {
    List<List<PourResult>> sessions = IntStream.range(0, pours / SESSION)
        .parallel()
        .mapToObj(seed -> session(task, rate, seed, disturbed))
        .toList();
    double tolerance = task.tolerance().over().roughGrams();
    List<PourResult> all = sessions.stream().flatMap(List::stream).toList();
    System.out.println(PourTable.row(name, all, tolerance));
    System.out.println(PourTable.row(
        "  a maker's first", sessions.stream().map(pour -> pour.get(0)).toList(), tolerance));
    System.out.println(PourTable.promises(all, tolerance));
  }

  private static List<PourResult> session(Task task, double rate, int seed, boolean disturbed) {
    DrawnBench bench = DrawnBench.draw(new SplittableRandom(seed), rate);
    BenchProgress known = task.open();
    List<PourResult> results = new ArrayList<>();
    for (int i = 0; i < SESSION; i++) {
      long one = seed * 1000L + i;
      Mishap mishap = disturbed ? Mishap.drawn(one) : Mishap.none();
      GuidedPour pour = new GuidedPour(bench, task, known, one, mishap);
      results.add(pour.pour());
      for (GuidanceEvent event : pour.learnt()) known = known.after(event);
    }
    return results;
  }

  private static void watched(Task task, int pours) {
    for (double early : SLOWS_EARLY)
      for (double brief : STOPS_SHORT) watched(task, early, brief, pours);
    for (double brief : MORE_SHORT) watched(task, 3, brief * wide(task), pours);
  }

  private static double wide(Task task) {
    return task.liquid() == PourKind.OIL_BOTTLE ? 1 : 2.7;
  }

  private static void watched(Task task, double slowsEarly, double stopsShort, int pours) {
    double tolerance = task.tolerance().over().roughGrams();
    double content = task.liquid() == PourKind.OIL_BOTTLE ? 0.05 : tolerance / 2;
    NumberWatcher.Habits habits = new NumberWatcher.Habits(slowsEarly, stopsShort, content, 0.1);
    List<PourResult> results = IntStream.range(0, pours)
        .parallel()
        .mapToObj(i -> WatcherPours.pour(
            DrawnBench.draw(new SplittableRandom(i / SESSION), 10),
            habits,
            task.liquid(),
            task.target().roughGrams(),
            i * 7919L))
        .toList();
    String name = String.format(
        Locale.ROOT, "  by number: %.1f s early, %.1f g short", slowsEarly, stopsShort);
    System.out.println(PourTable.row(name, results, tolerance));
  }
}
