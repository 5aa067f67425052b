package candlebench.shared;

import java.math.BigDecimal;

/**
 * The units of mass a bench scale shows, each with its exact size in grams.
 *
 * <p>Source: gram, kilogram, milligram: SI. Ounce, pound, grain: the international avoirdupois pound of 1959 (0.45359237 kg
 * exactly; ounce = pound/16, grain = pound/7000), NIST SP 811 (2008) appendix B and NIST Handbook 44 appendix C section 4.
 * Carat: 200 mg exactly, the metric carat, from memory.
 */
public enum MassUnit {
  MILLIGRAM("mg", "0.001"),
  CARAT("ct", "0.2"),
  GRAIN("gr", "0.06479891"),
  GRAM("g", "1"),
  OUNCE("oz", "28.349523125"),
  POUND("lb", "453.59237"),
  KILOGRAM("kg", "1000");

  private static final BigDecimal PICOGRAMS_PER_GRAM = BigDecimal.TEN.pow(12);

  private final String symbol;
  private final BigDecimal grams;

  MassUnit(String symbol, String grams) {
    this.symbol = symbol;
    this.grams = new BigDecimal(grams);
  }

  /** The symbol as printed beside a number, such as {@code kg}. */
  public String symbol() {
    return symbol;
  }

  /** One of this unit in grams, exact. */
  public BigDecimal grams() {
    return grams;
  }

  /** One of this unit in picograms, exact. */
  BigDecimal picograms() {
    return grams.multiply(PICOGRAMS_PER_GRAM);
  }
}
