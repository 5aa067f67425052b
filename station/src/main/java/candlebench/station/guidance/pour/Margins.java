package candlebench.station.guidance.pour;

/**
 * How much to keep back, in grams: for the moment of "slow", for the moment of "stop", and how near is near enough.
 *
 * @param under how far below the target is still within, {@code over} how far above
 * @param step the scale's division
 */
record Margins(
    PourKind kind, double target, double under, double over, double step, Habits habits) {
  /** So many standard deviations of what a late wrist pours are kept back. A wrist is late more often than early. */
  private static final double SLOW_SURE = 5;

  private static final double STOP_SURE = 3;

  /** So long the thin stream should run to be seen. */
  private static final double THIN_SECONDS = 1.2;

  /** A free stream is worth while that runs so long. */
  private static final double FREE_SECONDS = 1;

  /** No bench scale tells less than this, however many digits it shows, in grams. */
  private static final double LEAST_GRAIN = 0.03;

  private static final double LEAST_NOISE = 0.01;

  /** What can be told apart at rest. */
  double grain() {
    return Math.max(step, LEAST_GRAIN);
  }

  /** Of one reading: what rounding leaves, and what the cell adds. */
  double noise() {
    return Math.hypot(LEAST_NOISE, 0.35 * step);
  }

  /** Kept back for the thin stream when "slow" is said to a free one. */
  double reserve(double flow) {
    return habits.thin().usual() * (THIN_SECONDS + habits.stop().usual())
        + SLOW_SURE * flow * habits.slow().uncertainty();
  }

  boolean isWorthPouringFreely(double grams) {
    double flow = habits.free().usual();
    return target - grams - reserve(flow) > flow * (FREE_SECONDS + habits.slow().usual());
  }

  /** So far over the target does no harm: a division, or a fifth of what is allowed. */
  private double harmless() {
    return Math.max(step, over / 5);
  }

  /** Where a thin stream should usually end, so that even a late stop does no harm. */
  double aim(double flow) {
    double spread = Math.hypot(grain() / 2, flow * habits.stop().uncertainty());
    return Math.min(target, target + harmless() - STOP_SURE * spread);
  }

  /** Whether so much still missing is near enough. */
  boolean isNear(double toGo) {
    return toGo <= (kind.byDrops() ? Math.max(step / 4, habits.drop().usual() / 2) : 0.6 * under);
  }

  /** How sure a line at rest must be. */
  boolean isSureAtRest(double doubt) {
    return doubt < grain() / 2;
  }

  boolean isSure(double doubt, double flow) {
    return doubt < 0.6 * grain() + 0.1 * flow;
  }
}
