package candlebench.station.measure;

/**
 * How one pour ended.
 *
 * @param error grams truly poured beyond the target, below zero when short
 * @param seconds from the first cue or stream until the weight was taken, or until the maker was content with the number
 * @param saidOver whether an over-pour was announced
 * @param off grams by which the weight taken differs from what a scale without noise would show of what was poured
 * @param late seconds from the settled evidence of an over-pour until it was announced or asked about, or to the end where there was none; zero where
 *     there was no evidence
 * @param asked how often the maker was asked about what stands there
 * @param walk grams by which the scale had walked under a hot pot: what it shows is so much less than the truth
 */
record PourResult(
    double error,
    double seconds,
    boolean saidOver,
    double off,
    double late,
    int asked,
    double walk) {

  /** By how much too much a scale without noise shows. */
  double shownError() {
    return error - walk;
  }
}
