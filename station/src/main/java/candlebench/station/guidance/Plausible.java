package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.Reading;
import java.util.Optional;

/**
 * Doubts a single reading that is off by more than any stream could move the load since the one before, whatever the reason: a bit hit on
 * the way, another unit, another sign. The next one decides: what truly moved is still off, and to the same side.
 *
 * <p>So a lifted pot is noticed one reading later. A reading that lies moves nothing, but what was steady has to become so anew.
 *
 * @param believed the newest reading that was believed
 * @param doubted the one after it, if that is in doubt
 */
record Plausible(Optional<Reading> believed, Optional<Reading> doubted) {
  static final Plausible NONE_YET = new Plausible(Optional.empty(), Optional.empty());

  /** Twice what a pitcher pours at its fastest, in g/s (common practice, no source). */
  private static final double MOST_FLOW = 80;

  private static final long MOST_STEPS = 5;

  /** A scale this slow is believed at once: waiting for the next reading would leave the number old. */
  private static final long SLOW_NANOS = 450_000_000L;

  /** With one more reading, which is in doubt or believed. */
  Plausible and(Reading reading, Division division) {
    boolean doubtful = believed
        .filter(before -> isRecent(before, reading))
        .filter(before -> leaps(before, reading, division))
        .filter(before -> doubted.filter(other -> agree(before, other, reading)).isEmpty())
        .isPresent();
    return doubtful
        ? new Plausible(believed, Optional.of(reading))
        : new Plausible(Optional.of(reading), Optional.empty());
  }

  boolean isInDoubt() {
    return doubted.isPresent();
  }

  private static boolean isRecent(Reading before, Reading reading) {
    return reading.stamp().nanos() - before.stamp().nanos() <= SLOW_NANOS;
  }

  private static boolean leaps(Reading before, Reading reading, Division division) {
    double seconds = (reading.stamp().nanos() - before.stamp().nanos()) / 1e9;
    double most = MOST_FLOW * seconds + division.step().times(MOST_STEPS).roughGrams();
    return Math.abs(moved(before, reading).roughGrams()) > most;
  }

  private static boolean agree(Reading before, Reading doubted, Reading reading) {
    return moved(before, doubted).isNegative() == moved(before, reading).isNegative();
  }

  private static Mass moved(Reading before, Reading reading) {
    return reading.mass().minus(before.mass());
  }
}
