package candlebench.station.guidance.pour;

/**
 * How much to keep back, in grams: for the moment of "slow", for the moment of "stop", and how near is near enough.
 *
 * @param under how far below the target is still within, {@code over} how far above
 * @param step the scale's division
 */
record Margins(
    PourKind kind, double target, double under, double over, double step, Habits habits) {
  /**
   * So many standard deviations of what a late wrist pours are kept back at "slow". Far more than a bell curve asks for: some turns of
   * a wrist take three times as long as its usual ones, and a free stream cannot be taken back by drops.
   */
  private static final double SLOW_SURE = 6.5;

  /** So sure, at "stop", that it does no harm. */
  private static final double STOP_SURE = 2;

  /** So sure, at "stop", that it does not end over: slow turns again. */
  private static final double OVER_SURE = 4;

  /** A stream that is weak just now may be stronger in a moment: at least so much of the usual one is reckoned with. */
  private static final double USUAL_SHARE = 0.6;

  /** One short stream in a hundred brings four times what was planned, for it closes slowly. */
  private static final double DROPS_FOLLOW = 0.1;

  /** Where what is allowed is wide and nothing finer follows, more is dared. */
  private static final double NO_DROPS = 0.3;

  /** What may be missing of a vessel's allowance before it is topped up. */
  private static final double NEAR = 0.45;

  /** So long the thin stream should run to be seen. */
  private static final double THIN_SECONDS = 1.2;

  /** A free stream is worth while that runs so long. */
  private static final double FREE_SECONDS = 1;

  /** No bench scale tells less than this, however many digits it shows, in grams. */
  private static final double LEAST_GRAIN = 0.03;

  private static final double LEAST_NOISE = 0.01;

  Margins knowing(Habits wiser) {
    return new Margins(kind, target, under, over, step, wiser);
  }

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
        + SLOW_SURE
            * Math.max(flow, USUAL_SHARE * habits.free().usual())
            * habits.slow().uncertainty();
  }

  boolean isWorthPouringFreely(double grams) {
    double flow = habits.free().usual();
    return target - grams - reserve(flow) > flow * (FREE_SECONDS + habits.slow().usual());
  }

  /** So far over the target does no harm: where drops can follow, a fifth of what is allowed or a division; else all of it. */
  private double harmless() {
    return kind.byDrops() ? Math.max(over / 5, Math.min(step, over / 2)) : over;
  }

  /** Where a thin stream should usually end, so that even a late stop does no harm. */
  double aim(double flow) {
    double spread = Math.hypot(grain() / 2, flow * habits.stop().uncertainty());
    double harmless = harmless() - STOP_SURE * spread;
    double surelyNotOver = over - OVER_SURE * spread;
    return target + Math.min(0, Math.min(harmless, surelyNotOver));
  }

  /** How much of a short stream is dared, by the clock alone. */
  double shareOfShort() {
    return kind.byDrops() ? DROPS_FOLLOW : NO_DROPS;
  }

  /** Whether so much still missing is near enough. */
  boolean isNear(double toGo) {
    return toGo <= (kind.byDrops() ? Math.max(step / 4, habits.drop().usual() / 2) : NEAR * under);
  }

  /** How sure a line at rest must be. */
  boolean isSureAtRest(double doubt) {
    return doubt < grain() / 2;
  }

  boolean isSure(double doubt, double flow) {
    return doubt < 0.6 * grain() + 0.1 * flow;
  }
}
