package candlebench.station.measure;

/**
 * When a scale without noise, with the filter of this one, has shown an over-pour for a second within a division: from then on it could be
 * known. While the pan is disturbed, or
 * nothing comes from the scale, nothing can.
 */
final class SettledEvidence {
  private static final double HALF_STEP = 0.05;
  private static final double STEP = 0.1;
  private static final double SECOND = 1;

  private final double limit;
  private final double filterSeconds;
  private double shown;
  private double from;
  private double since;
  private double known = -1;
  private double before;

  SettledEvidence(double limit, double filterSeconds) {
    this.limit = limit;
    this.filterSeconds = filterSeconds;
  }

  void seen(long nanos, double pressed, boolean disturbed) {
    double at = nanos / 1e9;
    shown += (pressed - shown) * -Math.expm1(-(at - before) / filterSeconds);
    before = at;
    if (Math.abs(shown - from) > STEP || shown <= limit + HALF_STEP || disturbed) {
      from = shown;
      since = at;
    }
    if (known < 0 && at - since >= SECOND) known = at;
  }

  double lateSeconds(long endNanos) {
    return known < 0 ? 0 : Math.max(0, endNanos / 1e9 - known);
  }
}
