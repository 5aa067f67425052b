package candlebench.protocol.formats;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * How a format writes a number: spaces, a sign, spaces, digits, and one decimal sign among them. Read without plus sign and leading
 * zeros, with every decimal sent; a minus stays, even before zero.
 *
 * @param decimalSign point or comma
 * @param bracketed whether digits that are not verified may stand in square brackets, which are dropped
 */
record NumberField(char decimalSign, boolean bracketed) {
  static final NumberField POINT = new NumberField('.', false);
  static final NumberField COMMA = new NumberField(',', false);
  static final NumberField POINT_AND_BRACKETS = new NumberField('.', true);

  /** More digits than any scale shows; what has more is no weight. */
  private static final int MOST_DIGITS = 15;

  /**
   * Takes the number that ends before a place. Where there is none the line stands at the character that cannot be read.
   */
  Optional<String> take(LineText line, int end) {
    byte[] plain = new byte[MOST_DIGITS + 3];
    int filled = 0;
    int digits = 0;
    int kept = 0;
    boolean pointSeen = false;
    int opened = 0;
    int closed = 0;

    int at = line.place();
    while (at < end && line.charAt(at) == ' ') at++;
    char sign = line.charAt(at);
    if (at < end && (sign == '-' || sign == '+')) {
      if (sign == '-') plain[filled++] = '-';
      at++;
      while (at < end && line.charAt(at) == ' ') at++;
    }
    for (; at < end; at++) {
      char c = line.charAt(at);
      if (c >= '0' && c <= '9') {
        digits++;
        if (c == '0' && kept == 0 && !pointSeen) continue;
        if (kept == MOST_DIGITS) return none(line, at);
        plain[filled++] = (byte) c;
        kept++;
      } else if (c == decimalSign && !pointSeen) {
        if (kept == 0) plain[filled++] = '0';
        plain[filled++] = '.';
        pointSeen = true;
      } else if (bracketed && c == '[' && opened == 0) opened++;
      else if (bracketed && c == ']' && closed < opened) closed++;
      else break;
    }
    if (digits == 0 || opened != closed) return none(line, at);
    if (kept == 0 && !pointSeen) plain[filled++] = '0';
    if (plain[filled - 1] == '.') filled--;
    line.moveTo(at);
    return Optional.of(new String(plain, 0, filled, StandardCharsets.ISO_8859_1));
  }

  private static Optional<String> none(LineText line, int at) {
    line.moveTo(at);
    return Optional.empty();
  }
}
