package candlebench.protocol;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInProtocol {
  candlebench.station.Bench bench;

  long clock() {
    return System.nanoTime();
  }
}
