package candlebench.station.batch.planning;

import java.math.BigDecimal;

/**
 * Units of volume, each with its exact size in millilitres. A fluid ounce says whose it is: the two differ by 4 %, and neither is the
 * ounce of weight.
 *
 * <p>Source: US fluid ounce: 231 in³ / 128, NIST SP 811 (2008) appendix B and NIST Handbook 44 appendix C section 4; imperial fluid
 * ounce: 4.54609 L / 160, the same.
 */
public enum VolumeUnit {
  MILLILITRE("mL", "1"),
  LITRE("L", "1000"),
  US_FLUID_OUNCE("US fl oz", "29.5735295625"),
  IMPERIAL_FLUID_OUNCE("imp fl oz", "28.4130625");

  private final String symbol;
  private final BigDecimal millilitres;

  VolumeUnit(String symbol, String millilitres) {
    this.symbol = symbol;
    this.millilitres = new BigDecimal(millilitres);
  }

  /** The symbol as typed behind a number, such as {@code US fl oz}. */
  public String symbol() {
    return symbol;
  }

  /** One of this unit in millilitres, exact. */
  public BigDecimal millilitres() {
    return millilitres;
  }
}
