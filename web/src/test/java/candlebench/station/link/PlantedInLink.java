package candlebench.station.link;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInLink {
  candlebench.station.batch.Recipe recipe;
}
