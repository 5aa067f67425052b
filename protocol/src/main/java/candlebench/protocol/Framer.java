package candlebench.protocol;

import candlebench.shared.Stamp;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Cuts a stream of bytes into frames. Any cut of the stream gives the same frames; memory is bounded; no byte is left out.
 *
 * <p>One framer serves one stream, in one thread.
 */
public interface Framer {

  /** The most bytes a frame may have. What grows longer without an end is handed on as a frame, to be refused. */
  int LIMIT = 256;

  /** Takes the first {@code length} bytes, which arrived together, and hands on each frame they complete. */
  void feed(byte[] bytes, int length, Stamp stamp, Consumer<Frame> frames);

  /** What is left at the end of the stream, if anything; afterwards the framer is as new, its offset going on. */
  Optional<Frame> rest(Stamp stamp);
}
