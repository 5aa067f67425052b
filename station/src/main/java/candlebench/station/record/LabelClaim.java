package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The net weight that a candle's label claims.
 *
 * @param stated as the maker states it, such as {@code 8 oz} or {@code 227 g}
 * @param net what that is
 * @param printed both figures of the label
 */
public record LabelClaim(String stated, Mass net, NetWeightLabel printed) {
  private static final Pattern STATED = Pattern.compile("(\\d{1,5}(?:\\.\\d{1,3})?) ?(g|oz)");

  /** Reads what the maker stated; throws {@link IllegalArgumentException} that says how to state it. */
  public static LabelClaim parse(String stated) {
    Matcher parts = STATED.matcher(stated.strip());
    if (!parts.matches())
      throw new IllegalArgumentException(
          "a label's net weight is stated like 227 g or 8 oz, not '" + stated + "'");
    BigDecimal amount = new BigDecimal(parts.group(1));
    if (amount.signum() == 0)
      throw new IllegalArgumentException("a label states more than nothing: give its net weight");
    if (parts.group(2).equals("oz"))
      return new LabelClaim(
          parts.group(1) + " oz",
          Mass.of(amount, MassUnit.OUNCE),
          NetWeightLabel.ofOunces(parts.group(1)));
    Mass net = Mass.of(amount, MassUnit.GRAM);
    return new LabelClaim(parts.group(1) + " g", net, NetWeightLabel.of(net));
  }

  boolean isInOunces() {
    return stated.endsWith("oz");
  }

  /** The claim of a fill weight, where the maker states no other. */
  public static LabelClaim ofFill(Mass fill) {
    return new LabelClaim(fill.toString(), fill, NetWeightLabel.of(fill));
  }
}
