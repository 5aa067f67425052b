package candlebench.protocol;

import candlebench.shared.Stamp;
import java.util.Arrays;

/**
 * The bytes of one message as they came, and where and when they came.
 *
 * <p>A framer puts every byte it is fed into exactly one frame; what is no message becomes a frame that its decoder refuses.
 *
 * @param offset where its first byte stands in the stream, counted from zero
 * @param bytes all bytes of the message, terminators included; not to be changed
 * @param stamp when its last byte arrived
 */
public record Frame(long offset, byte[] bytes, Stamp stamp) {

  public int length() {
    return bytes.length;
  }

  /** The byte at a place, 0 to 255. */
  public int at(int place) {
    return bytes[place] & 0xFF;
  }

  /** The byte at a place without its bit 7, which is parity where a line of seven data bits is read as eight. */
  public int at7(int place) {
    return bytes[place] & 0x7F;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Frame frame
        && offset == frame.offset
        && Arrays.equals(bytes, frame.bytes)
        && stamp.equals(frame.stamp);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(bytes) * 31 + Long.hashCode(offset);
  }

  /** The bytes readably: printable ASCII as itself, backslash doubled, CR and LF as {@code \r \n}, all else as {@code \xHH}. */
  @Override
  public String toString() {
    return EscapedBytes.text(bytes);
  }
}
