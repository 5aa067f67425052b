package candlebench.web;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInWeb {
  candlebench.simulator.VirtualScale scale;
}
