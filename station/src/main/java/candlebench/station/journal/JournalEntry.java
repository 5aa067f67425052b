package candlebench.station.journal;

/**
 * One line of the record, in its place in the chain.
 *
 * @param sequence its number, from 1, without gaps
 * @param wall when it was written, ISO 8601 with offset
 * @param kind the event's kind
 * @param body the event as one line of JSON
 * @param previous the hash of the entry before, of all zeros for the first
 * @param hash SHA-256 over the fields before, as lower-case hex
 */
public record JournalEntry(
    long sequence, String wall, String kind, String body, String previous, String hash) {}
