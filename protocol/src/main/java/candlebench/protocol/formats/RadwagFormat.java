package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Decoded.OutOfRange;
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

/**
 * The Radwag text protocol, which some Kern scales speak too.
 *
 * <pre>
 * SUI?     250.04 g     command 3, stability 1, space, sign 1, mass 9 at the right, space, unit 3
 *  -     250.04 g       as printed: without the command and one space less
 * </pre>
 *
 * <p>Sources, by Radwag: PS R2 p.157-159, AS R2 PLUS p.83, R series p.82-85, AS PLUS p.84-85 (digits in brackets), PS p.82-84, APP/3Y
 * p.200-203, 4Y p.183-185, WTC p.48-54, WTC 2000 p.44-51, WTB p.56-60, WPT p.69-70, C31 p.59, C41H p.138-149, MA X2 p.105-107, WTC-30
 * p.29 (a mark alone), WLT/L p.76 and WLC p.27 (line settings), HRP p.131-133, WPY p.98-105, PUE 7.1 p.269 (units); by Kern: KEN-TM
 * and KET-TM p.168-170. From memory: 9600 8N1; the unit {@code mg}.
 *
 * <p>The widths are held to, so that a lost byte is refused. Frames say neither net nor gross. It looks like SICS but is not: SICS has a
 * letter in place 3 of a weight, this protocol has none.
 */
final class RadwagFormat implements ScaleFormat {
  private static final int MASS = 9;
  private static final int VERIFIED_MASS = 11;
  private static final int COMMAND = 3;
  private static final int PRINTED = 16;
  private static final int VERIFIED = 18;
  private static final int COMMANDED = 19;
  private static final int SHORT_TARE = 17;

  @Override
  public String id() {
    return "radwag";
  }

  @Override
  public String title() {
    return "Radwag text protocol";
  }

  @Override
  public String source() {
    return "Radwag manuals PS R2 p.157-159, WTC p.48-54, C41H p.138-149, AS PLUS p.84-85; Kern KEN-TM/KET-TM p.168-170";
  }

  @Override
  public List<LineSettings> lines() {
    return LineSettings.listOf(
        "9600-8N1", "4800-8N1", "19200-8N1", "9600-7E1", "38400-8N1", "2400-8N1");
  }

  @Override
  public Framer newFramer() {
    return TerminatedFramer.ofSevenBits();
  }

  @Override
  public List<WireLayout> layouts() {
    return RadwagLayouts.ALL;
  }

  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    return CrLf.ended(
        switch (command) {
          case SEND -> "SI";
          case SEND_STABLE -> "S";
          case SEND_CONTINUOUSLY -> "C1";
          case STOP_SENDING -> "C0";
          case TARE -> "T";
          case ZERO -> "Z";
        });
  }

  @Override
  public Decoded decode(Frame frame) {
    return LineText.read(frame, RadwagFormat::read);
  }

  private static Decoded read(LineText line) {
    if (line.isBlank()) return line.notALoad(Matter.BLANK);
    if (line.isOnly("^") || line.isOnly("v"))
      return weighed(line, line.charAt(line.nextMark()), MASS);
    if (line.next() >= 'A' && line.next() <= 'Z') return commanded(line);
    return switch (line.length()) {
      case PRINTED -> printed(line, MASS);
      case VERIFIED -> printed(line, VERIFIED_MASS);
      default -> line.moveTo(Math.min(line.length(), PRINTED)).wrongLength();
    };
  }

  /** Stability, space, sign, mass, space, unit. */
  private static Decoded printed(LineText line, int width) {
    char stability = line.next();
    line.moveTo(1);
    return weighed(line, stability, width);
  }

  private static Decoded commanded(LineText line) {
    boolean isWeight = line.length() == COMMANDED && line.charAt(COMMAND + 1) == ' ';
    if (isWeight
        && (line.comes("S  ") || line.comes("SI ") || line.comes("SU ") || line.comes("SUI")))
      return weighed(line.moveTo(COMMAND + 1), line.charAt(COMMAND), MASS);
    if (isWeight && (line.comes("P1 ") || line.comes("P2 ")))
      return line.notALoad(Matter.REMARK); // one of several platforms
    boolean isTare = line.comes("OT ") || line.comes("TO ");
    if (isTare && line.length() == SHORT_TARE) return tare(line.moveTo(COMMAND - 1));
    if (isTare && line.length() == COMMANDED) return tare(line.moveTo(COMMAND + 2));
    return answer(line);
  }

  /** A space, sign 1, mass, a space, unit 3; nothing of it counts where the mark says that the pan is out of range. */
  private static Decoded weighed(LineText line, char mark, int width) {
    return switch (mark) {
      case '^' -> new OutOfRange(Side.OVER, Basis.UNSTATED);
      case 'v' -> new OutOfRange(Side.UNDER, Basis.UNSTATED);
      case ' ' -> live(line, width, Stability.STABLE);
      case '?' -> live(line, width, Stability.UNSTABLE);
      default -> line.moveTo(line.place() - 1).unknownHeader();
    };
  }

  private static Decoded live(LineText line, int width, Stability stability) {
    if (!line.take(' ')) return line.wrongLength();
    return measured(
        line, 1 + width, (number, unit) -> line.weighed(number, unit, Basis.UNSTATED, stability));
  }

  private static Decoded tare(LineText line) {
    return measured(
        line, MASS + 1, (number, unit) -> line.tareStated(number, unit, Stability.UNSTATED));
  }

  /** The number at the right of its field, a space, and the unit at the left of its own. */
  private static Decoded measured(LineText line, int width, Meaning meaning) {
    int end = line.place() + width;
    Optional<String> number = line.number(NumberField.POINT_AND_BRACKETS, end);
    if (number.isEmpty() || line.place() != end) return line.notANumber();
    if (!line.take(' ')) return line.wrongLength();
    Optional<WireUnit> unit = line.unitAtLeft();
    if (unit.isEmpty() || unit.get() == WireUnit.NONE || !line.atEnd()) return line.unknownUnit();
    return meaning.of(number.get(), unit.get());
  }

  /** What a command is answered: taken, done, refused; {@code ES} where it is not known. */
  private static Decoded answer(LineText line) {
    if (line.isOnly("ES")) return new InstrumentFault(line.text());
    int end = 0;
    while (isCommandLetter(line.charAt(end))) end++;
    boolean isCommand = end <= COMMAND && line.charAt(end) == ' ';
    if (!isCommand) return line.moveTo(end).unknownHeader();
    boolean answersInText = line.comes("NB ") || line.comes("PC ");
    line.moveTo(end + 1);
    if (answersInText && line.left() > 1) return line.acknowledged();
    return switch (line.rest()) {
      case "A", "D", "OK" -> line.acknowledged();
      case "I", "E", "^", "v" -> new InstrumentFault(line.text());
      default -> line.moveTo(end + 1).unknownHeader();
    };
  }

  private static boolean isCommandLetter(char c) {
    return c >= 'A' && c <= 'Z' || LineText.isDigit(c);
  }
}
