package candlebench.station.guidance.pour;

/**
 * Least squares of a straight line and a tail that dies away at one rate, <i>level + flow·t + tail·exp(-t/memory)</i>, with what is known
 * beforehand, and with older readings fading. Immutable. The normal equations of three unknowns are kept and solved outright.
 */
final class TailFit {
  private final double memory;
  private final double s11;
  private final double s12;
  private final double s13;
  private final double s22;
  private final double s23;
  private final double s33;
  private final double h1;
  private final double h2;
  private final double h3;

  private final double level;
  private final double tail;

  /** Grams a second. */
  final double flow;

  private final double v11;
  private final double v12;
  private final double v13;
  private final double v22;
  private final double v23;
  private final double v33;

  private TailFit(
      double memory,
      Prior prior,
      double s11,
      double s12,
      double s13,
      double s22,
      double s23,
      double s33,
      double h1,
      double h2,
      double h3) {
    this.memory = memory;
    this.s11 = s11;
    this.s12 = s12;
    this.s13 = s13;
    this.s22 = s22;
    this.s23 = s23;
    this.s33 = s33;
    this.h1 = h1;
    this.h2 = h2;
    this.h3 = h3;
    double sureLevel = 1 / (prior.levelSpread() * prior.levelSpread());
    double sureFlow = 1 / (prior.flowSpread() * prior.flowSpread());
    double a = s11 + sureLevel;
    double b = s22 + sureFlow;
    double c = s33 + 1 / (prior.tailSpread() * prior.tailSpread());
    double c11 = b * c - s23 * s23;
    double c12 = s13 * s23 - s12 * c;
    double c13 = s12 * s23 - b * s13;
    double scale = 1 / (a * c11 + s12 * c12 + s13 * c13);
    v11 = c11 * scale;
    v12 = c12 * scale;
    v13 = c13 * scale;
    v22 = (a * c - s13 * s13) * scale;
    v23 = (s12 * s13 - a * s23) * scale;
    v33 = (a * b - s12 * s12) * scale;
    double g1 = h1 + prior.level() * sureLevel;
    double g2 = h2 + prior.flow() * sureFlow;
    level = v11 * g1 + v12 * g2 + v13 * h3;
    flow = v12 * g1 + v22 * g2 + v23 * h3;
    tail = v13 * g1 + v23 * g2 + v33 * h3;
  }

  /** What is known before the first reading, and how well, as standard deviations. */
  record Prior(
      double level, double levelSpread, double flow, double flowSpread, double tailSpread) {}

  static TailFit knowing(Prior prior, double memory) {
    return new TailFit(memory, prior, 0, 0, 0, 0, 0, 0, 0, 0, 0);
  }

  /** One more reading, so long after the run's start; what was seen before counts by the share kept. */
  TailFit seen(Prior prior, double seconds, double grams, double noise, double kept) {
    double w = 1 / (noise * noise);
    double e = dying(seconds);
    return new TailFit(
        memory,
        prior,
        s11 * kept + w,
        s12 * kept + w * seconds,
        s13 * kept + w * e,
        s22 * kept + w * seconds * seconds,
        s23 * kept + w * seconds * e,
        s33 * kept + w * e * e,
        h1 * kept + w * grams,
        h2 * kept + w * grams * seconds,
        h3 * kept + w * grams * e);
  }

  /** What the scale should show. */
  double shows(double seconds) {
    return level + flow * seconds + tail * dying(seconds);
  }

  /** The variance of {@link #shows}. */
  double showsVariance(double seconds) {
    double e = dying(seconds);
    return v11
        + v22 * seconds * seconds
        + v33 * e * e
        + 2 * (v12 * seconds + v13 * e + v23 * seconds * e);
  }

  /** The straight part alone, as the scale would show it once the tail has died. */
  double straight(double seconds) {
    return level + flow * seconds;
  }

  /** The variance of {@link #straight}. */
  double straightVariance(double seconds) {
    return Math.max(0, v11 + 2 * v12 * seconds + v22 * seconds * seconds);
  }

  private double dying(double seconds) {
    return Math.exp(-seconds / memory);
  }
}
