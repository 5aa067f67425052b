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
  static final char ACK = 0x06;

  /** Headers of lines that answer a question or go with a weight, but are none (GC p.56-57). */
  private static final Set<String> REMARKS = Set.of("ID", "IT", "NO", "SN", "TN", "UW");

  private static final int BALANCE_UNIT = 3;
  private static final int INDICATOR_NUMBER = 8;
  private static final int INDICATOR_UNIT = 2;
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
    char third = line.charAt(line.place() + 2);
    if (isSeparator(third)) return headed(line);
    if (third == ' ' && (line.comes("WT") || line.comes("US") || line.comes("QT")))
      return padded(line);
    return AndHeaderless.read(line);
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
    Optional<AndLoad> load = AndLoad.take(line);
    if (load.isEmpty()) return line.unknownHeader();
    if (load.get() == AndLoad.TOTAL) return line.notALoad(Matter.TOTAL);
    if (!LineText.isSign(line.next())) return line.notANumber();
    int end = line.place() + INDICATOR_NUMBER;
    Optional<String> number = line.number(NumberField.POINT, end);
    if (number.isEmpty() || line.place() < end) return line.notANumber();
    return unit(
        line,
        INDICATOR_UNIT,
        number.get(),
        (shown, unit) -> load.get() == AndLoad.TARE
            ? line.tareStated(shown, unit, stability)
            : line.weighed(shown, unit, load.get().basis(), stability));
  }

  /** The sign tells which way; digits and unit mean nothing here. */
  private static Decoded outOfRange(LineText line) {
    Basis basis = Basis.UNSTATED;
    if (LineText.isLetter(line.next())) {
      Optional<AndLoad> load = AndLoad.take(line);
      if (load.isEmpty()) return line.unknownHeader();
      basis = load.get().basis();
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

  private static Decoded unit(LineText line, int width, String number, Meaning meaning) {
    if (line.left() != width) return line.wrongLength();
    Optional<WireUnit> unit = line.unit();
    if (unit.isEmpty() || !line.atEnd()) return line.unknownUnit();
    return meaning.of(number, unit.get());
  }

  /** The CSV form with ID, date or time in front, where what counts is from the last header on; or date or time alone. */
  static Optional<Decoded> behindIdentity(LineText line) {
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

  static boolean isSeparator(char c) {
    return c == ',' || c == ';';
  }
}
