package candlebench.station.guidance.pour;

/** What is being poured; each kind has its own streams and its own learnt habits. */
public enum PourKind {
  /** Short is a drop more, over is a spoilt pot. */
  OIL(true),
  /** Liquid wax or mix into a pot. */
  WAX(false),
  /** Mix into a vessel. */
  VESSEL(false),
  /** Out of a bottle on the scale, by its tap or pump. */
  TAP(true);

  private final boolean byDrops;

  PourKind(boolean byDrops) {
    this.byDrops = byDrops;
  }

  /** Whether the last of it can be given drop by drop. */
  boolean byDrops() {
    return byDrops;
  }
}
