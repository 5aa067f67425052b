package candlebench.protocol;

/**
 * Why a frame was not understood.
 *
 * @param reason the kind of fault
 * @param offset the place in the frame, counted from zero, where reading stopped
 * @param words what was expected there and what to do next, for a person
 */
public record Refusal(Reason reason, int offset, String words) {

  /** The kinds of fault a frame can have. */
  public enum Reason {
    NOT_THIS_FORMAT,
    WRONG_LENGTH,
    NOT_A_NUMBER,
    UNKNOWN_HEADER,
    UNKNOWN_UNIT,
    WRONG_CHECKSUM,
    CUT_SHORT,
    TOO_LONG
  }
}
