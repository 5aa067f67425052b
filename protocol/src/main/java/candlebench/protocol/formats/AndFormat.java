package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.TerminatedFramer;
import candlebench.protocol.WireLayout;
import candlebench.shared.Basis;
import candlebench.shared.Stability;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The A&amp;D formats: standard, CSV, NU, KF, MT and DP of the balances, and the 16-character form of the indicators.
 *
 * <p>Sources, all by A&amp;D: GX manual p.44, GH p.40 and p.42, BM p.46, GP p.44, GX-A/GF-A communication manual p.16-17 (layouts and
 * examples); EJ p.24, EK-AEP and EK-L p.28, EK-09H and EK-i/EW-i p.23, FX-i/FZ-i p.59 and p.74, AD-4212A p.70, AD-4212B p.69,
 * AD-4212D p.27 (CSV); AD-4212C p.20 (2400 7E1); HC-i p.36 (function 09-02); FC-Si p.46 and p.53 (tare read back); GC p.56-57 (error
 * codes, lines of a counting scale); FG p.39 (echo); FS-i options p.17 (RS-485); AD-4403 p.8-9, AD-4404 p.80, AD-4329A p.35
 * (indicators). From memory: that FX-i shows overload with E+19; 2400 7E1 of the models not named; the MT overload's sign. Not
 * printed anywhere: the place of the unit inside the KF unit zone, the width of the MT number; both are read wherever they stand.
 *
 * <p>Fields of fixed width are held to it, so that a lost byte is refused rather than read as another weight. MT has no width, so a
 * digit lost there is not noticed.
 */
final class AndFormat implements ScaleFormat {
  private static final char ACK = 0x06;

  /** What FG scales send back as they got it (FG p.39). {@code SI} is not here: alone on a line it is the MT overload. */
  private static final Set<String> ECHOES = Set.of(
      "Q", "S", "SIR", "C", "R", "Z", "T", "P", "U", "PRT", "ON", "OFF", "CAL", "SMP", "?PT", "?TR",
      "?ID", "?SN", "?TN");

  /** Headers of lines that answer a question or go with a weight, but are none (GC p.56-57). */
  private static final Set<String> REMARKS = Set.of("ID", "IT", "NO", "SN", "TN", "UW");

  private static final int BALANCE_UNIT = 3;
  private static final int INDICATOR_NUMBER = 8;
  private static final int INDICATOR_UNIT = 2;
  private static final int KF_LENGTH = 14;
  private static final int KF_NUMBER_END = 10;
  private static final int DP_LENGTH = 16;
  private static final int DP_NUMBER_END = 13;

  @Override
  public String id() {
    return "and";
  }

  @Override
  public String title() {
    return "A&D standard, CSV, NU, KF, MT, DP and indicator formats";
  }

  @Override
  public String source() {
    return "A&D manuals GX p.44, GX-A/GF-A communication p.16-17, AD-4212D p.27, HC-i p.36, FS-i options p.17, AD-4404 p.80";
  }

  @Override
  public List<LineSettings> lines() {
    return LineSettings.listOf(
        "2400-7E1", "9600-8N1", "9600-7E1", "4800-7E1", "19200-7E1", "1200-7E1", "600-7E1");
  }

  /** HC-i scales send 06h alone, without CR LF. */
  @Override
  public Framer newFramer() {
    return TerminatedFramer.ofSevenBitsOrAlone(ACK);
  }

  @Override
  public List<WireLayout> layouts() {
    return AndLayouts.ALL;
  }

