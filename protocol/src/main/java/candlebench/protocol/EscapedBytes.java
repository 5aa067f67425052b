package candlebench.protocol;

import java.io.ByteArrayOutputStream;

/** Bytes as readable text and back: {@code \r}, {@code \n}, {@code \\}, {@code \xHH}; every other character is itself. */
public final class EscapedBytes {

  private EscapedBytes() {}

  public static String text(byte[] bytes) {
    StringBuilder text = new StringBuilder(bytes.length + 8);
    for (byte each : bytes) {
      int b = each & 0xFF;
      if (b == '\r') text.append("\\r");
      else if (b == '\n') text.append("\\n");
      else if (b == '\\') text.append("\\\\");
      else if (b >= 0x20 && b < 0x7F) text.append((char) b);
      else text.append(String.format("\\x%02x", b));
    }
    return text.toString();
  }

  /** Reads what {@link #text} wrote; throws {@link IllegalArgumentException} naming the place of an unknown escape. */
  public static byte[] bytes(String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(text.length());
    for (int at = 0; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c != '\\') {
        if (c > 0x7E || c < 0x20) throw unknown(text, at);
        bytes.write(c);
        continue;
      }
      if (++at == text.length()) throw unknown(text, at - 1);
      switch (text.charAt(at)) {
        case 'r' -> bytes.write('\r');
        case 'n' -> bytes.write('\n');
        case '\\' -> bytes.write('\\');
        case 'x' -> {
          if (at + 2 >= text.length()) throw unknown(text, at - 1);
          int high = Character.digit(text.charAt(at + 1), 16);
          int low = Character.digit(text.charAt(at + 2), 16);
          if (high < 0 || low < 0) throw unknown(text, at - 1);
          bytes.write(high << 4 | low);
          at += 2;
        }
        default -> throw unknown(text, at - 1);
      }
    }
    return bytes.toByteArray();
  }

  private static IllegalArgumentException unknown(String text, int at) {
    return new IllegalArgumentException("no such escape at character " + (at + 1) + " of '" + text
        + "': use \\r \\n \\\\ or \\xHH");
  }
}
