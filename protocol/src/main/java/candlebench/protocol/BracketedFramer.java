package candlebench.protocol;

import candlebench.shared.Stamp;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Frames between a first and a last byte, such as STX and ETX. What stands before a first byte is handed on as a frame of its own, and a
 * first byte inside a frame begins anew, so that rubbish costs at most the frame it hits.
 *
 * <p>For formats of 7-bit characters: bit 7 is parity if anything.
 */
public final class BracketedFramer implements Framer {
  private static final int ANY = -1;

  private final int first;
  private final int last;
  private final FrameBuffer buffer = new FrameBuffer();

  private BracketedFramer(int first, int last) {
    this.first = first;
    this.last = last;
  }

  /** Frames that begin with a byte which does not occur inside them, and end with another. */
  public static BracketedFramer between(int first, int last) {
    return new BracketedFramer(first, last);
  }

  /** Frames that are known by their last byte only. */
  public static BracketedFramer endingIn(int last) {
    return new BracketedFramer(ANY, last);
  }

  @Override
  public void feed(byte[] bytes, int length, Stamp stamp, Consumer<Frame> frames) {
    for (int at = 0; at < length; at++) {
      int c = bytes[at] & 0x7F;
      if (c == first) buffer.handOn(frames);
      buffer.add(bytes[at], stamp, frames);
      if (c == last) buffer.handOn(frames);
    }
  }

  @Override
  public Optional<Frame> rest() {
    return buffer.rest();
  }
}
