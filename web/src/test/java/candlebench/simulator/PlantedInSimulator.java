package candlebench.simulator;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInSimulator {
  candlebench.station.Bench bench;
}
