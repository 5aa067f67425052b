package candlebench.station.journal;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInJournal {
  candlebench.station.link.LinkState link;
}
