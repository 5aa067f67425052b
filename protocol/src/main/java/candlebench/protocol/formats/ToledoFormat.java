package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.EndedFramer;
import candlebench.protocol.Frame;
import candlebench.protocol.FrameShape;
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
 * Toledo continuous output, in the manner of the 8142 and 8530 indicators.
 *
 * <pre>
 * STX  A B C  001234  000000  CR  checksum or LF     A, B, C: status words, one bit each; weight and tare without point and sign
 * </pre>
 *
 * <p>Sources: Mettler Toledo Wildcat technical manual (12/00) appendix 2 tables 6-8 to 6-11, IND445/ICS425 22013194B p.50; Kern FTC p.42;
 * Rockwell 57C428 appendix D; Cardinal 225 8200-M698-O1 p.118 (11 bytes, with a checksum in its format 3); Rice Lake 520 13.8, 480 Legend
 * p.53; Triner TS-700 p.12-13; Fairbanks FB2550 p.175, FB3000 p.55, 2800 p.64; T-Scale ROW p.15 and WorldWeigh BWS p.22 (LF behind CR,
 * code of the ounce); Ohaus Defender 5000 EN-67 and EN-68 (unit codes, expanded data, spaces), Courier 7000 EN-52; Vector VI-200 p.21-22.
 * From memory: 9600 7E1, with one or two stop bits; that the commands want CR LF on every model.
 *
 * <p>Makers set the constant bits as they like, so none is tested. Where the frame does not say for certain how large the number is, it is
 * refused: with dummy zeros (makers disagree whether the six digits hold them) and with data expanded by ten (no manual says what then
 * becomes of the point). T-Scale also sets the range bit for a negative gross weight, which is read as under the range. Liden
 * LUW2001 names its unit by another code and cannot be told apart.
 */
record ToledoFormat(String id, Kind kind) implements ScaleFormat {
  static final char STX = 0x02;
  static final int DIGITS = 6;
  static final List<ScaleFormat> ALL = List.of(
      new ToledoFormat("toledo", Kind.PLAIN),
      new ToledoFormat("toledo/chk", Kind.CHECKED),
      new ToledoFormat("toledo/short", Kind.SHORT),
      new ToledoFormat("toledo/short-chk", Kind.SHORT_CHECKED),
      new ToledoFormat("toledo/crlf", Kind.LINE));

  /** Where the status words stand. */
  private static final int A = 1;

  private static final int B = 2;
  private static final int C = 3;
  private static final int WEIGHT = 4;
  private static final int PRINT_REQUEST = 1 << 3;

  /** The point code of a number without decimals; those below it stand for dummy zeros. */
  static final int NO_DECIMALS = 2;

  /** What stands behind the weight. */
  enum Kind {
    PLAIN("Toledo continuous output", true, false, "\r"),
    CHECKED("Toledo continuous output with checksum", true, true, "\r?"),
    SHORT("Toledo continuous output without tare (Cardinal)", false, false, "\r"),
    SHORT_CHECKED(
        "Toledo continuous output without tare, with checksum (Cardinal)", false, true, "\r?"),
    LINE("Toledo continuous output with line feed (T-Scale)", true, false, "\r\n");

    private final String title;
    private final boolean tare;
    private final boolean checked;
    private final FrameShape shape;
    private final int length;

    Kind(String title, boolean tare, boolean checked, String end) {
      String picture = STX + "???" + "?".repeat(tare ? 2 * DIGITS : DIGITS) + end;
      this.title = title;
      this.tare = tare;
      this.checked = checked;
      this.shape = FrameShape.ofSevenBits(picture);
      this.length = picture.length();
    }

    boolean hasTare() {
      return tare;
    }

    boolean isChecked() {
      return checked;
    }

    boolean isLine() {
      return this == LINE;
    }
  }

  @Override
  public String title() {
    return kind.title;
  }

  @Override
  public String source() {
    return "Mettler Toledo Wildcat appendix 2, IND445 p.50; Kern FTC p.42; Cardinal 225 p.118; Ohaus Defender 5000 EN-67; T-Scale ROW p.15";
  }

  @Override
  public List<LineSettings> lines() {
    return LineSettings.listOf(
        "9600-7E1", "9600-8N1", "4800-7E1", "2400-7E1", "1200-7E1", "19200-7E1");
  }

  @Override
  public Framer newFramer() {
    return new EndedFramer(kind.shape);
  }

