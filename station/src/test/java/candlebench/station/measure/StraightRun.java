package candlebench.station.measure;

/** A least-squares line through the longest recent run of readings that are straight within the noise; a bend begins a new run. */
final class StraightRun implements EndEstimator {
  private static final double LONGEST = 2.5;
  private final double noise;
  private final double[] at = new double[128];
  private final double[] value = new double[128];
  private int count;
  private double slope;
  private double height;

  StraightRun(double noise) {
    this.noise = noise;
  }

  @Override
  public void seen(double seconds, double grams) {
    int from = 0;
    while (count - from > 0 && seconds - at[from] > LONGEST || count - from >= at.length) from++;
    System.arraycopy(at, from, at, 0, count - from);
    System.arraycopy(value, from, value, 0, count - from);
    count -= from;
    at[count] = seconds;
    value[count++] = grams;
    double st = 0, sv = 0, stt = 0, stv = 0, svv = 0;
    int n = 0;
    double bestSlope = 0, bestHeight = grams;
    for (int i = count - 1; i >= 0; i--) {
      double t = at[i] - seconds;
      double v = value[i] - grams;
      st += t;
      sv += v;
      stt += t * t;
      stv += t * v;
      svv += v * v;
      n++;
      if (n < 3) continue;
      double det = n * stt - st * st;
      if (det <= 0) continue;
      double b = (n * stv - st * sv) / det;
      double a = (sv - b * st) / n;
      double rss = svv - a * sv - b * stv;
      double last = v - a - b * t;
      double limit = noise * noise + 0.05 * b * 0.05 * b;
      if (n > 4 && (rss / (n - 2) > 2.2 * limit || last * last > 9 * limit)) break;
      bestSlope = b;
      bestHeight = grams + a;
    }
    slope = bestSlope;
    height = bestHeight;
  }

  @Override
  public double grams() {
    return height;
  }

  @Override
  public double gramsPerSecond() {
    return slope;
  }
}
