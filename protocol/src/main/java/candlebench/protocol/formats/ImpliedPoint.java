package candlebench.protocol.formats;

import candlebench.shared.Indication;

/** A number sent as digits without a point, whose place is told elsewhere in the frame. */
final class ImpliedPoint {

  private ImpliedPoint() {}

  /** The number with its point, without leading zeros. */
  static String number(String digits, int decimals) {
    int point = digits.length() - decimals;
    int start = 0;
    while (start < point - 1 && digits.charAt(start) == '0') start++;
    String whole = point <= 0 ? "0" : digits.substring(start, point);
    return decimals == 0 ? whole : whole + "." + digits.substring(Math.max(point, 0));
  }

  /** The digits without sign and point. */
  static String digits(Indication shown) {
    String digits = Fields.digits(shown).replace(".", "");
    int start = 0;
    while (start < digits.length() - 1 && digits.charAt(start) == '0') start++;
    return digits.substring(start);
  }
}
