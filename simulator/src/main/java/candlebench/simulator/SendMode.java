package candlebench.simulator;

/** When a scale sends. Factory settings are often {@code ONCE_STABLE}, which is no use for a live pour. */
public enum SendMode {
  /** At its own pace, at rest or not. */
  CONTINUOUS,
  /** At its own pace, but only while at rest. */
  WHILE_STABLE,
  /** Once for each load, when it has come to rest. */
  ONCE_STABLE,
  /** When asked over the line. */
  ON_REQUEST,
  /** When someone presses its PRINT key. */
  ON_PRINT_KEY
}
