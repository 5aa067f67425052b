package candlebench.protocol;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What to ask an unknown scale that says nothing by itself. It sends its weight if it speaks the right format, and otherwise does
 * nothing: no question holds what any format calls tare or zero, or what makes a scale send continuously.
 *
 * @param line how the line is to be set for it
 * @param bytes what to send; where the scale has 7 data bits and the line 8, their parity stands in bit 7
 */
public record Question(LineSettings line, byte[] bytes) {

  /** Ends whatever a scale may have heard of what was said at another speed. */
  private static final byte[] LINE_END = "\r\n".getBytes(StandardCharsets.US_ASCII);

  /**
   * All questions of a list of formats, those of the most promising line first. At each line, what a scale of one way to send characters
   * is asked begins with a line end sent in that way. What has no line end of its own comes last, each behind one, as a scale that does
   * not know it takes it for the beginning of what follows.
   */
  public static List<Question> plan(List<ScaleFormat> formats) {
    Set<Question> plan = new LinkedHashSet<>();
    for (LineSettings line : Heard.plan(formats)) {
      Map<LineSettings, List<byte[]>> byOwnLine =
          new TreeMap<>(Comparator.comparing(LineSettings::dataBits, Comparator.reverseOrder())
              .thenComparing(LineSettings::parity));
      for (ScaleFormat format : formats)
        for (LineSettings own : format.lines())
          if (Heard.eightBits(own).equals(line))
            asked(format, formats)
                .forEach(bytes ->
                    byOwnLine.computeIfAbsent(own, none -> new ArrayList<>()).add(bytes));
      byOwnLine.forEach((own, all) -> {
        boolean begins = true;
        for (byte[] bytes : all) {
          if (!hasAnEnd(bytes)) continue;
          plan.add(of(begins ? afterLineEnd(bytes) : bytes, own, line));
          begins = false;
        }
      });
      byOwnLine.forEach((own, all) -> all.stream()
          .filter(bytes -> !hasAnEnd(bytes))
          .forEach(bytes -> plan.add(of(afterLineEnd(bytes), own, line))));
    }
    return List.copyOf(plan);
  }

  /** How a format is asked for its weight on a line of its own that is set otherwise at this end. */
  public static Question of(byte[] bytes, LineSettings own, LineSettings line) {
    byte[] sent = bytes.clone();
    if (own.dataBits() < line.dataBits())
      for (int at = 0; at < sent.length; at++) if (bitSeven(own, sent[at])) sent[at] |= (byte) 0x80;
    return new Question(line, sent);
  }

  /** The same, of a scale that may have heard something else before; empty where the format has no such command. */
  public static Optional<Question> of(ScaleFormat format, LineSettings own, LineSettings line) {
    return format
        .command(ScaleCommand.SEND)
        .map(bytes -> of(hasAnEnd(bytes) ? bytes : afterLineEnd(bytes), own, line));
  }

  private static Stream<byte[]> asked(ScaleFormat format, List<ScaleFormat> formats) {
    return format.command(ScaleCommand.SEND).stream().filter(bytes -> isHarmless(bytes, formats));
  }

  /** Whether no scale of any format tares, zeroes or begins to send continuously by this, even one that heeds single letters. */
  static boolean isHarmless(byte[] bytes, List<ScaleFormat> formats) {
    String text = text(bytes);
    return formats.stream()
        .noneMatch(format -> isWithin(format, ScaleCommand.TARE, text)
            || isWithin(format, ScaleCommand.ZERO, text)
            || isWithin(format, ScaleCommand.SEND_CONTINUOUSLY, text));
  }

  private static boolean isWithin(ScaleFormat format, ScaleCommand command, String text) {
    return format.command(command).filter(bytes -> text.contains(text(bytes))).isPresent();
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1).stripTrailing();
  }

  /** What stands in bit 7 of a byte that is read as 7 bits and what follows them. */
  private static boolean bitSeven(LineSettings own, byte b) {
    boolean odd = Integer.bitCount(b & 0x7F) % 2 == 1;
    return switch (own.parity()) {
      // The first of two stop bits.
      case NONE, MARK -> true;
      case SPACE -> false;
      case EVEN -> odd;
      case ODD -> !odd;
    };
  }

  private static byte[] afterLineEnd(byte[] bytes) {
    byte[] sent = Arrays.copyOf(LINE_END, LINE_END.length + bytes.length);
    System.arraycopy(bytes, 0, sent, LINE_END.length, bytes.length);
    return sent;
  }

  private static boolean hasAnEnd(byte[] bytes) {
    byte last = bytes[bytes.length - 1];
    return last == '\r' || last == '\n';
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Question question
        && line.equals(question.line)
        && Arrays.equals(bytes, question.bytes);
  }

  @Override
  public int hashCode() {
    return line.hashCode() * 31 + Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    return EscapedBytes.text(bytes) + " at " + line;
  }
}
