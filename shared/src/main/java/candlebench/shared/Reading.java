package candlebench.shared;

/**
 * One weight off the wire, with all the scale said about it.
 *
 * @param indication the number as shown, the fact kept in the record
 * @param mass the same as an exact mass
 * @param basis what the scale said the number is
 * @param stability what the scale said about rest
 * @param unitAssumed whether the frame left its unit out and the last one named on the line was borrowed: never to be accepted
 * @param stamp when its frame was complete
 */
public record Reading(
    Indication indication,
    Mass mass,
    Basis basis,
    Stability stability,
    boolean unitAssumed,
    Stamp stamp) {}
