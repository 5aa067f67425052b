package candlebench.protocol.formats;

import static candlebench.protocol.LineSettings.listOf;
import static candlebench.protocol.formats.Say.GROSS;
import static candlebench.protocol.formats.Say.MINUS;
import static candlebench.protocol.formats.Say.NET;
import static candlebench.protocol.formats.Say.OVER;
import static candlebench.protocol.formats.Say.PLUS;
import static candlebench.protocol.formats.Say.TARE;
import static candlebench.protocol.formats.Say.UNDER;

import candlebench.protocol.Decoded;
import candlebench.protocol.EndedFramer;
import candlebench.protocol.Ending;
import candlebench.protocol.Frame;
import candlebench.protocol.FrameShape;
import candlebench.protocol.LineSettings;
import candlebench.protocol.Refusal;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.TerminatedFramer;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.PublishedFormat.UnitNamed;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * The formats of the XK3190 indicators and what looks like them.
 *
 * <pre>
 * STX +001234 3 1C ETX        yaohua/12: sign, digits, number of decimals, exclusive or (A9, A23p, A26 format 0)
 * STX AB +001234 3 1F ETX     yaohua/cmd: address, order, the same; without data if there is none to send
 * =000.3000                   yaohua/eq-rev: the characters of the number from the last to the first (A26 format 1, A23p)
 * =0003.000                   yaohua/eq-fwd: from the first to the last (A26 format 2)
 * WG004.139kg3D CR LF         yaohua/a12: mode, number, unit, exclusive or
 * </pre>
 *
 * <p>Sources: XK3190-A9+ manual p.9-11, A26 p.10-11, A23p p.21-22, A12(E) p.12, A1+ p.18, C602 p.65.
 * Inferred from the printed orders: which bytes the exclusive or of {@code cmd} covers. Second-hand: 9600 and 1200 baud of the A9. Not printed
 * anywhere: what {@code 12}, {@code cmd} and {@code eq} send beyond the range.
 *
 * <p>Left out: the output of A1+ and C602 without point, which does not say how large the number is, and the formats with price fields.
 * A positive number of {@code eq-rev} may be another of {@code eq-fwd}: that is a setting, and under the family's name it is refused.
 */
final class YaohuaFormats {
  private static final String CR_LF = "\r\n";
  private static final char STX = 0x02;
  private static final char ETX = 0x03;
  private static final Fixed START = new Fixed(String.valueOf(STX));
  private static final Fixed END = new Fixed(String.valueOf(ETX));
  private static final Choice SIGN = Choice.of("+", PLUS).or("-", MINUS);
  private static final ImpliedNumber NUMBER = new ImpliedNumber(6, 4);

  private static final LineTable TWELVE = LineTable.of(START, SIGN, NUMBER, Xor.inHex(1), END);

  private static final LineTable ORDERED = LineTable.of(
      START,
      new AddressLetter(),
      Choice.of("B", GROSS).or("C", TARE).or("D", NET),
      SIGN,
      NUMBER,
      Xor.inHex(1),
      END);

  /** A reply without data: the hand-shake. */
  private static final LineTable UNORDERED = LineTable.of(
      START, new AddressLetter(), Choice.of("A").or("B").or("C").or("D"), Xor.inHex(1), END);

  private static final LineTable EQUALS =
      LineTable.of(new Fixed("="), Choice.of("0", PLUS).or("-", MINUS), WeightField.zeros(7));

  private static final LineTable A_12 = LineTable.of(
      new Fixed("W"),
      Choice.of("G", GROSS).or("N", NET),
      WeightField.signedZeros(7).endingIn(' '),
      UnitField.left(2),
      Xor.inHex(0));

  private static final LineTable A_12_OUT =
      LineTable.of(new Fixed("         "), Choice.of("OL", OVER).or("LO", UNDER), Xor.inHex(0));

  private static final Ending BRACKETS = Ending.between(STX, ETX, 0xFF);

  /** Nine bytes from an equals sign on, with no other among them. */
  private static final Ending EQUALS_ENDING = (gathered, length) -> {
    int start = length - EQUALS.width();
    if (start < 0 || gathered[start] != '=') return 0;
    for (int at = start + 1; at < length; at++) if (gathered[at] == '=') return 0;
    return EQUALS.width();
  };

  private static final List<LineSettings> LINES =
      listOf("9600-8N1", "4800-8N1", "2400-8N1", "1200-8N1", "600-8N1");

  /** Order B, gross, to address A. */
  private static final Commands ORDERS =
      Commands.ending("").with(ScaleCommand.SEND, STX + "AB03" + ETX);

  private static final ScaleFormat FORMAT_12 = PublishedFormat.ofLines(
          "yaohua/12",
          "XK3190 continuous output, 12 bytes",
          "XK3190-A9+ p.9-11, A26 p.10, A23p p.21",
          LINES,
          YaohuaFormats::twelve,
          List.of(TableLayout.frame("stream", TWELVE, YaohuaFormats::twelve)))
      .endedBy(FrameShape.ofEightBits(STX + "??????????" + ETX))
      .unitNamed(UnitNamed.NEVER);

