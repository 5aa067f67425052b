package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.EndedFramer;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.protocol.Refusal.Reason;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.shared.MassUnit;
import java.util.List;
import java.util.Optional;

/**
 * The NCI protocol, SCP-01: a weight in the width of the display, then status bytes; or status bytes alone.
 *
 * <pre>
 * LF  002.35lb  CR LF  0p4  CR ETX      weight and unit as displayed; 2 to 4 status bytes, one bit each
 * LF  S10  CR ETX                       the dialect of cash registers leads its status by S and sends weights only at rest
 * </pre>
 *
 * <p>Sources: Salter Brecknell 3700LP p.9-11; NCI 6702/6710/6720 p.14, 7800 family p.32; Avery Weigh-Tronix 7821 6.3 p.25; Rice Lake
 * BenchPro BP-P tables 6-6 to 6-14; Adam MDW 2012 8.3 to 8.5; CAS CI-100A 23.6 p.38 (pounds and ounces); Ohaus Aviator 7000 service
 * manual p.49, Courier 7000 EN-41; B-TEK T419S 7.3 p.66; Fairbanks FB2255 p.73-74; Mettler Toledo DIVA service manual 72191202 p.34-37
 * (cash registers); AvaWeigh 334RS150 parameters U5 to U7; CAS SW ECR manual 1.2. Unsure: whether the status of that dialect is always two
 * bytes.
 *
 * <p>The width of the weight is that of the display, so a digit lost on the way is not noticed. Status bytes are held to their constant
 * bits and to their own word on how many they are.
 */
final class NciFormat implements ScaleFormat {
  static final char ETX = 0x03;

  private static final String END = "\r" + ETX;
  private static final int FEWEST_STATUS_BYTES = 2;
  private static final int MOST_STATUS_BYTES = 4;

  /** Bits 5 and 4 are set, bit 6 is not unless another byte follows. */
  private static final int CONSTANT_BITS = 0x30;

  private static final int ANOTHER_FOLLOWS = 0x40;

  /** Of the first three bytes: RAM and EEPROM; ROM and calibration; initial zero. */
  private static final int[] FAULTS = {0x0C, 0x0C, 0x08};

  @Override
  public String id() {
    return "nci";
  }

  @Override
  public String title() {
    return "NCI protocol, SCP-01";
  }

  @Override
  public String source() {
    return "Salter Brecknell 3700LP p.9-11; NCI 6702 p.14; Rice Lake BenchPro BP-P tables 6-6 to 6-14; Adam MDW 8.3 to 8.5; CAS CI-100A p.38; Mettler Toledo DIVA p.34-37";
  }

  @Override
  public List<LineSettings> lines() {
    return lineSettings();
  }

  static List<LineSettings> lineSettings() {
    return LineSettings.listOf(
        "9600-8N1", "9600-7E1", "9600-7O1", "4800-7E1", "2400-7E1", "1200-7E1", "19200-7E1");
  }

  @Override
  public Framer newFramer() {
    return new EndedFramer(NciFormat::lengthOfMessage);
  }

  /** From the LF before the status, or from the one before the weight if a CR divides them. */
  static int lengthOfMessage(byte[] gathered, int length) {
    if ((gathered[length - 1] & 0x7F) != ETX) return 0;
    int status = lineFeedBefore(length - 1, gathered);
    if (status < 0) return length;
    boolean divided = status > 0 && (gathered[status - 1] & 0x7F) == '\r';
    return length - (divided ? Math.max(0, lineFeedBefore(status, gathered)) : status);
  }

  private static int lineFeedBefore(int place, byte[] gathered) {
    int at = place - 1;
    while (at >= 0 && (gathered[at] & 0x7F) != '\n') at--;
    return at;
  }

