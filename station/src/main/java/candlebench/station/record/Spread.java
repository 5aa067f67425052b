package candlebench.station.record;

import candlebench.shared.Mass;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Optional;

/**
 * Mean and standard deviation of masses, exact until they are rounded once to a picogram.
 *
 * <p>The textbook formula (sum of squares less n times the mean squared) fails in floating point, where two large and nearly equal
 * numbers are subtracted. Over whole picograms of any length nothing is lost, so the formula is right as it stands.
 *
 * @param sum in picograms
 * @param squares the sum of the squares, in picograms squared
 */
public record Spread(int count, BigInteger sum, BigInteger squares) {
  /** Enough digits that only the last rounding, to a picogram, shows. */
  private static final MathContext DIGITS = new MathContext(60, RoundingMode.HALF_EVEN);

  public static final Spread NONE = new Spread(0, BigInteger.ZERO, BigInteger.ZERO);

  public static Spread of(Collection<Mass> masses) {
    Spread spread = NONE;
    for (Mass mass : masses) spread = spread.and(mass);
    return spread;
  }

  /** With one more mass. */
  public Spread and(Mass mass) {
    BigInteger picograms = BigInteger.valueOf(mass.picograms());
    return new Spread(count + 1, sum.add(picograms), squares.add(picograms.multiply(picograms)));
  }

  /** The mean, rounded half to even to a picogram; none of no masses. */
  public Optional<Mass> mean() {
    if (count == 0) return Optional.empty();
    return Optional.of(rounded(new BigDecimal(sum).divide(BigDecimal.valueOf(count), DIGITS)));
  }

  /** Whether the mean, unrounded, is less than a mass. */
  public boolean meanIsLessThan(Mass mass) {
    return sum.compareTo(BigInteger.valueOf(mass.picograms()).multiply(BigInteger.valueOf(count)))
        < 0;
  }

  /** The sample standard deviation (over n - 1), rounded half to even to a picogram; none of fewer than two masses. */
  public Optional<Mass> deviation() {
    if (count < 2) return Optional.empty();
    BigInteger n = BigInteger.valueOf(count);
    BigInteger spread = squares.multiply(n).subtract(sum.multiply(sum));
    BigInteger degrees = n.multiply(n.subtract(BigInteger.ONE));
    return Optional.of(
        rounded(new BigDecimal(spread).divide(new BigDecimal(degrees), DIGITS).sqrt(DIGITS)));
  }

  private static Mass rounded(BigDecimal picograms) {
    return new Mass(picograms.setScale(0, RoundingMode.HALF_EVEN).longValueExact());
  }
}
