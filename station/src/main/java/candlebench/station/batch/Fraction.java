package candlebench.station.batch;

import candlebench.shared.Mass;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/** An exact share, in lowest terms: 10 % of wax is 1/11 of the total, which no decimal holds. */
public record Fraction(BigInteger numerator, BigInteger denominator)
    implements Comparable<Fraction> {
  public static final Fraction ZERO = of(0, 1);
  public static final Fraction ONE = of(1, 1);

  public Fraction {
    if (denominator.signum() == 0)
      throw new IllegalArgumentException("a share of nothing has no size: the denominator is zero");
    BigInteger common = numerator.gcd(denominator).max(BigInteger.ONE);
    if (denominator.signum() < 0) common = common.negate();
    numerator = numerator.divide(common);
    denominator = denominator.divide(common);
  }

  public static Fraction of(long numerator, long denominator) {
    return new Fraction(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
  }

  /** So many per cent, given as decimal text such as {@code "8"} or {@code "0.5"}. */
  public static Fraction percent(String percent) {
    BigDecimal number = new BigDecimal(percent).movePointLeft(2);
    return new Fraction(
        number.setScale(Math.max(0, number.scale()), RoundingMode.UNNECESSARY).unscaledValue(),
        BigInteger.TEN.pow(Math.max(0, number.scale())));
  }

  /** How much one mass is of another. */
  public static Fraction ratio(Mass part, Mass whole) {
    return of(part.picograms(), whole.picograms());
  }

  public Fraction plus(Fraction other) {
    return new Fraction(
        numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
        denominator.multiply(other.denominator));
  }

  public Fraction minus(Fraction other) {
    return plus(new Fraction(other.numerator.negate(), other.denominator));
  }

  public Fraction times(Fraction other) {
    return new Fraction(
        numerator.multiply(other.numerator), denominator.multiply(other.denominator));
  }

  public Fraction dividedBy(Fraction other) {
    return new Fraction(
        numerator.multiply(other.denominator), denominator.multiply(other.numerator));
  }

  /** This share of a mass, rounded once, half to even, to a picogram. */
  public Mass of(Mass whole) {
    BigDecimal exact = new BigDecimal(numerator.multiply(BigInteger.valueOf(whole.picograms())));
    return new Mass(
        exact.divide(new BigDecimal(denominator), 0, RoundingMode.HALF_EVEN).longValueExact());
  }

  public boolean isZero() {
    return numerator.signum() == 0;
  }

  public boolean isNegative() {
    return numerator.signum() < 0;
  }

  /** Per cent as decimal text, rounded half to even to so many decimals. */
  public String percentText(int decimals) {
    return new BigDecimal(numerator.multiply(BigInteger.valueOf(100)))
        .divide(new BigDecimal(denominator), decimals, RoundingMode.HALF_EVEN)
        .toPlainString();
  }

  /** The reverse of {@link #toString}. */
  public static Fraction parse(String text) {
    int slash = text.indexOf('/');
    if (slash < 0) return new Fraction(new BigInteger(text), BigInteger.ONE);
    return new Fraction(
        new BigInteger(text.substring(0, slash)), new BigInteger(text.substring(slash + 1)));
  }

  @Override
  public int compareTo(Fraction other) {
    return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
  }

  @Override
  public String toString() {
    return numerator + "/" + denominator;
  }
}
