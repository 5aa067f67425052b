package candlebench.simulator;

/** The keys of a scale, pressed by a hand. */
public enum ScaleKey {
  ON_OFF,
  TARE,
  ZERO,
  UNIT,
  PRINT
}
