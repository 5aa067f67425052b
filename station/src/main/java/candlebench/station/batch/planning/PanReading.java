package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * One reading of a scale, and how uncertain it is: rounding to a step d has the variance d²/12 (JCGM 100:2008, F.2.2.1), a net weight's
 * repeatability s is shared by its two readings, s²/2 each, and the permissible error in service is taken as a rectangle of ± that
 * error, so its third (4.3.7). The error is that at the load on the pan, and independent from reading to reading.
 */
record PanReading(BenchScale scale, Mass load) {
  static final MathContext DIGITS = new MathContext(20, RoundingMode.HALF_EVEN);
  private static final BigDecimal TWELVE = new BigDecimal(12);
  private static final BigDecimal THREE = new BigDecimal(3);
  private static final BigDecimal TWO = new BigDecimal(2);

  /** In g². */
  BigDecimal variance() {
    return ofReadingAlone().add(square(scale.errorInService(load)).divide(THREE, DIGITS));
  }

  /** In g², of rounding and repeatability alone, as if the scale were without error. */
  BigDecimal ofReadingAlone() {
    return rounding(scale.division().step()).add(scatter(scale.repeatability()));
  }

  static BigDecimal rounding(Mass step) {
    return square(step).divide(TWELVE, DIGITS);
  }

  static BigDecimal scatter(Mass repeatability) {
    return square(repeatability).divide(TWO, DIGITS);
  }

  private static BigDecimal square(Mass mass) {
    return grams(mass).pow(2, DIGITS);
  }

  static BigDecimal grams(Mass mass) {
    return new BigDecimal(mass.picograms()).movePointLeft(12);
  }
}
