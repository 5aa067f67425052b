package candlebench.station.link;

/**
 * Judges an open line by when bytes came and when a frame among them was understood. Pure: time comes with every call, in nanoseconds
 * of the clock that does not jump.
 */
final class LineWatch {

  /** How long a line may be silent or senseless before it is called so: the slowest usual scale sends once a second. */
  static final long PATIENCE_NANOS = 1_200_000_000L;

  private final long opened;
  private long lastByte;
  private long lastUnderstood;
  private long senselessSince;
  private boolean anyByte;
  private boolean anyUnderstood;
  private boolean senseless;

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

  /** A frame was understood. */
  void understood(long nanos) {
    senseless = false;
    anyUnderstood = true;
    lastUnderstood = nanos;
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
