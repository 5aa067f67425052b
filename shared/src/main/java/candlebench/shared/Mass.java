package candlebench.shared;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * An exact mass, a whole number of picograms (1 pg = 10<sup>-12</sup> g), from about -9.2 t to +9.2 t.
 *
 * <p>Every indication in mg, g, kg, ct, in oz to 0.001 and to 1/8, and in lb to 7 decimals is a whole number of picograms. What is
 * finer is rounded once, half to even, where it enters. Arithmetic is checked: it is exact or throws {@link ArithmeticException}.
 */
public record Mass(long picograms) implements Comparable<Mass> {
  public static final Mass ZERO = new Mass(0);

  /** The mass of so many of a unit, rounded half to even to a picogram; throws {@link ArithmeticException} beyond the range. */
  public static Mass of(BigDecimal amount, MassUnit unit) {
    return new Mass(
        amount.multiply(unit.picograms()).setScale(0, RoundingMode.HALF_EVEN).longValueExact());
  }

  /** The mass of so many of a unit, given as decimal text such as {@code "12.5"}. */
  public static Mass of(String amount, MassUnit unit) {
    return of(new BigDecimal(amount), unit);
  }

  /** So many grams, given as decimal text such as {@code "12.5"}. */
  public static Mass ofGrams(String grams) {
    return of(grams, MassUnit.GRAM);
  }

  public Mass plus(Mass other) {
    return new Mass(Math.addExact(picograms, other.picograms));
  }

  public Mass minus(Mass other) {
    return new Mass(Math.subtractExact(picograms, other.picograms));
  }

  public Mass times(long factor) {
    return new Mass(Math.multiplyExact(picograms, factor));
  }

  /** This mass times {@code numerator/denominator}, rounded once, half to even. */
  public Mass times(long numerator, long denominator) {
    if (denominator <= 0)
      throw new IllegalArgumentException(
          "a share needs a denominator above zero, not " + denominator);
    long product = picograms * numerator;
    boolean fits = Math.multiplyHigh(picograms, numerator) == product >> 63;
    return new Mass(fits ? rounded(product, denominator) : roundedWide(numerator, denominator));
  }

  private static long rounded(long product, long denominator) {
    long quotient = product / denominator;
    long rest = Math.abs(product % denominator);
    long beyondHalf = Long.compare(rest, denominator - rest);
    boolean away = beyondHalf > 0 || beyondHalf == 0 && (quotient & 1) == 1;
    return away ? quotient + (product < 0 ? -1 : 1) : quotient;
  }

  private long roundedWide(long numerator, long denominator) {
    BigInteger[] parts = BigInteger.valueOf(picograms)
        .multiply(BigInteger.valueOf(numerator))
        .divideAndRemainder(BigInteger.valueOf(denominator));
    int half = parts[1].abs().shiftLeft(1).compareTo(BigInteger.valueOf(denominator));
    boolean away = half > 0 || half == 0 && parts[0].testBit(0);
    BigInteger rounded = away ? parts[0].add(BigInteger.valueOf(parts[1].signum())) : parts[0];
    return rounded.longValueExact();
  }

  public Mass negated() {
    return new Mass(Math.negateExact(picograms));
  }

  public Mass abs() {
    return isNegative() ? negated() : this;
  }

  public boolean isNegative() {
    return picograms < 0;
  }

  public boolean isZero() {
    return picograms == 0;
  }

  public boolean isMoreThan(Mass other) {
    return picograms > other.picograms;
  }

  public boolean isLessThan(Mass other) {
    return picograms < other.picograms;
  }

  /** This mass as decimal text in a unit, rounded half to even to so many decimals, all of them shown. */
  public String text(MassUnit unit, int decimals) {
    return new BigDecimal(picograms)
        .divide(unit.picograms(), decimals, RoundingMode.HALF_EVEN)
        .toPlainString();
  }

  /** This mass in a unit, cut to so many decimals towards zero: for what must never overstate. */
  public BigDecimal cutTo(int decimals, MassUnit unit) {
    return new BigDecimal(picograms).divide(unit.picograms(), decimals, RoundingMode.DOWN);
  }

  /** This mass in grams, exact, without trailing zeros: {@code "56"}, {@code "0.0005"}. */
  public String grams() {
    BigDecimal exact =
        new BigDecimal(picograms).divide(MassUnit.GRAM.picograms()).stripTrailingZeros();
    return exact.scale() < 0 ? exact.setScale(0).toPlainString() : exact.toPlainString();
  }

  /** Grams as a floating-point number, for estimates of flow and for pictures only: never for a verdict or a record. */
  public double roughGrams() {
    return picograms / 1e12;
  }

  @Override
  public int compareTo(Mass other) {
    return Long.compare(picograms, other.picograms);
  }

  /** Grams with their unit, exact: {@code "56.1 g"}. */
  @Override
  public String toString() {
    return grams() + " g";
  }
}
