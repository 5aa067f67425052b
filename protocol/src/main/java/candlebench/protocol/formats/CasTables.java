package candlebench.protocol.formats;

import static candlebench.protocol.formats.Say.FAULT;
import static candlebench.protocol.formats.Say.GROSS;
import static candlebench.protocol.formats.Say.MINUS;
import static candlebench.protocol.formats.Say.NET;
import static candlebench.protocol.formats.Say.OVER;
import static candlebench.protocol.formats.Say.PLUS;
import static candlebench.protocol.formats.Say.STABLE;
import static candlebench.protocol.formats.Say.TARE;
import static candlebench.protocol.formats.Say.UNDER;
import static candlebench.protocol.formats.Say.UNSTABLE;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Acknowledged;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Frame;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The lines of {@link CasFormats}, field by field. */
final class CasTables {
  static final char ACK = 0x06;
  static final char NAK = 0x15;

  private static final String CR_LF = "\r\n";
  private static final Fixed COMMA = new Fixed(",");

  private static final Choice STATUS = Choice.of("ST", STABLE)
      .or("US", UNSTABLE)
      .or("OL", OVER)
      .or("UL", UNDER)
      .or("TL", FAULT); // not level

  private static final LineTable HEAD =
      LineTable.of(STATUS, COMMA, Choice.of("GS", GROSS).or("NT", NET), COMMA);

  static final LineTable CI_400 = twentyTwo(CasByte.lamps(true));
  static final LineTable CI_600D = twentyTwo(CasByte.lamps(false));

  static final LineTable EIGHTEEN_ZEROS = HEAD.then(WeightField.signedZeros(8), UnitField.right(2));
  static final LineTable EIGHTEEN_BLANKS =
      HEAD.then(WeightField.signedSpaces(8), UnitField.right(2));
  static final LineTable EIGHTEEN_SIGN_FIRST =
      HEAD.then(Choice.of("+", PLUS).or("-", MINUS), WeightField.spaces(7), UnitField.right(2));

  static final LineTable TEN = LineTable.of(WeightField.signedZeros(8));

  static final LineTable COMMAS = HEAD.then(WeightField.signedSpaces(8), COMMA, UnitField.left(2));
  static final LineTable COMMAS_ADDRESSED = LineTable.of(CasByte.address())
      .then(HEAD)
      .then(WeightField.signedSpaces(8), COMMA, UnitField.left(2));

  static final LineTable SW_II = sw(UnitField.Names.CAPITALS);
  static final LineTable AP_1 = sw(UnitField.Names.SYMBOLS);

  static final LineTable WW_NINE = ww(9);
  static final LineTable WW_SEVEN = ww(7);

  /** The width of the weight varies from maker to maker, so a digit lost there is not noticed. */
  private static final List<LineTable> WW_ALL =
      IntStream.rangeClosed(5, 10).mapToObj(CasTables::ww).toList();

  private CasTables() {}

  private static LineTable twentyTwo(CasByte lamps) {
    return HEAD.then(
        CasByte.device(),
        lamps,
        COMMA,
        WeightField.signedZeros(8),
        CasByte.blankOrRelays(),
        UnitField.right(2),
        new Fixed(CR_LF));
  }

  private static LineTable sw(UnitField.Names units) {
    return LineTable.of(
        new Fixed("\u0001\u0002"),
        Choice.of("S", STABLE).or("U", UNSTABLE),
        Choice.of(" ", PLUS).or("-", MINUS).or("+", PLUS),
        WeightField.zeros(6),
        UnitField.right(2).named(units),
        Xor.asByte(2),
        new Fixed("\u0003\u0004"));
  }

  private static LineTable ww(int width) {
    return LineTable.of(
        Choice.of("ww", GROSS).or("wn", NET).or("wt", TARE),
        WeightField.signedZeros(width),
        UnitField.right(2));
  }

  static Decoded twentyTwo(Frame frame) {
    if (frame.length() != CI_400.width())
      return LineText.read(frame, line -> reply(line).orElseGet(line::wrongLength));
    return CI_400.read(LineText.ofEightBits(frame));
  }

  static Decoded eighteen(Frame frame) {
    return LineText.read(frame, line -> reply(line).orElseGet(() -> EIGHTEEN_ZEROS.read(line)));
  }

  static Decoded ten(Frame frame) {
    return LineText.read(frame, line -> reply(line).orElseGet(() -> TEN.read(line)));
  }

  static Decoded commas(Frame frame) {
    List<LineTable> tables = List.of(COMMAS, COMMAS_ADDRESSED);
    return LineText.read(frame, line -> LineTable.readFitting(line, tables));
  }

  static Decoded ww(Frame frame) {
    return LineText.read(frame, line -> LineTable.readFitting(line, WW_ALL));
  }

  static Decoded sw(Frame frame) {
    if (frame.length() == 1 && frame.at(0) == ACK) return new Acknowledged(String.valueOf(ACK));
    if (frame.length() == 1 && frame.at(0) == NAK) return new InstrumentFault(String.valueOf(NAK));
    return SW_II.read(LineText.ofEightBits(frame));
  }

  /** {@code !} could not be done, {@code ?} not known; or the command echoed: a device of two digits and two letters. */
  private static Optional<Decoded> reply(LineText line) {
    if (line.isOnly("!") || line.isOnly("?")) return Optional.of(new InstrumentFault(line.text()));
    int letters = line.charAt(2) == ' ' ? 3 : 2;
    boolean echo = line.length() == letters + 2
        && LineText.isDigit(line.charAt(0))
        && LineText.isDigit(line.charAt(1))
        && LineText.isLetter(line.charAt(letters))
        && LineText.isLetter(line.charAt(letters + 1));
    return echo ? Optional.of(line.acknowledged()) : Optional.empty();
  }
}
