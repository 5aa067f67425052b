package candlebench.station.batch;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInBatch {
  candlebench.station.link.LinkState link;
}
