package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import java.util.Optional;

/**
 * What a scale showed while its pot or vessel was away: where its zero lies, for when something stands there again.
 *
 * @param shown the number with nothing on it, as far as can be told
 * @param proven whether a number of about zero was doubted before, and then the pan was seen to be lighter: so something had stood
 *     there, and the zero that is known is right
 */
record EmptyPan(Optional<Mass> shown, boolean proven) {
  static final EmptyPan UNSEEN = new EmptyPan(Optional.empty(), false);

  boolean wasSeen() {
    return shown.isPresent();
  }

  /** Whether a reading at rest is that of an empty pan: too little for what is awaited, or as it showed before. */
  boolean isEmpty(int scale, Reading reading, Mass gone, Scene scene) {
    Pan pan = scene.pan(scale);
    Mass zero = scene.progress().zero(scale);
    boolean zeroed = !proven && ZeroShift.zeroedAnew(pan, reading.mass(), zero);
    boolean asBefore = shown
        .filter(empty -> !pan.differs(reading.mass().minus(empty), ZeroShift.STEPS))
        .isPresent();
    return zeroed || asBefore || scene.load(scale, reading).isLessThan(gone);
  }

  EmptyPan seen(int scale, Reading reading, Scene scene) {
    boolean lighter =
        shown.filter(before -> before.minus(reading.mass()).isMoreThan(LIFTED)).isPresent();
    boolean known = !scene.pan(scale).differs(scene.load(scale, reading), ZeroShift.STEPS);
    return new EmptyPan(Optional.of(reading.mass()), proven || lighter && known);
  }

  private static final Mass LIFTED = Mass.ofGrams("20");

  /** What stands there now, by what was shown with nothing there, or by the scale's own zero where that was not seen. */
  Mass load(Reading reading) {
    return reading.mass().minus(shown.orElse(Mass.ZERO));
  }

  /** The zero that follows from it. */
  ZeroFound zero(int scale, Reading reading, Scene scene) {
    return new ZeroFound(
        scene.now(), scale, reading.indication(), shown.orElse(Mass.ZERO).negated());
  }
}