  /** The KF format leaves the unit out while the weight moves. */
  @Override
  public boolean unitMayBeBorrowed() {
    return true;
  }

  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    String text = switch (command) {
      case SEND -> "Q";
      case SEND_STABLE -> "S";
      case SEND_CONTINUOUSLY -> "SIR";
      case STOP_SENDING -> "C";
      case TARE -> "T";
      case ZERO -> "Z";
    };
    return CrLf.ended(text);
  }

  @Override
  public Decoded decode(Frame frame) {
    if (frame.length() == 1 && frame.at7(0) == ACK) return new Decoded.Acknowledged("\u0006");
    return LineText.read(frame, AndFormat::read);
  }

  private static Decoded read(LineText line) {
    if (line.isBlank()) return line.notALoad(Matter.BLANK);
    line.takeAddress();
    char first = line.next();
    char second = line.charAt(line.place() + 1);
    char third = line.charAt(line.place() + 2);
    if (isSeparator(third)) return headed(line);
    if (third == ' ' && (line.comes("WT") || line.comes("US") || line.comes("QT")))
      return padded(line);
    if (first == 'S' && (second == ' ' || second == 'D' || second == 'I')) return shortHeaded(line);
    if (first == ' ' && second == 'D') return shortHeaded(line);
    if (isDigitSignOrSpace(first)) return unheaded(line);
    return worded(line);
  }

  /** What stands behind a header of two letters and a separator: the standard, CSV and indicator forms, and replies. */
  private static Decoded headed(LineText line) {
    int start = line.place();
    String header = line.text(start, start + 2);
    char separator = line.charAt(start + 2);
    line.moveTo(start + 3);
    return switch (header) {
      case "ST", "WT" -> live(line, separator, Stability.STABLE);
      case "US" -> live(line, separator, Stability.UNSTABLE);
      case "OL", "LO" -> outOfRange(line);
      case "QT" -> measured(line, separator, (number, unit) -> line.notALoad(Matter.PIECES));
      case "TR", "PT" ->
        measured(
            line, separator, (number, unit) -> line.tareStated(number, unit, Stability.UNSTATED));
      case "EC" -> new Decoded.InstrumentFault(line.rest());
      default ->
        REMARKS.contains(header)
            ? line.notALoad(Matter.REMARK)
            : behindIdentity(line.moveTo(start)).orElseGet(line::unknownHeader);
    };
  }

  private static Decoded live(LineText line, char separator, Stability stability) {
    if (LineText.isLetter(line.next())) return indicator(line, stability);
    return measured(
        line, separator, (number, unit) -> line.weighed(number, unit, Basis.UNSTATED, stability));
  }

  /** Sign and 8 or 9 characters, a separator in the CSV form, 3 characters of unit at the right. */
  private static Decoded measured(LineText line, char separator, Meaning meaning) {
    int start = line.place();
    if (!LineText.isSign(line.next())) return line.notANumber();
    Optional<String> number = line.number(numberField(line, separator), line.length());
    if (number.isEmpty()) return line.notANumber();
    int width = line.place() - start - 1;
    if (width < 8 || width > 9) return line.wrongLength();
    line.take(separator);
    return unit(line, BALANCE_UNIT, number.get(), meaning);
  }

  /** A comma is the decimal sign where semicolons separate, and on HC-i scales wherever a digit follows it. */
  private static NumberField numberField(LineText line, char separator) {
    if (separator == ';') return NumberField.COMMA;
    int at = line.place() + 1;
    while (LineText.isDigit(line.charAt(at))) at++;
    boolean decimalComma = line.charAt(at) == ',' && LineText.isDigit(line.charAt(at + 1));
    return decimalComma ? NumberField.COMMA : NumberField.POINT;
  }

  /** A second header, sign and 7 characters, 2 characters of unit. */
  private static Decoded indicator(LineText line, Stability stability) {
    Optional<Load> load = Load.take(line);
    if (load.isEmpty()) return line.unknownHeader();
    if (load.get() == Load.TOTAL) return line.notALoad(Matter.TOTAL);
    if (!LineText.isSign(line.next())) return line.notANumber();
    int end = line.place() + INDICATOR_NUMBER;
    Optional<String> number = line.number(NumberField.POINT, end);
    if (number.isEmpty() || line.place() < end) return line.notANumber();
    return unit(
        line,
        INDICATOR_UNIT,
        number.get(),
        (shown, unit) -> load.get() == Load.TARE
            ? line.tareStated(shown, unit, stability)
            : line.weighed(shown, unit, load.get().basis, stability));
  }

  /** The sign tells which way; digits and unit mean nothing here. */
  private static Decoded outOfRange(LineText line) {
    Basis basis = Basis.UNSTATED;
    if (LineText.isLetter(line.next())) {
      Optional<Load> load = Load.take(line);
      if (load.isEmpty()) return line.unknownHeader();
      basis = load.get().basis;
    }
    return new Decoded.OutOfRange(line.next() == '-' ? Side.UNDER : Side.OVER, basis);
  }

  /** DP: header 1-2, number 3-13 at the right with its sign before the first digit, unit 14-16. */
  private static Decoded padded(LineText line) {
    int start = line.place();
    if (line.left() != DP_LENGTH) return line.wrongLength();
    boolean pieces = line.take("QT");
    Stability stability = line.comes("US") ? Stability.UNSTABLE : Stability.STABLE;
    line.moveTo(start + 2);
    Optional<String> number = line.number(NumberField.POINT, start + DP_NUMBER_END);
    if (number.isEmpty() || line.place() < start + DP_NUMBER_END) return line.notANumber();
    return unit(
        line,
        BALANCE_UNIT,
        number.get(),
        (shown, unit) -> pieces
            ? line.notALoad(Matter.PIECES)
            : line.weighed(shown, unit, Basis.UNSTATED, stability));
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
    return behindIdentity(line).orElseGet(line::wrongLength);
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

  private static Decoded unit(LineText line, int width, String number, Meaning meaning) {
    if (line.left() != width) return line.wrongLength();
    Optional<WireUnit> unit = line.unit();
    if (unit.isEmpty() || !line.atEnd()) return line.unknownUnit();
    return meaning.of(number, unit.get());
  }

  /** Words alone on a line: out of range in KF and DP, a command echoed. */
  private static Decoded worded(LineText line) {
    String word = line.rest();
    return switch (word) {
      case "H", "E" -> new Decoded.OutOfRange(Side.OVER, Basis.UNSTATED);
      case "L", "-E" -> new Decoded.OutOfRange(Side.UNDER, Basis.UNSTATED);
      default -> {
        if (word.equals(String.valueOf(ACK)) || ECHOES.contains(word) || word.startsWith("PT:"))
          yield line.acknowledged();
        yield behindIdentity(line.moveTo(0)).orElseGet(line::unknownHeader);
      }
    };
  }

  /** The CSV form with ID, date or time in front, where what counts is from the last header on; or date or time alone. */
  private static Optional<Decoded> behindIdentity(LineText line) {
    int start = line.place();
    for (int at = line.length() - 3; at > start; at--) {
      line.moveTo(at);
      boolean isHeader =
          line.comes("ST") || line.comes("US") || line.comes("OL") || line.comes("QT");
      if (isHeader && isSeparator(line.charAt(at - 1)) && isSeparator(line.charAt(at + 2)))
        return Optional.of(headed(line));
    }
    line.moveTo(start);
    boolean dated = line.takeDateOrTime() && line.nextMark() == line.length();
    return dated ? Optional.of(line.moveTo(start).notALoad(Matter.REMARK)) : Optional.empty();
  }

  private static boolean isSeparator(char c) {
    return c == ',' || c == ';';
  }

  private static boolean isNumeric(char c) {
    return LineText.isDigit(c) || c == '.';
  }

  private static boolean isDigitSignOrSpace(char c) {
    return LineText.isDigit(c) || LineText.isSign(c) || c == ' ';
  }

  /** The second header of the indicators: what the number is. */
  private enum Load {
    GROSS(Basis.GROSS),
    NET(Basis.NET),
    TARE(Basis.UNSTATED),
    TOTAL(Basis.UNSTATED);

    private final Basis basis;

    Load(Basis basis) {
      this.basis = basis;
    }

    private static Optional<Load> take(LineText line) {
      Optional<Load> load = read(line);
      if (load.isEmpty() || !isSeparator(line.charAt(line.place() + 2))) return Optional.empty();
      line.moveTo(line.place() + 3);
      return load;
    }

    private static Optional<Load> read(LineText line) {
      if (line.comes("GS") || line.comes("G ")) return Optional.of(GROSS);
      if (line.comes("NT") || line.comes("N ")) return Optional.of(NET);
      if (line.comes("TR") || line.comes("T ") || line.comes("PT")) return Optional.of(TARE);
      if (line.comes("TW") || line.comes("TN")) return Optional.of(TOTAL);
      return Optional.empty();
    }
  }
}
