package candlebench.station.guidance;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInGuidance {
  candlebench.station.link.LinkState link;
}
