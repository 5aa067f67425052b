package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.shared.Stability;
import java.util.Arrays;

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

  private static final int FEWEST = 3;
  private static final double CREEP_STEPS = 0.5;

  private final long[] nanos;
  private final long[] picograms;
  private final long restFrom;
  private final double restMean;
  private final boolean crept;
  private final boolean moving;

  private Steady(
      long[] nanos,
      long[] picograms,
      long restFrom,
      double restMean,
      boolean crept,
      boolean moving) {
    this.nanos = nanos;
    this.picograms = picograms;
    this.restFrom = restFrom;
    this.restMean = restMean;
    this.crept = crept;
    this.moving = moving;
  }

  static Steady from(Reading reading) {
    long at = reading.stamp().nanos();
    long mass = reading.mass().picograms();
    return new Steady(new long[] {at}, new long[] {mass}, at, mass, false, isMoving(reading));
  }

  /** The run with one more reading: as much of its newest part as lies within a division, and not much longer than it must be. */
  Steady and(Reading reading, Division division) {
    long at = reading.stamp().nanos();
    if (at - nanos[nanos.length - 1] > MOST_GAP) return from(reading);
    int from = firstWithin(reading.mass(), division);
    while (from + 1 < nanos.length && at - nanos[from + 1] >= LEAST) from++;
    long[] times = with(nanos, from, at);
    long[] masses = with(picograms, from, reading.mass().picograms());
    boolean rests = at - times[0] >= LEAST;
    if (!atRest() || !rests)
      return new Steady(times, masses, times[0], mean(masses), false, isMoving(reading));
    boolean creeps = creepsUp(masses, division);
    return creeps
        ? new Steady(times, masses, times[0], mean(masses), true, isMoving(reading))
        : new Steady(times, masses, restFrom, restMean, false, isMoving(reading));
  }

  private int firstWithin(Mass newest, Division division) {
    long low = newest.picograms();
    long high = low;
    for (int i = picograms.length - 1; i >= 0; i--) {
      low = Math.min(low, picograms[i]);
      high = Math.max(high, picograms[i]);
      if (division.stepsIn(new Mass(high - low)) > 1) return i + 1;
    }
    return 0;
  }

  /**
   * Whether it rose since it came to rest, as under a thin stream: by half a step in the mean, with no reading back at the old one. A
   * slow loss is no such sign: hot wax and water lose 0.007 to 0.02 g/s by evaporation (two published recordings).
   */
  private boolean creepsUp(long[] masses, Division division) {
    double step = division.step().picograms();
    return mean(masses) - restMean > CREEP_STEPS * step
        && Arrays.stream(masses).min().orElseThrow() > restMean;
  }

  private static long[] with(long[] before, int from, long newest) {
    long[] kept = Arrays.copyOfRange(before, from, before.length + 1);
    kept[kept.length - 1] = newest;
    return kept;
  }

  private static double mean(long[] values) {
    double sum = 0;
    for (long value : values) sum += value;
    return sum / values.length;
  }

  private static boolean isMoving(Reading reading) {
    return reading.stability() == Stability.UNSTABLE;
  }

  /** Whether the load is at rest: as the station sees it, with no creep, and not denied by the scale for long. */
  boolean settled() {
    return atRest() && !crept && (!moving || rested() >= FLAG_PATIENCE);
  }

  /** Whether the load is at rest by the station's own rule alone. */
  boolean atRest() {
    return spans(LEAST) && nanos.length >= FEWEST;
  }

  /** Whether it stood for a time, however it may be judged. */
  boolean spans(long time) {
    return nanos.length > 1 && nanos[nanos.length - 1] - nanos[0] >= time;
  }

  /** For how long it has been at rest, creeping aside. */
  long rested() {
    return nanos[nanos.length - 1] - restFrom;
  }
}
