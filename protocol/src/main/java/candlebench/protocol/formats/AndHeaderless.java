package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.shared.Basis;
import candlebench.shared.Stability;
import java.util.Optional;
import java.util.Set;

/** The lines of {@link AndFormat} without a header and separator: MT, KF, NU, and words alone. */
final class AndHeaderless {
  /** What FG scales send back as they got it (FG p.39). {@code SI} is not here: alone on a line it is the MT overload. */
  private static final Set<String> ECHOES = Set.of(
      "Q", "S", "SIR", "C", "R", "Z", "T", "P", "U", "PRT", "ON", "OFF", "CAL", "SMP", "?PT", "?TR",
      "?ID", "?SN", "?TN");

  private static final int KF_LENGTH = 14;
  private static final int KF_NUMBER_END = 10;

  private AndHeaderless() {}

  static Decoded read(LineText line) {
    char first = line.next();
    char second = line.charAt(line.place() + 1);
    if (first == 'S' && (second == ' ' || second == 'D' || second == 'I')) return shortHeaded(line);
    if (first == ' ' && second == 'D') return shortHeaded(line);
    boolean numeric = LineText.isDigit(first) || LineText.isSign(first) || first == ' ';
    return numeric ? unheaded(line) : worded(line);
  }

  /** MT: {@code S }, {@code SD} or {@code SI}, by key two blanks or {@code  D}; number and unit at the right. */
  private static Decoded shortHeaded(LineText line) {
    if (line.take("SI")) {
      String sign = line.rest();
      if (sign.length() > 1 || sign.length() == 1 && !LineText.isSign(sign.charAt(0)))
        return line.notANumber();
      return new Decoded.OutOfRange(sign.equals("-") ? Side.UNDER : Side.OVER, Basis.UNSTATED);
    }
    Stability stability =
        line.charAt(line.place() + 1) == 'D' ? Stability.UNSTABLE : Stability.STABLE;
    line.moveTo(line.place() + 2);
    return numberAndUnit(line, stability);
  }

  /** NU: sign and 8 or 9 characters. KF: 14 characters. MT by key: blanks, number, unit. */
  private static Decoded unheaded(LineText line) {
    int start = line.place();
    if (LineText.isSign(line.next())
        && LineText.isDigit(line.charAt(start + 1))
        && line.left() <= 10) return bareNumber(line);
    if (line.left() == KF_LENGTH) {
      Optional<String> number = line.number(NumberField.POINT, start + KF_NUMBER_END);
      boolean endsThere = line.place() == start + KF_NUMBER_END && !isNumeric(line.next());
      if (number.isPresent() && endsThere) return karlFischer(line, number.get());
      line.moveTo(start);
    }
    if (line.isOnly("H") || line.isOnly("L") || line.isOnly("E") || line.isOnly("-E"))
      return worded(line);
    if (line.next() == ' ' && line.charAt(start + 1) == ' ')
      return numberAndUnit(line, Stability.STABLE);
    return AndFormat.behindIdentity(line).orElseGet(line::wrongLength);
  }

  private static Decoded bareNumber(LineText line) {
    if (line.left() < 9) return line.wrongLength();
    boolean under = line.next() == '-';
    boolean full = true;
    for (int at = line.place() + 1; at < line.length(); at++) full &= line.charAt(at) == '9';
    if (full) return new Decoded.OutOfRange(under ? Side.UNDER : Side.OVER, Basis.UNSTATED);
    Optional<String> number = line.number();
    if (number.isEmpty() || !line.atEnd()) return line.notANumber();
    return line.weighed(number.get(), WireUnit.NONE, Basis.UNSTATED, Stability.UNSTATED);
  }

  /** The unit zone 11-14 is filled only while the weight is stable. */
  private static Decoded karlFischer(LineText line, String number) {
    Optional<WireUnit> unit = line.unit();
    if (unit.isEmpty() || !line.atEnd()) return line.unknownUnit();
    Stability stability = unit.get() == WireUnit.NONE ? Stability.UNSTABLE : Stability.STABLE;
    return line.weighed(number, unit.get(), Basis.UNSTATED, stability);
  }

  private static Decoded numberAndUnit(LineText line, Stability stability) {
    Optional<String> number = line.number();
    if (number.isEmpty()) return line.notANumber();
    Optional<WireUnit> unit = line.unit();
    if (unit.isEmpty() || unit.get() == WireUnit.NONE || !line.atEnd()) return line.unknownUnit();
    return line.weighed(number.get(), unit.get(), Basis.UNSTATED, stability);
  }

  /** Words alone on a line: out of range in KF and DP, a command echoed. */
  private static Decoded worded(LineText line) {
    String word = line.rest();
    return switch (word) {
      case "H", "E" -> new Decoded.OutOfRange(Side.OVER, Basis.UNSTATED);
      case "L", "-E" -> new Decoded.OutOfRange(Side.UNDER, Basis.UNSTATED);
      default -> {
        if (word.equals(String.valueOf(AndFormat.ACK))
            || ECHOES.contains(word)
            || word.startsWith("PT:")) yield line.acknowledged();
        yield AndFormat.behindIdentity(line.moveTo(0)).orElseGet(line::unknownHeader);
      }
    };
  }

  private static boolean isNumeric(char c) {
    return LineText.isDigit(c) || c == '.';
  }
}