  @Override
  public List<WireLayout> layouts() {
    return NciLayout.ALL;
  }

  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    return COMMANDS.bytes(command);
  }

  static final Commands COMMANDS = Commands.ending("\r")
      .with(ScaleCommand.SEND, "W")
      .with(ScaleCommand.TARE, "T")
      .with(ScaleCommand.ZERO, "Z");

  @Override
  public Decoded decode(Frame frame) {
    return read(LineText.ofSevenBits(frame));
  }

  static Decoded read(LineText text) {
    if (!text.endsWith(END)) return cutShort(text);
    if (!text.take('\n'))
      return text.notThisFormat("a reply begins with LF: its beginning was lost");
    int divider = text.length() - END.length();
    while (divider > 0 && text.charAt(divider) != '\n') divider--;
    return divider == 0
        ? alone(text.upTo(text.length() - END.length()))
        : withStatus(text, divider);
  }

  static Decoded cutShort(LineText text) {
    return text.moveTo(text.length())
        .refused(Reason.CUT_SHORT, "a reply ends with CR ETX: its end was lost");
  }

  /** A question mark, or status bytes. */
  private static Decoded alone(LineText text) {
    if (text.left() == 1 && text.next() == '?') return new InstrumentFault("?");
    Draft draft = new Draft();
    status(text, draft);
    return draft.status(text);
  }

  private static Decoded withStatus(LineText text, int divider) {
    Draft draft = new Draft();
    status(text.upTo(text.length() - END.length()).moveTo(divider + 1), draft);
    if (text.charAt(divider - 1) != '\r')
      draft.stop(text.moveTo(divider - 1).notThisFormat("CR LF stands before the status"));
    LineText shown = text.upTo(divider - 1);
    boolean unitAlone = LineText.isLetter(text.next()) || text.next() == '%';
    if (unitAlone && !draft.isStopped()) return unitReply(shown, draft);
    weight(shown, draft);
    return draft.decoded(text);
  }

  /** What U is answered: the unit in use, which is no reading. */
  private static Decoded unitReply(LineText shown, Draft draft) {
    boolean known = shown.take("lb:oz") || shown.unit().isPresent();
    return known && shown.atEnd() ? draft.status(shown) : shown.unknownUnit();
  }

  /** Two to four bytes with their constant bits set, each but the first telling whether another follows. */
  private static void status(LineText text, Draft draft) {
    String code = text.text(text.place(), text.place() + text.left());
    text.take('S');
    int count = text.left();
    if (count < FEWEST_STATUS_BYTES || count > MOST_STATUS_BYTES) {
      draft.stop(text.wrongLength());
      return;
    }
    for (int number = 1; number <= count; number++) {
      int bits = text.next();
      int expected = CONSTANT_BITS | (number > 1 && number < count ? ANOTHER_FOLLOWS : 0);
      if ((bits & (CONSTANT_BITS | ANOTHER_FOLLOWS)) != expected) {
        draft.stop(text.refused(Reason.UNKNOWN_HEADER, "no status byte: a byte was lost or hit"));
        return;
      }
      statusBits(number, bits, code, draft);
      text.moveTo(text.place() + 1);
    }
  }

  private static void statusBits(int number, int bits, String code, Draft draft) {
    boolean faulty = number < MOST_STATUS_BYTES && (bits & FAULTS[number - 1]) != 0;
    if (faulty) draft.say(Say.FAULT, code);
    switch (number) {
      case 1 -> draft.say((bits & 1) == 0 ? Say.STABLE : Say.UNSTABLE, "");
      case 2 -> {
        if ((bits & 1) != 0) draft.say(Say.UNDER, "");
        if ((bits & 2) != 0) draft.say(Say.OVER, "");
      }
      case 3 -> draft.say((bits & 4) == 0 ? Say.GROSS : Say.NET, "");
      default -> {} // range, low battery, check-weighing: nothing about the load
    }
  }

  /** What the display shows, with its unit. A field filled with one mark says what is wrong. */
  static void weight(LineText shown, Draft draft) {
    switch (filling(shown)) {
      case '^' -> draft.say(Say.OVER, "");
      case '_' -> draft.say(Say.UNDER, "");
      case '-' -> draft.say(Say.FAULT, dashes(shown));
      default -> number(shown, draft);
    }
  }

  /** The mark that stands twice or more at the beginning, a single minus being a sign; else NUL. */
  private static char filling(LineText shown) {
    int start = shown.nextMark();
    char mark = shown.charAt(start);
    boolean fills = mark == shown.charAt(start + 1);
    return fills && (mark == '^' || mark == '_' || mark == '-') ? mark : '\0';
  }

  private static String dashes(LineText shown) {
    int start = shown.nextMark();
    int end = start;
    while (shown.charAt(end) == '-') end++;
    return shown.text(start, end);
  }

  private static void number(LineText shown, Draft draft) {
    Optional<String> number = shown.number();
    if (number.isEmpty()) {
      draft.flaw(shown.notANumber());
      return;
    }
    draft.number(number.get());
    shown.takeSpaces();
    if (shown.isLast("MM")) {
      draft.unit(WireUnit.of(Matter.REMARK)); // raw counts
      return;
    }
    Optional<WireUnit> unit = shown.unit();
    if (unit.isEmpty()) draft.flaw(shown.unknownUnit());
    else if (shown.atEnd()) draft.unit(unit.get());
    else ounces(number.get(), unit.get(), shown, draft);
  }

  /** {@code 002lb 03.5oz} is one weight. */
  private static void ounces(String pounds, WireUnit unit, LineText shown, Draft draft) {
    boolean wholePounds = unit.mass().equals(Optional.of(MassUnit.POUND)) && !pounds.contains(".");
    Optional<String> ounces =
        wholePounds && LineText.isDigit(shown.next()) ? shown.number() : Optional.empty();
    if (ounces.isEmpty()) {
      draft.flaw(shown.wrongLength());
      return;
    }
    Optional<WireUnit> second = shown.unit();
    boolean inOunces = second.flatMap(WireUnit::mass).equals(Optional.of(MassUnit.OUNCE));
    if (inOunces && shown.atEnd()) draft.shown(PoundsAndOunces.ounces(pounds, ounces.get()));
    else draft.flaw(shown.unknownUnit());
  }
}
