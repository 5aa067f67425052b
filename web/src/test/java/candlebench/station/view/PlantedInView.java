package candlebench.station.view;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInView {
  candlebench.station.link.LinkState link;
}
