package candlebench.station.link;

/**
 * Knows whether the frame under way was heard from its beginning. What comes first on a line just opened may be the tail of a frame, and
 * some tails read like a whole one: {@code 50.5 g} of {@code 250.5 g}. Pure: time comes with every call.
 *
 * <p>A frame begins after the end of another, or after a silence, unless the silence fell into the middle of one.
 */
final class FrameStart {

  /** Longer than any pause within a frame: adapters hold bytes back for 16 ms, a network sends what it lost after some 200 ms. */
  static final long PAUSE_NANOS = 250_000_000L;

  private long lastByte;
  private boolean known;
  private boolean paused;
  private boolean cut;

  /** The line was opened anew, perhaps in the middle of a frame. */
  void opened(long nanos) {
    lastByte = nanos;
    known = false;
    paused = false;
    cut = false;
  }

  /** Bytes arrived that have not been cut into frames yet. */
  void bytes(long nanos) {
    if (paused && !cut) known = true;
    paused = false;
    lastByte = nanos;
  }

  /** A read brought nothing; whether that ends the frame under way, which is said once. */
  boolean endsBySilence(long nanos) {
    if (paused || nanos - lastByte < PAUSE_NANOS) return false;
    paused = true;
    return true;
  }

  /** A frame ended; whether it was heard from its beginning. */
  boolean endedWhole() {
    boolean whole = known;
    known = true;
    cut = false;
    return whole;
  }

  /** Silence fell into the middle of a frame, whose tail may yet come. */
  void cutShort() {
    known = false;
    cut = true;
  }
}
