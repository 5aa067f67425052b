package candlebench.station.link;

/**
 * Judges an open line by when bytes came and when a frame among them was understood. Pure: time comes with every call, in nanoseconds
 * of the clock that does not jump.
 */
final class LineWatch {

  /** How long a line may be silent or senseless before it is called so: the slowest usual scale sends once a second. */
  static final long PATIENCE_NANOS = 1_200_000_000L;

  /** What a frame understood is worth against one that was not: a printed ticket has a handful of other lines to its weight. */
  private static final int WORTH = 8;

  /** Far more senseless frames than that in one go are rubbish, and what is understood among them is chance. */
  private static final int RUBBISH = 100;

  private static final int MOST_RUBBISH = 2 * RUBBISH;

  private final long opened;
  private long lastByte;
  private long lastUnderstood;
  private long senselessSince;
  private boolean anyByte;
  private boolean anyUnderstood;
  private boolean senseless;
  private int rubbish;
  private long lastRefused;

  LineWatch(long nanos) {
    this.opened = nanos;
  }

  /** Bytes arrived, a frame among them or not. */
  void bytes(long nanos) {
    if (!senseless || nanos - lastByte > PATIENCE_NANOS) senselessSince = nanos;
    senseless = true;
    anyByte = true;
    lastByte = nanos;
  }

  /** A frame arrived that made no sense. */
  void refused(long nanos) {
    settle(nanos);
    rubbish = Math.min(rubbish + 1, MOST_RUBBISH);
    lastRefused = nanos;
  }

  /** A frame was understood; whether that is more than chance. */
  boolean understood(long nanos) {
    settle(nanos);
    rubbish = Math.max(0, rubbish - WORTH);
    if (rubbish > RUBBISH) return false;
    senseless = false;
    anyUnderstood = true;
    lastUnderstood = nanos;
    return true;
  }

  /** Rubbish that has ended is forgotten. */
  private void settle(long nanos) {
    if (nanos - lastRefused > PATIENCE_NANOS) rubbish = 0;
  }

  LinkState at(long nanos) {
    if (anyUnderstood && nanos - lastUnderstood <= PATIENCE_NANOS) return LinkState.LIVE;
    boolean hearing = anyByte && nanos - lastByte <= PATIENCE_NANOS;
    if (hearing && senseless && nanos - senselessSince > PATIENCE_NANOS) return LinkState.GARBLED;
    if (!anyUnderstood && nanos - opened <= PATIENCE_NANOS) return LinkState.CONNECTING;
    // Bytes that began to come a moment ago may yet make sense.
    return LinkState.SILENT;
  }
}
