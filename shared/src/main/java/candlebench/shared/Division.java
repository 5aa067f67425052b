package candlebench.shared;

/**
 * The scale's step <i>d</i>: the smallest change it can show.
 *
 * @param step above zero
 */
public record Division(Mass step) {

  public Division {
    if (step.compareTo(Mass.ZERO) <= 0)
      throw new IllegalArgumentException(
          "a division is above zero: give the scale's step, such as 0.1 g");
  }

  /** The step of what is shown with so many decimals in a unit, if the last digit counts by ones. */
  public static Division ofDecimals(int decimals, MassUnit unit) {
    return new Division(Mass.of(java.math.BigDecimal.ONE.movePointLeft(decimals), unit));
  }

  /** The nearest multiple of the step, half to even. */
  public Mass nearest(Mass mass) {
    return step.times(mass.times(1, step.picograms()).picograms());
  }

  /** How many whole steps a difference is, rounded to the nearest, half to even. */
  public long stepsIn(Mass difference) {
    return difference.times(1, step.picograms()).picograms();
  }

  /** So many steps. */
  public Mass steps(long count) {
    return step.times(count);
  }
}
