package candlebench.simulator;

/** Where bytes go that a scale or a line hands on. */
@FunctionalInterface
public interface WireSink {

  /**
   * Takes bytes whose last bit arrived at this moment; they come in order of time.
   *
   * @param nanos nanoseconds of the run
   * @param bytes one frame or a part of one; not to be changed
   */
  void bytes(long nanos, byte[] bytes);
}
