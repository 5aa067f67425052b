package candlebench.station.guidance.pour;

/**
 * The cue that stands: since when, and what the stream was then.
 *
 * @param at in seconds since the watch began
 * @param flow grams a second; zero where it was said at rest
 * @param sure whether the line could be trusted
 * @param drops how many drops were missing
 */
record Said(PourCue.Kind cue, double at, double grams, double flow, boolean sure, int drops) {

  /** Whether "slow" was said to a stream, not at rest. */
  boolean toAStream() {
    return flow > 0;
  }
}
