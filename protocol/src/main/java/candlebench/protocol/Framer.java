package candlebench.protocol;

import candlebench.shared.Stamp;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Cuts a stream of bytes into frames. Any cut of the stream gives the same frames; memory is bounded; no byte is left out, but the
 * terminators of empty lines.
 *
 * <p>One framer serves one stream, in one thread.
 */
public interface Framer {

  /** The most bytes a frame may have. What grows longer without an end is handed on in pieces, all longer than any message. */
  int LIMIT = 256;

  /** The most bytes a message of any format has. A longer frame is refused, so that the tail of rubbish is never read as a weight. */
  int LONGEST_MESSAGE = 127;

  /** The stamp of what never arrived. */
  Stamp NEVER = new Stamp(Instant.EPOCH, 0);

  /** Takes the first {@code length} bytes, which arrived together, and hands on each frame they complete. */
  void feed(byte[] bytes, int length, Stamp stamp, Consumer<Frame> frames);

  /**
   * What is left at the end of the stream, or after a silence longer than any pause within a frame, if anything; the next byte begins a
   * new frame.
   */
  Optional<Frame> rest();
}