  private static final ScaleFormat ORDER_MODE = PublishedFormat.ofLines(
          "yaohua/cmd",
          "XK3190 order mode",
          "XK3190-A9+ p.9-11",
          LINES,
          YaohuaFormats::ordered,
          List.of(TableLayout.frame("reply", ORDERED, YaohuaFormats::ordered)))
      .endedBy(BRACKETS)
      .asked(ORDERS)
      .unitNamed(UnitNamed.NEVER);

  private static final ScaleFormat BACKWARD = PublishedFormat.ofLines(
          "yaohua/eq-rev",
          "XK3190-A26 format 1, last character first",
          "XK3190-A26 p.11, A23p p.21",
          LINES,
          YaohuaFormats::backward,
          List.of(new Backward()))
      .endedBy(EQUALS_ENDING)
      .unitNamed(UnitNamed.NEVER);

  private static final ScaleFormat FORWARD = PublishedFormat.ofLines(
          "yaohua/eq-fwd",
          "XK3190-A26 format 2, first character first",
          "XK3190-A26 p.11",
          LINES,
          YaohuaFormats::forward,
          List.of(TableLayout.frame("stream", EQUALS, YaohuaFormats::forward)))
      .endedBy(EQUALS_ENDING)
      .unitNamed(UnitNamed.NEVER);

  private static final ScaleFormat FORMAT_A12 = PublishedFormat.ofLines(
          "yaohua/a12",
          "XK3190-A12 line",
          "XK3190-A12(E) p.12",
          LINES,
          YaohuaFormats::a12,
          List.of(new TableLayout("line", List.of(A_12, A_12_OUT), CR_LF, YaohuaFormats::a12)))
      .framedBy(TerminatedFramer::ofEightBits);

  static final List<ScaleFormat> ALL =
      List.of(FORMAT_12, ORDER_MODE, BACKWARD, FORWARD, FORMAT_A12);

  /** All under one name, with the lines that some A12 send. */
  static final List<ScaleFormat> FAMILIES = List.of(new FamilyFormat(
      "yaohua",
      "XK3190, any of its formats",
      List.of(FORMAT_12, ORDER_MODE, BACKWARD, FORWARD, FORMAT_A12, CasFormats.WW),
      () -> new EndedFramer(BRACKETS.or(EQUALS_ENDING).or(Ending.ofLines())),
      ORDERS));

  private YaohuaFormats() {}

  private static Decoded twelve(Frame frame) {
    return TWELVE.read(LineText.ofEightBits(frame));
  }

  private static Decoded ordered(Frame frame) {
    LineText text = LineText.ofEightBits(frame);
    if (text.length() != UNORDERED.width()) return ORDERED.read(text);
    Draft draft = new Draft();
    UNORDERED.readInto(draft, text);
    return draft.isStopped() ? draft.decoded(text) : text.acknowledged();
  }

  private static Decoded forward(Frame frame) {
    return EQUALS.read(LineText.ofEightBits(frame));
  }

  /** Turned round behind the equals sign it is read as {@link #forward}; a refusal names the place in the frame as it came. */
  private static Decoded backward(Frame frame) {
    Decoded said = forward(new Frame(frame.offset(), turned(frame.bytes()), frame.stamp()));
    boolean insideTurned =
        said instanceof Decoded.Refused refused && refused.refusal().offset() > 0;
    if (!insideTurned || frame.length() != EQUALS.width()) return said;
    Refusal refusal = ((Decoded.Refused) said).refusal();
    return new Decoded.Refused(
        new Refusal(refusal.reason(), frame.length() - refusal.offset(), refusal.words()));
  }

  private static byte[] turned(byte[] bytes) {
    byte[] turned = bytes.clone();
    for (int at = 1; at < bytes.length; at++) turned[at] = bytes[bytes.length - at];
    return turned;
  }

  private static Decoded a12(Frame frame) {
    if (frame.length() < 3
        || frame.at(frame.length() - 2) != '\r'
        || frame.at(frame.length() - 1) != '\n')
      return LineText.ofEightBits(frame).wrongLength();
    LineText line = LineText.ofEightBits(frame).upTo(frame.length() - CR_LF.length());
    return line.next() == ' ' ? A_12_OUT.read(line) : A_12.read(line);
  }

  /** The layout of {@link #forward}, turned round. */
  private record Backward() implements WireLayout {
    @Override
    public String name() {
      return "stream";
    }

    @Override
    public Optional<byte[]> encode(Decoded said, Shown shown) {
      return Statement.of(said, shown)
          .flatMap(EQUALS::write)
          .map(text -> turned(text.getBytes(StandardCharsets.US_ASCII)));
    }
  }
}
