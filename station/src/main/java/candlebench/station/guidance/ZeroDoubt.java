package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.Reading;
import java.util.Optional;

/**
 * Why a number of about zero may be the scale's doing, and say nothing of what stands on it.
 *
 * @param unheard whether there was no number since its zero was last found, so that it may have been off and its zero be another
 * @param snapped whether it came to zero in one step, as by a key: what is put down or lifted by hand comes to rest in several
 * @param under whether it read too far below nothing to show it, and was not at rest at about nothing since: something that stands or
 *     leans on it is seen as less than it is
 */
record ZeroDoubt(boolean unheard, boolean snapped, boolean under) {
  static final ZeroDoubt UNHEARD = new ZeroDoubt(true, false, false);
  static final ZeroDoubt UNDER = new ZeroDoubt(true, false, true);
  static final ZeroDoubt NONE = new ZeroDoubt(false, false, false);

  /** Silent for so long, a scale may have been switched off and on. */
  static final long OFF = 1_500_000_000L;

  private static final Mass SNAP = Mass.ofGrams("20");

  boolean isAny() {
    return unheard || snapped;
  }

  /** With one more reading, after the one before it. */
  ZeroDoubt and(Optional<Reading> before, Reading now, Division step) {
    return new ZeroDoubt(
        unheard || before.filter(last -> silent(last, now)).isPresent(),
        step.stepsIn(now.mass().abs()) <= 1
            && (snapped || before.filter(ZeroDoubt::isLoaded).isPresent()),
        under);
  }

  /** With a reading at rest: no container is so light that it would be about nothing. */
  ZeroDoubt resting(Reading now) {
    return under && now.mass().abs().isLessThan(PlacingPot.LIGHTEST_POT)
        ? new ZeroDoubt(unheard, snapped, false)
        : this;
  }

  private static boolean silent(Reading last, Reading now) {
    return now.stamp().nanos() - last.stamp().nanos() > OFF;
  }

  private static boolean isLoaded(Reading last) {
    return last.mass().abs().isMoreThan(SNAP);
  }
}
