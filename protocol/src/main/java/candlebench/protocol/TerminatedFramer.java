package candlebench.protocol;

import candlebench.shared.Stamp;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Frames that end in CR LF, in CR alone or in LF alone, whichever the instrument is set to. Empty lines are passed over.
 *
 * <p>Whether a CR is the end shows only in the byte after it. So the first frame that ends in CR alone is handed on with the next byte;
 * from then on a CR is the end at once, until an LF follows one again.
 *
 * <p>Bit 7 is parity where a line of seven data bits is heard as eight: {@code 8D 0A} and {@code 0D 8A} are terminators too.
 */
public final class TerminatedFramer implements Framer {
  private static final int CR = 0x0D;
  private static final int LF = 0x0A;
  private static final int NO_BYTE = -1;

  private final int significantBits;
  private final int aloneByte;
  private final FrameBuffer buffer = new FrameBuffer();
  private boolean crIsTheEnd;
  private boolean crIsPending;
  private boolean aloneIsPending;

  private TerminatedFramer(int significantBits, int aloneByte) {
    this.significantBits = significantBits;
    this.aloneByte = aloneByte;
  }

  /** Lines of 7-bit characters, bit 7 being parity if anything. */
  public static TerminatedFramer ofSevenBits() {
    return new TerminatedFramer(0x7F, NO_BYTE);
  }

  /** Lines in which bit 7 counts. */
  public static TerminatedFramer ofEightBits() {
    return new TerminatedFramer(0xFF, NO_BYTE);
  }

  /** Lines of 7-bit characters, and one byte that is a message of its own where no terminator follows it. */
  public static TerminatedFramer ofSevenBitsOrAlone(int aloneByte) {
    return new TerminatedFramer(0x7F, aloneByte);
  }

  @Override
  public void feed(byte[] bytes, int length, Stamp stamp, Consumer<Frame> frames) {
    int at = 0;
    while (at < length) {
      int end = withinALine() ? nextEnd(bytes, at, length) : at;
      if (end > at) buffer.add(bytes, at, end, stamp, frames);
      if (end < length) take(bytes[end], stamp, frames);
      at = end + 1;
    }
  }

  /** Whether the next byte is no news unless it ends the line. */
  private boolean withinALine() {
    return !buffer.isEmpty() && !crIsPending && !aloneIsPending;
  }

  private int nextEnd(byte[] bytes, int from, int length) {
    int at = from;
    while (at < length
        && (bytes[at] & significantBits) != CR
        && (bytes[at] & significantBits) != LF) at++;
    return at;
  }

  private void take(byte b, Stamp stamp, Consumer<Frame> frames) {
    int c = b & significantBits;
    if (crIsPending) {
      crIsPending = false;
      if (c != LF) {
        buffer.handOn(frames);
        crIsTheEnd = true;
      }
    }
    if (aloneIsPending) {
      aloneIsPending = false;
      if (c != CR && c != LF) buffer.handOn(frames);
    }
    if (buffer.isEmpty() && (c == CR || c == LF)) {
      if (c == LF) crIsTheEnd = false;
      buffer.pass();
      return;
    }
    aloneIsPending = c == aloneByte && buffer.isEmpty();
    buffer.add(b, stamp, frames);
    if (c == LF || c == CR && crIsTheEnd) buffer.handOn(frames);
    else if (c == CR) crIsPending = true;
  }

  @Override
  public Optional<Frame> rest() {
    if (crIsPending) crIsTheEnd = true;
    crIsPending = false;
    aloneIsPending = false;
    return buffer.rest();
  }
}
