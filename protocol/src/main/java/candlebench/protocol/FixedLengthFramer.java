package candlebench.protocol;

import candlebench.shared.Stamp;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Frames of a fixed length that begin with a known byte and have another at a known place, though both may occur elsewhere too. Where
 * the byte at that place is wrong, the frame is sought again from the next first byte on.
 *
 * <p>For formats of 7-bit characters: bit 7 is parity if anything.
 */
public final class FixedLengthFramer implements Framer {
  private final int first;
  private final int length;
  private final int place;
  private final int mark;
  private final FrameBuffer buffer = new FrameBuffer();

  /**
   * Frames that begin with {@code first}, have {@code length} bytes, and {@code mark} at {@code place}, counted from zero.
   */
  public FixedLengthFramer(int first, int length, int place, int mark) {
    if (length < 2 || length > LONGEST_MESSAGE || place < 1 || place >= length)
      throw new IllegalArgumentException(
          "a frame has 2 to " + LONGEST_MESSAGE + " bytes, and its mark inside, after the first");
    this.first = first;
    this.length = length;
    this.place = place;
    this.mark = mark;
  }

  @Override
  public void feed(byte[] bytes, int count, Stamp stamp, Consumer<Frame> frames) {
    for (int at = 0; at < count; at++) {
      boolean strayed = !buffer.isEmpty() && at7(0) != first;
      if (strayed && (bytes[at] & 0x7F) == first) buffer.handOn(frames);
      buffer.add(bytes[at], stamp, frames);
      while (at7(0) == first && buffer.length() > place && at7(place) != mark)
        buffer.handOn(nextFirst(), frames);
      if (at7(0) == first && buffer.length() == length) buffer.handOn(frames);
    }
  }

  private int nextFirst() {
    int at = 1;
    while (at < buffer.length() && at7(at) != first) at++;
    return at;
  }

  private int at7(int place) {
    return buffer.isEmpty() ? -1 : buffer.at(place) & 0x7F;
  }

  @Override
  public Optional<Frame> rest() {
    return buffer.rest();
  }
}
