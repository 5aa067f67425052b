package candlebench.station.journal;

/**
 * What an entry says, before it has its place in the journal.
 *
 * @param kind the event's kind, such as {@code part-accepted}
 * @param body the event as one line of JSON
 */
public record EntryText(String kind, String body) {}
