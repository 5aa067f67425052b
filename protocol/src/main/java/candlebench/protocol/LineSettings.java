package candlebench.protocol;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * How a serial line is set, written as {@code 9600-8N1}.
 *
 * @param baud bits per second
 * @param dataBits 7 or 8
 * @param parity none, even, odd, mark or space
 * @param stopBits 1 or 2
 */
public record LineSettings(int baud, int dataBits, Parity parity, int stopBits) {

  /** The parity bit after the data bits. */
  public enum Parity {
    NONE('N'),
    EVEN('E'),
    ODD('O'),
    MARK('M'),
    SPACE('S');

    private final char letter;

    Parity(char letter) {
      this.letter = letter;
    }

    static Parity of(char letter) {
      for (Parity parity : values()) if (parity.letter == letter) return parity;
      throw new AssertionError("the pattern lets no other letter through: " + letter);
    }
  }

  private static final Pattern TEXT = Pattern.compile("(\\d{2,7})-([78])([NEOMS])([12])");

  public LineSettings {
    if (baud < 50
        || baud > 4_000_000
        || dataBits < 7
        || dataBits > 8
        || stopBits < 1
        || stopBits > 2)
      throw new IllegalArgumentException(
          "line settings are a speed of 50 to 4000000 baud, 7 or 8 data bits, 1 or 2 stop bits");
  }

  /** Reads {@code 2400-7E1}; throws {@link IllegalArgumentException} that says how to write it. */
  public static LineSettings of(String text) {
    Matcher matcher = TEXT.matcher(text);
    if (!matcher.matches())
      throw new IllegalArgumentException(
          "line settings are written like 9600-8N1 or 2400-7E1, not '" + text + "'");
    return new LineSettings(
        Integer.parseInt(matcher.group(1)),
        Integer.parseInt(matcher.group(2)),
        Parity.of(matcher.group(3).charAt(0)),
        Integer.parseInt(matcher.group(4)));
  }

  /** Reads several, in their order. */
  public static List<LineSettings> listOf(String... texts) {
    return Stream.of(texts).map(LineSettings::of).toList();
  }

  @Override
  public String toString() {
    return baud + "-" + dataBits + parity.letter + stopBits;
  }
}
