package candlebench.protocol.formats;

import candlebench.shared.Indication;
import java.util.Optional;

/** Fields of fixed width, as instruments write them; empty where the text does not fit. */
final class Fields {

  private Fields() {}

  /** Text at the right of a field filled with spaces. */
  static Optional<String> right(String text, int width) {
    return fill(text, width).map(filling -> filling + text);
  }

  /** Text at the left of a field filled with spaces. */
  static Optional<String> left(String text, int width) {
    return fill(text, width).map(filling -> text + filling);
  }

  /** The digits without sign, filled up with leading zeros. */
  static Optional<String> zeroFilled(Indication indication, int width) {
    String digits = digits(indication);
    return fill(digits, width).map(filling -> filling.replace(' ', '0') + digits);
  }

  /** The digits and point, without sign. */
  static String digits(Indication indication) {
    return isNegative(indication) ? indication.number().substring(1) : indication.number();
  }

  static boolean isNegative(Indication indication) {
    return indication.number().startsWith("-");
  }

  static boolean isZero(Indication indication) {
    return indication.number().chars().allMatch(c -> c == '0' || c == '.' || c == '-');
  }

  /** The sign, with plus written as the format does: {@code '+'} or a space. */
  static char sign(Indication indication, char plus) {
    return isNegative(indication) ? '-' : plus;
  }

  /** The unit's symbol, or nothing where none is named. */
  static String unit(Indication indication) {
    return indication.unit().map(unit -> unit.symbol()).orElse("");
  }

  private static Optional<String> fill(String text, int width) {
    return text.length() > width
        ? Optional.empty()
        : Optional.of(" ".repeat(width - text.length()));
  }
}
