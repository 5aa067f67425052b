package candlebench.station.measure;

/** Several {@link LagKalman} filters, each of another lag, weighted by how well each foresaw the readings. */
final class LagBank implements EndEstimator {
  private static final double[] LAGS = {0.1, 0.2, 0.35, 0.55, 0.8};
  private final LagKalman[] filters = new LagKalman[LAGS.length];
  private final double[] belief = new double[LAGS.length];

  LagBank(double noise) {
    for (int i = 0; i < LAGS.length; i++) filters[i] = new LagKalman(LAGS[i], noise);
  }

  @Override
  public void seen(double seconds, double grams) {
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < LAGS.length; i++) {
      filters[i].seen(seconds, grams);
      belief[i] += filters[i].logLikelihood();
      most = Math.max(most, belief[i]);
    }
    for (int i = 0; i < LAGS.length; i++) belief[i] = Math.max(belief[i] - most, -12);
  }

  private double mixed(java.util.function.ToDoubleFunction<LagKalman> of) {
    double sum = 0, weight = 0;
    for (int i = 0; i < LAGS.length; i++) {
      double w = Math.exp(belief[i]);
      weight += w;
      sum += w * of.applyAsDouble(filters[i]);
    }
    return sum / weight;
  }

  double lag() {
    double sum = 0, weight = 0;
    for (int i = 0; i < LAGS.length; i++) {
      double w = Math.exp(belief[i]);
      weight += w;
      sum += w * LAGS[i];
    }
    return sum / weight;
  }

  @Override
  public double grams() {
    return mixed(LagKalman::grams);
  }

  @Override
  public double gramsPerSecond() {
    return mixed(LagKalman::gramsPerSecond);
  }
}
