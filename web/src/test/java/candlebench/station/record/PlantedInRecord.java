package candlebench.station.record;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInRecord {
  candlebench.station.journal.Journal journal;
}
