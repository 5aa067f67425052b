package candlebench.station.measure;

/**
 * A Kalman filter for a mass that grows by a wandering flow, seen through a first-order lag: states are the mass, the flow, and what
 * the scale shows.
 */
final class LagKalman implements EndEstimator {
  private final double lag;
  private final double noise;
  private final double wander;
  private double time = Double.NaN;
  private double x, f, y;
  private double xx, xf, xy, ff, fy, yy;
  private double logLikelihood;
  private int outliers;

  LagKalman(double lag, double noise) {
    this(lag, noise, 1.5);
  }

  LagKalman(double lag, double noise, double wander) {
    this.lag = lag;
    this.noise = noise;
    this.wander = wander;
  }

  @Override
  public void seen(double seconds, double grams) {
    logLikelihood = 0;
    if (Double.isNaN(time)) {
      time = seconds;
      x = y = grams;
      xx = yy = noise * noise;
      ff = 25;
      return;
    }
    double dt = seconds - time;
    time = seconds;
    if (dt > 0) predict(dt);
    double miss = grams - y;
    double jitter = 0.05 * f;
    double r = noise * noise + jitter * jitter;
    double s = yy + r;
    double z2 = miss * miss / s;
    logLikelihood = -0.5 * (Math.min(z2, 16) + Math.log(s));
    if (z2 > 9) {
      outliers++;
      if (outliers == 1) s *= z2 / 9;
      else {
        kick(miss * miss / 0.25, 0.2);
        s = yy + r;
      }
    } else outliers = 0;
    double kx = xy / s, kf = fy / s, ky = yy / s;
    x += kx * miss;
    f += kf * miss;
    y += ky * miss;
    xx -= kx * xy;
    xf -= kx * fy;
    double nxy = xy - kx * yy;
    ff -= kf * fy;
    double nfy = fy - kf * yy;
    yy -= ky * yy;
    xy = nxy;
    fy = nfy;
  }

  private void kick(double variance, double dt) {
    double h = dt;
    double g = h - lag * (1 - Math.exp(-h / lag));
    xx += variance * h * h;
    xf += variance * h;
    xy += variance * h * g;
    ff += variance;
    fy += variance * g;
    yy += variance * g * g;
  }

  private void predict(double dt) {
    double e = Math.exp(-dt / lag);
    double a = 1 - e, b = dt - lag * a;
    y = e * y + a * x + b * f;
    x += f * dt;
    // P' = F P F^T, F = [1 dt 0; 0 1 0; a b e]
    double pxx = xx + 2 * dt * xf + dt * dt * ff;
    double pxf = xf + dt * ff;
    double pxy = a * xx + b * xf + e * xy + dt * (a * xf + b * ff + e * fy);
    double pfy = a * xf + b * ff + e * fy;
    double pyy = a * a * xx + b * b * ff + e * e * yy + 2 * (a * b * xf + a * e * xy + b * e * fy);
    xx = pxx;
    xf = pxf;
    xy = pxy;
    fy = pfy;
    yy = pyy;
    kick(wander * dt, dt / 2);
  }

  double logLikelihood() {
    return logLikelihood;
  }

  @Override
  public double grams() {
    return x;
  }

  @Override
  public double gramsPerSecond() {
    return f;
  }
}
