package candlebench.station.guidance.pour;

/**
 * What is being poured; each kind has its own flows and its own learnt delay.
 *
 * <p>Usual flows: oil from an open bottle 2 to 10 g/s, wax from a pitcher 10 to 30 g/s and 2 to 5 g/s to finish (common practice, no
 * source).
 */
public enum PourKind {
  /** Short is a drop more, over is a spoilt pot: foresee the late stop, not the usual one. */
  OIL(0.85, true),
  /** Liquid wax or mix into a pot. */
  WAX(0.6, false),
  /** Mix into a vessel. */
  VESSEL(0.6, false);

  private final double quantile;
  private final boolean byDrops;

  PourKind(double quantile, boolean byDrops) {
    this.quantile = quantile;
    this.byDrops = byDrops;
  }

  /** Which of the learnt delays to count on: the share of stops that were quicker. */
  double quantile() {
    return quantile;
  }

  /** Whether the last of it can be given drop by drop. */
  boolean byDrops() {
    return byDrops;
  }
}
