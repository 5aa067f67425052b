package candlebench.station.view;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.stream.Stream;

/**
 * Masses as text in the maker's unit, rounded to a step of that unit and with no more decimals than it takes to show it.
 *
 * <p>Where the scale's division is a round number of the unit it is the step, so that the page reads as the scale does. Else the step
 * is the greatest of 1, 2 and 5 times a power of ten that is no coarser than the division, so that each division of the scale can
 * be told from the next. A mass is rounded to the division first: no figure says more than the scale can show.
 *
 * @param step in {@code unit.counted()}
 * @param scalesOwn whether the step is the scale's own division
 */
record Figures(ShownUnit unit, Division division, BigDecimal step, boolean scalesOwn) {
  private static final MathContext ENOUGH = new MathContext(20);

  /** A division of more digits than this, such as 0.0035274 oz, is no step that anyone counts by. */
  private static final int DIGITS_OF_A_STEP = 3;

  static Figures of(ShownUnit unit, Division division) {
    BigDecimal own = in(unit.counted(), division.step());
    BigDecimal round = own.round(new MathContext(DIGITS_OF_A_STEP));
    boolean isRound = Mass.of(round, unit.counted()).equals(division.step());
    return new Figures(unit, division, isRound ? round : roundStep(own), isRound);
  }

  private static BigDecimal in(MassUnit unit, Mass mass) {
    return new BigDecimal(mass.picograms())
        .movePointLeft(12)
        .divide(unit.grams(), ENOUGH)
        .stripTrailingZeros();
  }

  private static BigDecimal roundStep(BigDecimal atMost) {
    BigDecimal power = BigDecimal.ONE.scaleByPowerOfTen(atMost.precision() - atMost.scale() - 1);
    return Stream.of("5", "2", "1")
        .map(digit -> power.multiply(new BigDecimal(digit)))
        .filter(step -> step.compareTo(atMost) <= 0)
        .findFirst()
        .orElseThrow();
  }

  /** A mass that is compared with what the scale shows. */
  String text(Mass mass) {
    BigDecimal steps =
        in(unit.counted(), division.nearest(mass)).divide(step, 0, RoundingMode.HALF_EVEN);
    return written(steps.multiply(step), decimals());
  }

  /** The same within a sentence, with its unit. */
  String sentence(Mass mass) {
    String text = text(mass);
    if (unit != ShownUnit.POUND_OUNCE) return text + " " + unit.symbol();
    String sign = text.startsWith("-") ? "-" : "";
    String pounds = text.substring(sign.length(), text.indexOf(':'));
    String ounces = text.substring(text.indexOf(':') + 1).replaceFirst("^0(?=\\d)", "");
    return sign + (pounds.equals("0") ? "" : pounds + " lb ") + ounces + " oz";
  }

  /** An exact target, shown beside the one rounded to the division: two decimals more, without idle zeros. */
  String exact(Mass mass) {
    int most = decimals() + 2;
    BigDecimal full = in(unit.counted(), mass).setScale(most, RoundingMode.HALF_EVEN);
    int needed = Math.max(full.stripTrailingZeros().scale(), decimals());
    return written(full, needed);
  }

  /** The step as text, in {@code unit.counted()}. */
  String stepText() {
    return step.setScale(decimals()).toPlainString();
  }

  private int decimals() {
    return Math.max(0, step.stripTrailingZeros().scale());
  }

  private String written(BigDecimal amount, int decimals) {
    BigDecimal rounded = amount.setScale(decimals, RoundingMode.HALF_EVEN);
    if (unit != ShownUnit.POUND_OUNCE) return plain(rounded);
    BigDecimal[] split =
        rounded.abs().divideAndRemainder(BigDecimal.valueOf(ShownUnit.OUNCES_IN_POUND));
    String ounces = split[1].setScale(decimals).toPlainString();
    boolean oneDigit = split[1].compareTo(BigDecimal.TEN) < 0;
    return (rounded.signum() < 0 ? "-" : "") + split[0].toBigInteger() + ":" + (oneDigit ? "0" : "")
        + ounces;
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? number.abs().toPlainString() : number.toPlainString();
  }
}
