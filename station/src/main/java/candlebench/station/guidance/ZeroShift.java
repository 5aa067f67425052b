package candlebench.station.guidance;

import candlebench.shared.Basis;
import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.Optional;

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

  private static final Mass SMALL = Mass.ofGrams("20");

  /** What may be poured between a scale's coming on and its first number (common practice, no source). */
  private static final Mass POURED_UNSEEN = Mass.ofGrams("2");

  private ZeroShift() {}

  /** A load below nothing: the pan is empty, and the zero lies elsewhere. */
  static boolean below(Pan pan, Mass load) {
    return load.isNegative() && pan.differs(load, STEPS);
  }

  /** Whether a scale shows less than nothing just now, so that its zero is about to be found: keep everything off it. */
  static boolean isBelow(int scale, Scene scene) {
    return scene.load(scale).filter(load -> below(scene.pan(scale), load)).isPresent();
  }

  /** What the scale shows with nothing on it is its zero from now on. */
  static ZeroFound found(int scale, Reading empty, Scene scene) {
    return new ZeroFound(scene.now(), scale, empty.indication(), empty.mass().negated());
  }

  /** The scale's own zero is right again: its tare was cleared, or it was switched off and on with nothing on it. */
  static ZeroFound cleared(int scale, Reading reading, Scene scene) {
    return new ZeroFound(scene.now(), scale, reading.indication(), Mass.ZERO);
  }

  /**
   * What an empty pan says of the zero: that it lies elsewhere, or, after there was no number for a while, that it is still where it
   * was.
   */
  static Optional<ZeroFound> atEmpty(int scale, Reading reading, Scene scene) {
    Pan pan = scene.pan(scale);
    Mass load = scene.load(scale, reading);
    boolean confirmed = pan.zeroDoubt().isAny()
        && isElsewhere(scene.progress().zero(scale))
        && !pan.differs(load, STEPS);
    return below(pan, load) || confirmed
        ? Optional.of(found(scale, reading, scene))
        : Optional.empty();
  }

  /** Where something is awaited on an empty pan: its zero is found again, if that has moved. */
  static Optional<Outcome> whileEmpty(ReadingArrived arrived, Stage then, Scene scene) {
    int scale = arrived.scale();
    Pan pan = scene.pan(scale);
    return scene.resting(scale).flatMap(reading -> {
      Optional<ZeroFound> found = atEmpty(scale, reading, scene);
      if (found.isPresent()) return Optional.of(Outcome.to(then, found.get()));
      return zeroedAnew(pan, reading.mass(), scene.progress().zero(scale))
          ? Optional.of(Outcome.to(then, cleared(scale, reading, scene)))
          : Optional.empty();
    });
  }

  /**
   * A jump that is no pouring, between two readings of a pan on which the container stands: to zero in one step, or to what stands
   * there as if no tare were set, or across a silence in which the scale may have been off.
   */
  static boolean jumped(Pan pan, Reading now, Mass zero, Mass restingLoad) {
    return pan.before().filter(was -> jumped(pan, was, now, zero, restingLoad)).isPresent();
  }

  private static boolean jumped(Pan pan, Reading before, Reading now, Mass zero, Mass restingLoad) {
    Mass jump = now.mass().minus(before.mass());
    if (isElsewhere(zero) && isLostInSilence(before, now, jump)) return true;
    if (!pan.differs(jump, STEPS)) return false;
    if (flipped(before.basis(), now.basis())) return true;
    if (!isElsewhere(zero)) return false;
    boolean toZero = pan.zeroDoubt().snapped() || !pan.differs(now.mass(), 1) && jump.isNegative();
    boolean toGross = !pan.differs(now.mass().minus(restingLoad), STEPS)
        && jump.abs().isMoreThan(zero.abs().times(1, 2));
    return toZero || toGross;
  }

  /** After a silence a number of about zero may be that of a scale just switched on, whatever was shown before it. */
  private static boolean isLostInSilence(Reading before, Reading now, Mass jump) {
    boolean silent = now.stamp().nanos() - before.stamp().nanos() > ZeroDoubt.OFF;
    return silent && (jump.abs().isMoreThan(SMALL) || !now.mass().abs().isMoreThan(POURED_UNSEEN));
  }

  /** A zero so near its place is no tare but tracking and drift. */
  private static boolean isElsewhere(Mass zero) {
    return zero.abs().isMoreThan(SMALL);
  }

  /**
   * A number of about zero, come to in one step or after a silence, where the zero was known to lie elsewhere: the scale was zeroed
   * anew, and what stands there cannot be told.
   */
  static boolean zeroedAnew(Pan pan, Mass shown, Mass zero) {
    return pan.zeroDoubt().isAny() && isElsewhere(zero) && !pan.differs(shown, STEPS);
  }

  /** Whether a scale whose zero was known to lie elsewhere shows the very load that was left: its tare was cleared. */
  static boolean showsItself(int scale, Reading reading, Mass left, Scene scene) {
    return isElsewhere(scene.progress().zero(scale))
        && !scene.pan(scale).differs(reading.mass().minus(left), STEPS);
  }

  /**
   * Whether a scale whose zero was known to lie elsewhere fell to its own zero, by more than a container weighs: that may be an empty
   * pan, or a container that was tared away with something on it, which is gone now.
   */
  static boolean fellToOwnZero(int scale, Reading reading, Mass from, Mass gone, Scene scene) {
    return !scene.pan(scale).differs(reading.mass(), STEPS)
        && fellByContainer(scale, reading, from, gone, scene);
  }

  /** Whether more than a container weighs is gone from a scale whose zero was known to lie elsewhere. */
  static boolean fellByContainer(int scale, Reading reading, Mass from, Mass gone, Scene scene) {
    return isElsewhere(scene.progress().zero(scale))
        && from.minus(scene.load(scale, reading)).isMoreThan(gone);
  }

  /**
   * Whether a zero that was known to lie elsewhere may have been lost in a silence, or lies where it cannot be shown: an empty pan tells,
   * and nothing else.
   */
  static boolean isInDoubt(int scale, Scene scene) {
    ZeroDoubt doubt = scene.pan(scale).zeroDoubt();
    return doubt.under() || doubt.unheard() && isElsewhere(scene.progress().zero(scale));
  }

  private static boolean flipped(Basis before, Basis now) {
    return before == Basis.GROSS && now == Basis.NET || before == Basis.NET && now == Basis.GROSS;
  }
}
