package candlebench.protocol.formats;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Commands that are sent as a line of text. */
final class CrLf {

  private CrLf() {}

  /** The text and CR LF behind it. */
  static Optional<byte[]> ended(String text) {
    return Optional.of((text + "\r\n").getBytes(StandardCharsets.US_ASCII));
  }
}
