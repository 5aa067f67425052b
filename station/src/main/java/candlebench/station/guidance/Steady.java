package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.shared.Stability;

/**
 * A run of readings that lie within one division of each other, with no gap among them: what the station itself calls settled.
 *
 * <p>Time counts, not the number of equal readings: scales repeat each conversion three or four times. The scale's flag is heard too,
 * but it can be late by seconds or never come, so that it delays at most {@link #FLAG_PATIENCE}.
 *
 * @param startNanos of the run's first reading
 * @param lastNanos of its newest
 * @param early the mean of its first {@link #LEAST}, kept to notice a slow stream
 * @param late a running mean of about its last half second
 */
record Steady(
    long startNanos,
    long lastNanos,
    int count,
    Mass min,
    Mass max,
    double early,
    int earlyCount,
    double late,
    boolean moving) {

  /** Steady so long is settled: indicators use 0.4 to 1.0 s within a few quarter-steps (makers' manuals; common practice). */
  static final long LEAST = 1_000_000_000L;

  /** A longer silence breaks the run; an older reading is not trusted. */
  static final long MOST_GAP = 1_000_000_000L;

  /** A flag that still says "moving" after so long at rest is late or stuck: seen in a captured stream, 37 conversions late. */
  static final long FLAG_PATIENCE = 4_000_000_000L;

  private static final int FEWEST = 3;
  private static final double LATE_SECONDS = 0.5;
  private static final double CREEP_STEPS = 0.6;

  static Steady from(Reading reading) {
    double grams = reading.mass().roughGrams();
    long at = reading.stamp().nanos();
    boolean moving = reading.stability() == Stability.UNSTABLE;
    return new Steady(at, at, 1, reading.mass(), reading.mass(), grams, 1, grams, moving);
  }

  /** The run with one more reading, or a new one where that breaks it. */
  Steady and(Reading reading, Division division) {
    long at = reading.stamp().nanos();
    Mass low = reading.mass().isLessThan(min) ? reading.mass() : min;
    Mass high = reading.mass().isMoreThan(max) ? reading.mass() : max;
    if (at - lastNanos > MOST_GAP || division.stepsIn(high.minus(low)) > 1) return from(reading);
    double grams = reading.mass().roughGrams();
    boolean stillEarly = at - startNanos <= LEAST;
    double share = 1 - Math.exp(-(at - lastNanos) / 1e9 / LATE_SECONDS);
    return new Steady(
        startNanos,
        at,
        count + 1,
        low,
        high,
        stillEarly ? (early * earlyCount + grams) / (earlyCount + 1) : early,
        stillEarly ? earlyCount + 1 : earlyCount,
        late + (grams - late) * share,
        reading.stability() == Stability.UNSTABLE);
  }

  /** Whether the load is at rest, as the station sees it and the scale does not deny. */
  boolean settled() {
    return atRest() && (!moving || lasted() >= FLAG_PATIENCE);
  }

  /** Whether the load is at rest by the station's own rule alone. */
  boolean atRest() {
    return count >= FEWEST && lasted() >= LEAST;
  }

  /**
   * Whether it rises slowly, as under a thin stream. A slow loss is no such sign: hot wax and water lose 0.007 to 0.02 g/s by
   * evaporation (two published recordings).
   */
  boolean creepsUp(Division division) {
    return late - early > CREEP_STEPS * division.step().roughGrams();
  }

  long lasted() {
    return lastNanos - startNanos;
  }
}
