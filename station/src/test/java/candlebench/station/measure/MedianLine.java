package candlebench.station.measure;

import java.util.Arrays;

/** The median of the slopes between all pairs of readings in a window of fixed length (Theil 1950, Sen 1968). */
final class MedianLine implements EndEstimator {
  private final double window;
  private final double[] at = new double[64];
  private final double[] value = new double[64];
  private int count;
  private double slope;
  private double height;

  MedianLine(double window) {
    this.window = window;
  }

  @Override
  public void seen(double seconds, double grams) {
    int from = 0;
    while (count - from > 2 && seconds - at[from] > window || count - from >= at.length) from++;
    System.arraycopy(at, from, at, 0, count - from);
    System.arraycopy(value, from, value, 0, count - from);
    count -= from;
    at[count] = seconds;
    value[count++] = grams;
    fit(seconds);
  }

  private void fit(double now) {
    double[] slopes = new double[count * (count - 1) / 2];
    int n = 0;
    for (int i = 0; i < count; i++)
      for (int j = 0; j < i; j++)
        if (at[i] > at[j]) slopes[n++] = (value[i] - value[j]) / (at[i] - at[j]);
    slope = n == 0 ? 0 : median(Arrays.copyOf(slopes, n));
    double[] heights = new double[count];
    for (int i = 0; i < count; i++) heights[i] = value[i] + slope * (now - at[i]);
    height = median(heights);
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    return (values[(values.length - 1) / 2] + values[values.length / 2]) / 2;
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
