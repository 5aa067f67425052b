package candlebench.shared;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * The number as the scale showed it: sign, digits, decimals, and the unit if it named one. This is the fact that a record keeps.
 *
 * @param number plain decimal text: no plus sign, no leading zeros but one before the point, every decimal the scale sent
 * @param unit the unit the scale named, or empty where it named none
 */
public record Indication(String number, Optional<MassUnit> unit) {

  public Indication {
    if (!isPlain(number))
      throw new IllegalArgumentException(
          "an indication is plain decimal text such as -12.50, not '" + number + "'");
  }

  public static Indication of(String number, MassUnit unit) {
    return new Indication(number, Optional.of(unit));
  }

  public static Indication withoutUnit(String number) {
    return new Indication(number, Optional.empty());
  }

  /** The mass shown, in the unit named or, where none was named, in the unit given. */
  public Mass mass(MassUnit unlessNamed) {
    return Mass.of(new BigDecimal(number), unit.orElse(unlessNamed));
  }

  /** How many decimals the scale showed. */
  public int decimals() {
    int point = number.indexOf('.');
    return point < 0 ? 0 : number.length() - point - 1;
  }

  @Override
  public String toString() {
    return unit.map(named -> number + " " + named.symbol()).orElse(number);
  }

  private static boolean isPlain(String text) {
    int at = text.startsWith("-") ? 1 : 0;
    int start = at;
    while (at < text.length() && isDigit(text.charAt(at))) at++;
    int whole = at - start;
    if (whole == 0 || whole > 1 && text.charAt(start) == '0') return false;
    if (at == text.length()) return true;
    if (text.charAt(at) != '.') return false;
    int decimals = at + 1;
    while (++at < text.length()) if (!isDigit(text.charAt(at))) return false;
    return at > decimals;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
