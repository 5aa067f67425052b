package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A net weight as a label prints it, in ounces and in grams, neither of which is more than what is there.
 *
 * <p>Both figures are rounded down: rounding must never overstate, and where the two differ the larger is enforced (NIST fact sheet on
 * the model packaging regulation, Handbook 130). So 8 oz, which is 226.796 g, prints with 226 g and never with 227 g. United States
 * law fixes the factors for labels (16 CFR 500.19(a): 28.3495 g to the ounce, 0.0352740 oz to the gram, and none others); they differ
 * from the exact ounce in the seventh digit, so the lesser of the two results is printed. Grams have three figures, or two below
 * 100 g (16 CFR 500.19(b)); ounces two decimals (from memory). From 1000 g on the figure is in kilograms.
 *
 * @param ounces such as {@code "8.88 oz"}
 * @param metric such as {@code "252 g"}
 */
public record NetWeightLabel(String ounces, String metric) {
  private static final BigDecimal GRAMS_PER_OUNCE = new BigDecimal("28.3495");
  private static final BigDecimal OUNCES_PER_GRAM = new BigDecimal("0.0352740");
  private static final MathContext THREE_FIGURES = new MathContext(3, RoundingMode.DOWN);
  private static final int OUNCE_DECIMALS = 2;
  private static final Mass KILOGRAM = Mass.ofGrams("1000");
  private static final Mass TEN_GRAMS = Mass.ofGrams("10");
  private static final Mass LEAST = Mass.ofGrams("1");

  /** The label of a net weight, of 1 g or more. */
  public static NetWeightLabel of(Mass net) {
    if (net.isLessThan(LEAST))
      throw new IllegalArgumentException(
          "a candle's label states 1 g or more, not " + net + ": give its net weight");
    BigDecimal exact = net.cutTo(OUNCE_DECIMALS, MassUnit.OUNCE);
    BigDecimal lawful = down(new BigDecimal(net.grams()).multiply(OUNCES_PER_GRAM), OUNCE_DECIMALS);
    return new NetWeightLabel(plain(exact.min(lawful)) + " oz", metric(net));
  }

  /** The label of a net weight stated in ounces, such as {@code "8"}: that figure stands as it is, and the metric one follows. */
  public static NetWeightLabel ofOunces(String ounces) {
    BigDecimal stated = new BigDecimal(ounces);
    if (stated.stripTrailingZeros().scale() > OUNCE_DECIMALS)
      throw new IllegalArgumentException(
          "a label states ounces to two decimals at most, not " + ounces);
    Mass exact = Mass.of(stated, MassUnit.OUNCE);
    Mass lawful = Mass.of(stated.multiply(GRAMS_PER_OUNCE), MassUnit.GRAM);
    return new NetWeightLabel(
        plain(stated) + " oz", metric(exact.isLessThan(lawful) ? exact : lawful));
  }

  private static String metric(Mass net) {
    if (!net.isLessThan(KILOGRAM)) {
      BigDecimal kilograms = net.cutTo(12, MassUnit.KILOGRAM);
      return plain(kilograms.round(THREE_FIGURES)) + " kg";
    }
    int decimals = net.isLessThan(TEN_GRAMS) ? 1 : 0;
    return plain(net.cutTo(decimals, MassUnit.GRAM)) + " g";
  }

  private static BigDecimal down(BigDecimal number, int decimals) {
    return number.setScale(decimals, RoundingMode.DOWN);
  }

  private static String plain(BigDecimal number) {
    BigDecimal bare = number.stripTrailingZeros();
    return (bare.scale() < 0 ? bare.setScale(0) : bare).toPlainString();
  }
}
