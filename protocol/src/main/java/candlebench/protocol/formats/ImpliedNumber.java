package candlebench.protocol.formats;

import candlebench.shared.Indication;
import java.util.Optional;

/**
 * Digits without a point, and behind them one digit that says how many of them are decimals.
 *
 * @param digits how many digits
 * @param mostDecimals the most of them that may be decimals
 */
record ImpliedNumber(int digits, int mostDecimals) implements Field {

  @Override
  public int width() {
    return digits + 1;
  }

  @Override
  public void take(LineText line, Draft draft) {
    int start = line.place();
    int end = start + digits;
    int at = start;
    while (at < end && LineText.isDigit(line.charAt(at))) at++;
    int decimals = line.charAt(end) - '0';
    if (at < end) draft.flaw(line.moveTo(at).notANumber());
    else if (decimals < 0 || decimals > mostDecimals)
      draft.flaw(line.moveTo(end).notANumber());
    else draft.number(ImpliedPoint.number(line.text(start, end), decimals));
    line.moveTo(end + 1);
  }

  @Override
  public boolean write(Statement statement, StringBuilder text) {
    Optional<Indication> number = statement.number();
    if (number.isEmpty() || number.get().decimals() > mostDecimals) return false;
    String significant = ImpliedPoint.digits(number.get());
    if (significant.length() > digits) return false;
    text.append("0".repeat(digits - significant.length()))
        .append(significant)
        .append(number.get().decimals());
    return true;
  }
}
