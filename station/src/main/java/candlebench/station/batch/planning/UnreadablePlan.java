package candlebench.station.batch.planning;

/** A plan file that cannot be read. The message names the field and the fix, in one line. */
public final class UnreadablePlan extends Exception {
  private static final long serialVersionUID = 1L;

  UnreadablePlan(String words) {
    super(words);
  }
}
