package candlebench.station.record;

import candlebench.station.guidance.GuidanceEvent;

/**
 * An event in its place in the journal.
 *
 * @param entry the number of its entry
 * @param wall when it was written, ISO 8601 with offset
 */
public record Recorded(long entry, String wall, GuidanceEvent event) {}
