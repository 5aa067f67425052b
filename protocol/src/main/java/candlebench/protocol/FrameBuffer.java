package candlebench.protocol;

import candlebench.shared.Stamp;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Consumer;

/** The bytes of the frame a framer is gathering, never more than {@link Framer#LIMIT}. */
final class FrameBuffer {
  private final byte[] bytes = new byte[Framer.LIMIT];
  private int length;
  private long offset;
  private Stamp lastArrival = Framer.NEVER;

  boolean isEmpty() {
    return length == 0;
  }

  int length() {
    return length;
  }

  /** What is gathered, in its first {@link #length()} bytes. */
  byte[] bytes() {
    return bytes;
  }

  /** Adds a byte; a full buffer first hands on its older half, which no message can be. */
  void add(byte b, Stamp stamp, Consumer<Frame> frames) {
    if (length == Framer.LIMIT) handOn(Framer.LIMIT - Framer.LONGEST_MESSAGE, frames);
    bytes[length++] = b;
    lastArrival = stamp;
  }

  /** Adds the bytes from one place up to another, as if one by one. */
  void add(byte[] more, int from, int to, Stamp stamp, Consumer<Frame> frames) {
    for (int at = from; at < to; ) {
      if (length == Framer.LIMIT) handOn(Framer.LIMIT - Framer.LONGEST_MESSAGE, frames);
      int count = Math.min(Framer.LIMIT - length, to - at);
      System.arraycopy(more, at, bytes, length, count);
      length += count;
      at += count;
      lastArrival = stamp;
    }
  }

  /** Passes over a byte that belongs to no frame. */
  void pass() {
    offset++;
  }

  /** Hands on all there is, if anything. */
  void handOn(Consumer<Frame> frames) {
    if (length > 0) handOn(length, frames);
  }

  /** Takes out all there is, if anything. */
  Optional<Frame> rest() {
    return length == 0 ? Optional.empty() : Optional.of(first(length));
  }

  /** Hands on the first bytes as a frame and keeps the others. */
  void handOn(int count, Consumer<Frame> frames) {
    frames.accept(first(count));
  }

  private Frame first(int count) {
    Frame frame = new Frame(offset, Arrays.copyOf(bytes, count), lastArrival);
    System.arraycopy(bytes, count, bytes, 0, length - count);
    length -= count;
    offset += count;
    return frame;
  }
}