  @Override
  public List<WireLayout> layouts() {
    return ToledoLayout.of(kind);
  }

  /** The output comes by itself; P would print a ticket. */
  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    return switch (command) {
      case TARE -> CrLf.ended("T");
      case ZERO -> CrLf.ended("Z");
      case SEND, SEND_STABLE, SEND_CONTINUOUSLY, STOP_SENDING -> Optional.empty();
    };
  }

  /** Bit 3 of status word C, "print request". */
  @Override
  public boolean marksPrint(Frame frame) {
    return frame.length() > C && (frame.at7(C) & PRINT_REQUEST) != 0;
  }

  @Override
  public Decoded decode(Frame frame) {
    LineText text = LineText.ofSevenBits(frame);
    boolean shaped = kind.shape.lengthOfMessage(frame.bytes(), frame.length()) == frame.length();
    if (!shaped) return text.moveTo(Math.min(frame.length(), kind.length)).wrongLength();
    if (kind.checked && !isSumRight(frame))
      return text.moveTo(frame.length() - 1).wrongChecksum();
    Draft draft = new Draft();
    marks(draft, frame.at7(B));
    number(draft, text, frame);
    unit(draft, text, frame);
    return draft.decoded(text);
  }

  /** All bytes together, this one included, are a multiple of 128. */
  private static boolean isSumRight(Frame frame) {
    int sum = 0;
    for (int at = 0; at < frame.length(); at++) sum += frame.at7(at);
    return (sum & 0x7F) == 0;
  }

  /** Bits 0 net, 1 negative, 2 out of range, 3 motion. Bit 6, not zeroed since it was switched on, changes nothing in the number. */
  private static void marks(Draft draft, int b) {
    draft.say((b & 1) == 0 ? Say.GROSS : Say.NET, "");
    draft.say((b & 2) == 0 ? Say.PLUS : Say.MINUS, "");
    if ((b & 4) != 0) draft.say(Say.OUT, "");
    draft.say((b & 8) == 0 ? Say.STABLE : Say.UNSTABLE, "");
  }

  private void number(Draft draft, LineText text, Frame frame) {
    int point = frame.at7(A) & 7;
    if (point < NO_DECIMALS)
      draft.flaw(
          text.moveTo(A)
              .refused(
                  Reason.NOT_THIS_FORMAT,
                  "dummy zeros, which makers do not agree on: set the scale to show every digit of the weight"));
    if ((frame.at7(C) & 0x10) != 0)
      draft.flaw(
          text.moveTo(C)
              .refused(
                  Reason.NOT_THIS_FORMAT,
                  "data expanded by ten, where the point is not certain: switch the expanded display off"));
    Optional<String> weight = digits(text.moveTo(WEIGHT));
    if (weight.isEmpty()) draft.flaw(text.notANumber());
    if (kind.tare && weight.isPresent() && digits(text).isEmpty()) draft.flaw(text.notANumber());
    weight.ifPresent(
        digits -> draft.number(ImpliedPoint.number(digits, Math.max(0, point - NO_DECIMALS))));
  }

  /** Six digits. Leading zeros, or all of them in an unused tare, may be spaces. */
  private static Optional<String> digits(LineText text) {
    int start = text.place();
    int end = start + DIGITS;
    int first = Math.min(text.nextMark(), end);
    for (int at = first; at < end; at++)
      if (!LineText.isDigit(text.charAt(at))) {
        text.moveTo(at);
        return Optional.empty();
      }
    text.moveTo(end);
    return Optional.of("0".repeat(first - start) + text.text(first, end));
  }

  /** Bits 2-0 of C; where they are clear, bit 4 of B tells kilograms from pounds. */
  private static void unit(Draft draft, LineText text, Frame frame) {
    boolean metric = (frame.at7(B) & 0x10) != 0;
    switch (frame.at7(C) & 7) {
      case 0 -> draft.unit(WireUnit.of(metric ? MassUnit.KILOGRAM : MassUnit.POUND));
      case 1 -> draft.unit(WireUnit.of(MassUnit.GRAM));
      case 2, 6 -> draft.unit(WireUnit.of(Decoded.NotALoad.Matter.OTHER_UNIT)); // tonne, short ton
      case 3 -> draft.unit(WireUnit.of(MassUnit.OUNCE));
      case 7 -> draft.unit(WireUnit.NONE);
      default -> draft.flaw(text.moveTo(C).unknownUnit());
    }
  }
}
