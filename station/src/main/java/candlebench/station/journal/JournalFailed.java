package candlebench.station.journal;

/** The record could not be written or read. The message says what happened, what is safe, and what to do next. */
public final class JournalFailed extends Exception {
  private static final long serialVersionUID = 1L;

  /** The kinds of trouble, so that a page can say it in the maker's language. */
  public enum Trouble {
    /** The disk has no room. */
    FULL,
    /** Another program has the record open for writing. */
    HELD,
    /** This user may not write or read there. */
    DENIED,
    /** What is there is not as it was written. */
    DAMAGED,
    /** The file is no record of this program. */
    NOT_A_RECORD,
    /** The file is for practice where the record is wanted, or the other way round. */
    OTHER_PURPOSE,
    /** The file was written by a newer program. */
    NEWER,
    /** The disk or the system refused for a reason of its own. */
    DISK
  }

  private final Trouble trouble;

  public JournalFailed(Trouble trouble, String message, Throwable cause) {
    super(message, cause);
    this.trouble = trouble;
  }

  public JournalFailed(Trouble trouble, String message) {
    super(message);
    this.trouble = trouble;
  }

  public Trouble trouble() {
    return trouble;
  }
}
