package candlebench.station.view;

import candlebench.shared.MassUnit;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The unit in which a maker reads a page. The record keeps what the scale showed, whatever is chosen here.
 *
 * <p>Pounds and ounces are written as bench scales show them, pounds before the colon and ounces after it: 1:02.35 (common practice,
 * no source).
 */
public enum ShownUnit {
  GRAM(MassUnit.GRAM, "g"),
  KILOGRAM(MassUnit.KILOGRAM, "kg"),
  OUNCE(MassUnit.OUNCE, "oz"),
  POUND_OUNCE(MassUnit.OUNCE, "lb:oz");

  static final int OUNCES_IN_POUND = 16;

  private final MassUnit counted;
  private final String symbol;

  ShownUnit(MassUnit counted, String symbol) {
    this.counted = counted;
    this.symbol = symbol;
  }

  /** The unit by what is written beside its numbers, such as {@code lb:oz}. */
  public static Optional<ShownUnit> of(String symbol) {
    return Stream.of(values()).filter(unit -> unit.symbol.equals(symbol)).findFirst();
  }

  /** The unit by its symbol; throws {@link IllegalArgumentException} in words for a person where there is none. */
  public static ShownUnit named(String symbol) {
    return of(symbol)
        .orElseThrow(() -> new IllegalArgumentException(
            "a unit to be shown is g, kg, oz or lb:oz, not '" + symbol + "'"));
  }

  /** What is written beside a number. */
  public String symbol() {
    return symbol;
  }

  /** The unit in which steps are counted: ounces, where pounds stand before them. */
  MassUnit counted() {
    return counted;
  }
}
