package candlebench.station.measure;

/** Estimates, from the readings of a running pour, what is on the pan and how fast it grows. */
interface EndEstimator {
  void seen(double seconds, double grams);

  /** Grams on the pan at the newest reading, as far as this estimator can tell through the scale's lag. */
  double grams();

  double gramsPerSecond();

  /** Where the pour will end if the stream goes on as it is for so long. */
  default double endAfter(double seconds) {
    return grams() + gramsPerSecond() * seconds;
  }
}
