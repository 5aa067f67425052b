package candlebench.station.journal;

/** The record could not be written or read. The message says what happened, what is safe, and what to do next. */
public final class JournalFailed extends Exception {
  private static final long serialVersionUID = 1L;

  public JournalFailed(String message, Throwable cause) {
    super(message, cause);
  }

  public JournalFailed(String message) {
    super(message);
  }
}
