package candlebench.station.measure;

/**
 * How one pour ended.
 *
 * @param error grams truly poured beyond the target, below zero when short
 * @param seconds from the first cue or stream until the weight was taken, or until the maker was content with the number
 * @param saidOver whether an over-pour was announced
 * @param off grams by which the weight taken differs from what a scale without noise would show of what was poured
 * @param late seconds from the settled evidence of an over-pour to its announcement, or to the end where there was none; zero where
 *     there was no evidence
 */
record PourResult(double error, double seconds, boolean saidOver, double off, double late) {}
