package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.shared.Stability;
import java.util.ArrayList;
import java.util.List;

/**
 * The newest readings that lie within one division of each other, with no gap among them: what the station itself calls settled, once
 * they span {@link #LEAST}.
 *
 * <p>Time counts, not the number of equal readings: scales repeat each conversion three or four times. The scale's flag is heard too,
 * but it can be late by seconds or never come, so that it delays at most {@link #FLAG_PATIENCE}.
 */
final class Steady {
  /** Steady so long is settled: indicators use 0.4 to 1.0 s within a few quarter-steps (makers' manuals; common practice). */
  static final long LEAST = 1_000_000_000L;

  /** A longer silence breaks the run; an older reading is not trusted. */
  static final long MOST_GAP = 1_000_000_000L;

  /** A flag that still says "moving" after so long at rest is late or stuck: seen in a captured stream, 37 conversions late. */
  static final long FLAG_PATIENCE = 4_000_000_000L;

  /** A weight is the middle of what was shown for so long at most: what a scale wavers between takes turns within a second or two. */
  private static final long MIDDLE_OF = 3_000_000_000L;

  private static final int FEWEST = 3;
  private static final double CREEP_STEPS = 0.5;

  private final List<Reading> run;
  private final long restFrom;
  private final double restMean;
  private final boolean crept;

  private Steady(List<Reading> run, long restFrom, double restMean, boolean crept) {
    this.run = run;
    this.restFrom = restFrom;
    this.restMean = restMean;
    this.crept = crept;
  }

  static Steady from(Reading reading) {
    return new Steady(List.of(reading), reading.stamp().nanos(), reading.mass().picograms(), false);
  }

  /** The run with one more reading: as much of its newest part as lies within a division, and not much longer than it must be. */
  Steady and(Reading reading, Division division) {
    long at = reading.stamp().nanos();
    if (at - nanos(run.size() - 1) > MOST_GAP) return from(reading);
    List<Reading> kept =
        new ArrayList<>(run.subList(firstWithin(reading.mass(), division), run.size()));
    kept.add(reading);
    List<Reading> longer = List.copyOf(lasting(MIDDLE_OF, kept));
    List<Reading> newest = lasting(LEAST, kept);
    long from = newest.get(0).stamp().nanos();
    boolean creeps = atRest() && at - from >= LEAST && creepsUp(newest, division);
    return atRest() && at - from >= LEAST && !creeps
        ? new Steady(longer, restFrom, restMean, false)
        : new Steady(longer, from, mean(newest), creeps);
  }

  private int firstWithin(Mass newest, Division division) {
    Mass low = newest;
    Mass high = newest;
    for (int i = run.size() - 1; i >= 0; i--) {
      Mass mass = run.get(i).mass();
      if (mass.isLessThan(low)) low = mass;
      if (mass.isMoreThan(high)) high = mass;
      if (division.stepsIn(high.minus(low)) > 1) return i + 1;
    }
    return 0;
  }

  /** The newest readings that span a time, if they span it, and no more than they must. */
  private static List<Reading> lasting(long time, List<Reading> readings) {
    long at = readings.get(readings.size() - 1).stamp().nanos();
    int from = readings.size() - 1;
    while (from > 0 && at - readings.get(from).stamp().nanos() < time) from--;
    return readings.subList(from, readings.size());
  }

  /**
   * Whether it rose since it came to rest, as under a thin stream: by half a step in the mean, with no reading back at the old one. A
   * slow loss is no such sign: hot wax and water lose 0.007 to 0.02 g/s by evaporation (two published recordings).
   */
  private boolean creepsUp(List<Reading> newest, Division division) {
    double step = division.step().picograms();
    return mean(newest) - restMean > CREEP_STEPS * step
        && newest.stream().allMatch(reading -> reading.mass().picograms() > restMean);
  }

  private static double mean(List<Reading> readings) {
    double sum = 0;
    for (Reading reading : readings) sum += reading.mass().picograms();
    return sum / readings.size();
  }

  /**
   * The reading to be taken: the newest of those that show the middle of what was shown since it came to rest. A load that lies between
   * two steps of the scale shows now one and now the other, and the newest alone would be a throw of dice. Between two middles it is the
   * one that was seen longer.
   */
  Reading middle() {
    Reading newest = run.get(run.size() - 1);
    List<Reading> rest = run.stream()
        .filter(reading -> reading.stamp().nanos() >= restFrom && isLike(newest, reading))
        .toList();
    List<Mass> sorted = rest.stream().map(Reading::mass).sorted().toList();
    Mass lower = sorted.get((sorted.size() - 1) / 2);
    Mass upper = sorted.get(sorted.size() / 2);
    Mass taken = seen(lower, rest) > seen(upper, rest) ? lower : upper;
    return rest.stream()
        .filter(reading -> reading.mass().equals(taken))
        .reduce((older, newer) -> newer)
        .orElseThrow();
  }

  /** Shown the same way: a unit that changes on the way, or is not stated, is another one. */
  private static boolean isLike(Reading newest, Reading reading) {
    return reading.unitAssumed() == newest.unitAssumed()
        && reading.basis() == newest.basis()
        && reading.indication().unit().equals(newest.indication().unit())
        && reading.indication().decimals() == newest.indication().decimals();
  }

  /** For how long a mass was shown: each reading until the one after it. */
  private static long seen(Mass mass, List<Reading> rest) {
    long seen = 0;
    for (int i = 0; i + 1 < rest.size(); i++)
      if (rest.get(i).mass().equals(mass))
        seen += rest.get(i + 1).stamp().nanos() - rest.get(i).stamp().nanos();
    return seen;
  }

  private long nanos(int index) {
    return run.get(index).stamp().nanos();
  }

  /** Whether the load is at rest: as the station sees it, with no creep, and not denied by the scale for long. */
  boolean settled() {
    boolean moving = run.get(run.size() - 1).stability() == Stability.UNSTABLE;
    return atRest() && !crept && (!moving || rested() >= FLAG_PATIENCE);
  }

  /** Whether the load is at rest by the station's own rule alone. */
  boolean atRest() {
    return spans(LEAST) && lasting(LEAST, run).size() >= FEWEST;
  }

  /** Whether it stood for a time, however it may be judged. */
  boolean spans(long time) {
    return run.size() > 1 && nanos(run.size() - 1) - nanos(0) >= time;
  }

  /** For how long it has been at rest, creeping aside. */
  long rested() {
    return nanos(run.size() - 1) - restFrom;
  }
}
