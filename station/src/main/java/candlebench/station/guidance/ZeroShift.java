package candlebench.station.guidance;

import candlebench.shared.Basis;
import candlebench.shared.Mass;
import candlebench.shared.Reading;

/**
 * How to tell that the scale's own zero or tare was moved: by its keys, by switching off and on, by its tracking. A net weight is never
 * taken across such a shift.
 *
 * <p>A pan that falls to zero may have been emptied, or zeroed with the pot on it: the numbers are the same. So either counts as "the
 * pot is gone" until it was lifted (then the scale shows less than nothing, if it was zeroed) and put back.
 */
final class ZeroShift {
  /** A difference of so many steps is none: zero drift, a drop on the pan. */
  static final long STEPS = 3;

  private ZeroShift() {}

  /** A load below nothing: the pan is empty, and the zero lies elsewhere. */
  static boolean below(Pan pan, Mass load) {
    return load.isNegative() && pan.differs(load, STEPS);
  }

  /** A jump that is no pouring, between two readings of a pan on which the container stands. */
  static boolean jumped(Pan pan, Reading before, Reading now, Mass zero, Mass restingLoad) {
    Mass jump = now.mass().minus(before.mass());
    if (!pan.differs(jump, STEPS)) return false;
    if (flipped(before.basis(), now.basis())) return true;
    if (zero.isZero()) return false;
    boolean toZero = !pan.differs(now.mass(), 1) && jump.isNegative();
    boolean toGross = !pan.differs(now.mass().minus(restingLoad), STEPS)
        && jump.abs().isMoreThan(zero.abs().times(1, 2));
    return toZero || toGross;
  }

  /** A number of about zero where the zero is known to lie elsewhere: the pan may be empty, and the scale zeroed anew. */
  static boolean maybeZeroed(Pan pan, Mass shown, Mass zero) {
    return !zero.isZero() && !pan.differs(shown, STEPS);
  }

  private static boolean flipped(Basis before, Basis now) {
    return before == Basis.GROSS && now == Basis.NET || before == Basis.NET && now == Basis.GROSS;
  }
}
