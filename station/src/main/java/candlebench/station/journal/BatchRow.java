package candlebench.station.journal;

/**
 * A batch in a list of batches.
 *
 * @param first the entry with which it began, {@code last} the last one before the next batch
 * @param started ISO 8601 with offset; {@code ended} too, or empty while it runs
 * @param ending how it stands: {@code running}, {@code done}, {@code scrapped} or {@code abandoned}
 * @param vessels how many were planned, {@code filled} how many were filled
 * @param deviations how many things its sheet has to say
 */
public record BatchRow(
    long first,
    long last,
    String code,
    String recipe,
    String person,
    String started,
    String ended,
    String ending,
    int vessels,
    int filled,
    int deviations) {}
