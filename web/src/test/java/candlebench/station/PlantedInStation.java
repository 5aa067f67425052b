package candlebench.station;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInStation {
  candlebench.simulator.VirtualScale scale;
  com.fasterxml.jackson.core.JsonFactory json;
}
