package candlebench.station.guidance.pour;

import java.util.Arrays;

/**
 * A line through the last readings that one wild reading does not bend: the median of the slopes between all pairs (Theil 1950, Sen
 * 1968), and the median height.
 *
 * @param gramsPerSecond the flow, negative for a loss
 * @param grams the line's height at the newest reading
 */
record FlowLine(double gramsPerSecond, double grams) {
  static final FlowLine NONE = new FlowLine(0, 0);

  /** More readings than this are thinned evenly, so that the work stays small at any rate. */
  private static final int MOST_POINTS = 16;

  static FlowLine through(long[] nanos, double[] grams, int count) {
    if (count == 0) return NONE;
    if (count == 1) return new FlowLine(0, grams[0]);
    int step = (count + MOST_POINTS - 1) / MOST_POINTS;
    long newest = nanos[count - 1];
    int used = (count - 1) / step + 1;
    double[] at = new double[used];
    double[] value = new double[used];
    for (int i = 0; i < used; i++) {
      int from = count - 1 - i * step;
      at[i] = (nanos[from] - newest) / 1e9;
      value[i] = grams[from];
    }
    double slope = medianSlope(at, value);
    double[] heights = new double[used];
    for (int i = 0; i < used; i++) heights[i] = value[i] - slope * at[i];
    return new FlowLine(slope, median(heights, used));
  }

  private static double medianSlope(double[] at, double[] value) {
    double[] slopes = new double[at.length * (at.length - 1) / 2];
    int n = 0;
    for (int i = 0; i < at.length; i++)
      for (int j = i + 1; j < at.length; j++)
        if (at[i] != at[j]) slopes[n++] = (value[i] - value[j]) / (at[i] - at[j]);
    return n == 0 ? 0 : median(slopes, n);
  }

  private static double median(double[] values, int count) {
    Arrays.sort(values, 0, count);
    int middle = count / 2;
    return count % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
  }
}
