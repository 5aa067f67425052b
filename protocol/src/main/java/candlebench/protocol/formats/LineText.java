package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.NotALoad;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.Refusal;
import candlebench.protocol.Refusal.Reason;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Function;

/**
 * A line of 7-bit characters being read from left to right: its frame without the terminator and without parity in bit 7.
 *
 * <p>The small leaves that every line format shares: a number, a unit, a sign, and the refusals that go with them.
 */
final class LineText {
  private static final int CR = 0x0D;
  private static final int LF = 0x0A;
  private static final char NOTHING = '\0';

  private final byte[] bytes;
  private final int length;
  private final boolean terminated;
  private int at;

  private LineText(byte[] bytes, int length, boolean terminated) {
    this.bytes = bytes;
    this.length = length;
    this.terminated = terminated;
  }

  /** A frame that is no line of text: all its bytes, without parity. */
  static LineText ofSevenBits(Frame frame) {
    return new LineText(withoutParity(frame.bytes()), frame.length(), true);
  }

  /** A frame that is no line of text, or one in which bit 7 counts: all its bytes as they are. */
  static LineText ofEightBits(Frame frame) {
    return new LineText(frame.bytes(), frame.length(), true);
  }

  static LineText of(Frame frame) {
    byte[] bytes = withoutParity(frame.bytes());
    int length = bytes.length;
    if (length > 0 && bytes[length - 1] == LF) length--;
    if (length > 0 && bytes[length - 1] == CR) length--;
    return new LineText(bytes, length, length < bytes.length);
  }

  /** What the reader makes of a whole line, or why it is none. */
  static Decoded read(Frame frame, Function<LineText, Decoded> reader) {
    LineText line = of(frame);
    return line.isWhole() ? reader.apply(line) : line.flawed();
  }

  private static byte[] withoutParity(byte[] bytes) {
    int all = 0;
    for (byte each : bytes) all |= each;
    if (all >= 0) return bytes;
    byte[] masked = new byte[bytes.length];
    for (int i = 0; i < masked.length; i++) masked[i] = (byte) (bytes[i] & 0x7F);
    return masked;
  }

  /** Whether it has a terminator and is no longer than a message can be. */
  private boolean isWhole() {
    return terminated && bytes.length <= Framer.LONGEST_MESSAGE;
  }

  private Decoded flawed() {
    if (bytes.length > Framer.LONGEST_MESSAGE) {
      at = Framer.LONGEST_MESSAGE;
      return refused(
          Reason.TOO_LONG,
          "no end of a line within " + Framer.LONGEST_MESSAGE
              + " bytes: check speed, parity and format of the line");
    }
    at = length;
    return refused(
        Reason.CUT_SHORT,
        "the line ends without CR or LF: its end was lost, or the scale is set to another format");
  }

  /** The same from this place on, with its end before another place. */
  LineText upTo(int end) {
    return new LineText(bytes, end, terminated).moveTo(at);
  }

  int length() {
    return length;
  }

  int place() {
    return at;
  }

  LineText moveTo(int place) {
    at = place;
    return this;
  }

  boolean atEnd() {
    return at >= length;
  }

  int left() {
    return length - at;
  }

  /** The next character, or NUL at the end. */
  char next() {
    return charAt(at);
  }

  /** The character at a place, or NUL beyond the ends. */
  char charAt(int place) {
    return place >= 0 && place < length ? (char) (bytes[place] & 0xFF) : NOTHING;
  }

  /** Takes the next character if it is this one. */
  boolean take(char c) {
    if (next() != c || atEnd()) return false;
    at++;
    return true;
  }

  /** Takes the text if it comes next. */
  boolean take(String text) {
    if (!comes(text)) return false;
    at += text.length();
    return true;
  }

  boolean comes(String text) {
    if (left() < text.length()) return false;
    for (int i = 0; i < text.length(); i++) if (bytes[at + i] != text.charAt(i)) return false;
    return true;
  }

  /** Whether the text is all that is left. */
  boolean isLast(String text) {
    return comes(text) && left() == text.length();
  }

  /** Whether the text comes next, with a space or the end behind it. */
  boolean comesAlone(String text) {
    int end = at + text.length();
    return comes(text) && (end == length || bytes[end] == ' ');
  }

  boolean takeAlone(String text) {
    if (!comesAlone(text)) return false;
    at += text.length();
    return true;
  }

  /** Takes {@code @} and two digits, the address on a shared line, if they come next. */
  void takeAddress() {
    if (next() == '@' && isDigit(charAt(at + 1)) && isDigit(charAt(at + 2))) at += 3;
  }

  /** Takes the next word if it is digits with colons, slashes or dashes between them. */
  boolean takeDateOrTime() {
    int end = at;
    boolean divided = false;
    while (end < length && bytes[end] != ' ') {
      char c = (char) bytes[end++];
      if (c == ':' || c == '/' || c == '-' && end > at + 1) divided = true;
      else if (!isDigit(c)) return false;
    }
    if (divided) at = end;
    return divided;
  }

  static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  static boolean isSign(char c) {
    return c == '+' || c == '-';
  }

  static boolean isLetter(char c) {
    return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
  }

  boolean endsWith(String text) {
    int start = length - text.length();
    for (int i = 0; i < text.length(); i++) if (charAt(start + i) != text.charAt(i)) return false;
    return true;
  }

  /** The first place from here on that is no space, or the end. */
  int nextMark() {
    int place = at;
    while (place < length && bytes[place] == ' ') place++;
    return place;
  }

  /** Takes spaces as far as they go, and says how many. */
  int takeSpaces() {
    int start = at;
    while (next() == ' ') at++;
    return at - start;
  }

  /** Where the text ends when spaces at the end are left out. */
  int trimmedEnd() {
    int end = length;
    while (end > 0 && bytes[end - 1] == ' ') end--;
    return end;
  }

  boolean isBlank() {
    return trimmedEnd() == 0;
  }

  /** Whether the line, but for spaces around it, is this text. */
  boolean isOnly(String text) {
    int start = 0;
    while (start < length && bytes[start] == ' ') start++;
    if (trimmedEnd() - start != text.length()) return false;
    for (int i = 0; i < text.length(); i++) if (bytes[start + i] != text.charAt(i)) return false;
    return true;
  }

  /** All of the line, spaces included. */
  String text() {
    return text(0, length);
  }

  String text(int from, int to) {
    return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
  }

  /** What is left, without spaces around it. */
  String rest() {
    takeSpaces();
    return text(at, Math.max(at, trimmedEnd()));
  }

  /** Takes a number that may begin with spaces and a sign, written with a decimal point; empty where there is none. */
  Optional<String> number() {
    return number(NumberField.POINT, length);
  }

  /** Takes a number that ends before a place. */
  Optional<String> number(NumberField field, int end) {
    return field.take(this, Math.min(end, length));
  }

  /** Takes the unit that comes next, spaces around it included; {@link WireUnit#NONE} where the line ends. */
  Optional<WireUnit> unit() {
    takeSpaces();
    int start = at;
    while (at < length && bytes[at] != ' ') at++;
    Optional<WireUnit> unit = WireUnit.named(bytes, start, at);
    if (unit.isEmpty()) at = start;
    else takeSpaces();
    return unit;
  }

  /** Takes the field that ends before a place as a unit, spaces around it included; {@link WireUnit#NONE} where it is blank. */
  Optional<WireUnit> unit(int end) {
    int from = at;
    int to = Math.min(end, length);
    while (from < to && bytes[from] == ' ') from++;
    while (to > from && bytes[to - 1] == ' ') to--;
    Optional<WireUnit> unit = WireUnit.named(bytes, from, to);
    at = unit.isPresent() ? end : from;
    return unit;
  }

  /** Takes the unit at the left of the field that is left; blank is {@link WireUnit#NONE}. */
  Optional<WireUnit> unitAtLeft() {
    int mark = nextMark();
    if (mark == at || mark == length) return unit();
    at = mark;
    return Optional.empty();
  }

  /** Takes the unit that comes next, up to a space or a mark that may touch it. */
  Optional<WireUnit> unitBefore(char mark) {
    int start = at;
    while (at < length && bytes[at] != ' ' && bytes[at] != mark) at++;
    Optional<WireUnit> unit = WireUnit.named(bytes, start, at);
    if (unit.isEmpty()) at = start;
    return unit;
  }

  /** The live weight with this number and unit, or the line that is no load where the unit says so. */
  Decoded weighed(String number, WireUnit unit, Basis basis, Stability stability) {
    if (unit.matter().isPresent()) return notALoad(unit.matter().get());
    return new Decoded.Weighed(new Indication(number, unit.mass()), basis, stability);
  }

  /** The stored tare with this number and unit, or the line that is no load where the unit says so. */
  Decoded tareStated(String number, WireUnit unit, Stability stability) {
    if (unit.matter().isPresent()) return notALoad(unit.matter().get());
    return new Decoded.TareStated(new Indication(number, unit.mass()), stability);
  }

  Decoded notALoad(Matter matter) {
    return new NotALoad(matter, text());
  }

  Decoded acknowledged() {
    return new Decoded.Acknowledged(text());
  }

  Decoded notANumber() {
    return refused(Reason.NOT_A_NUMBER, "digits with at most one decimal sign were expected here");
  }

  Decoded unknownUnit() {
    return refused(Reason.UNKNOWN_UNIT, "no unit that we know: set the scale to g, kg, oz or lb");
  }

  Decoded unknownHeader() {
    return refused(Reason.UNKNOWN_HEADER, "no beginning of a line of this format");
  }

  Decoded wrongLength() {
    return refused(
        Reason.WRONG_LENGTH,
        "the line is longer or shorter than its layout: bytes were lost or added");
  }

  Decoded wrongChecksum() {
    return refused(Reason.WRONG_CHECKSUM, "the checksum is another one: a byte was hit on the way");
  }

  Decoded notThisFormat(String words) {
    return refused(Reason.NOT_THIS_FORMAT, words);
  }

  /** Not understood, at the place reached. */
  Decoded refused(Reason reason, String words) {
    return new Decoded.Refused(new Refusal(reason, at, words));
  }
}
