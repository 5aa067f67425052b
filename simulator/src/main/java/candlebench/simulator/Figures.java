package candlebench.simulator;

import java.util.Arrays;
import java.util.List;

/** Plain statistics of a list of numbers. */
final class Figures {

  private Figures() {}

  /** The value below which this share of the others lies; not a number where there are none. */
  static double quantile(double[] values, double share) {
    if (values.length == 0) return Double.NaN;
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[(int) (share * (sorted.length - 1))];
  }

  static double quantile(List<Double> values, double share) {
    return quantile(values.stream().mapToDouble(Double::doubleValue).toArray(), share);
  }

  static double median(double[] values) {
    return quantile(values, 0.5);
  }

  static double mean(double[] values) {
    return Arrays.stream(values).average().orElse(Double.NaN);
  }

  static double deviation(double[] values) {
    double mean = mean(values);
    return Math.sqrt(Arrays.stream(values)
        .map(value -> (value - mean) * (value - mean))
        .average()
        .orElse(Double.NaN));
  }

  /** The correlation of each value with the next. */
  static double neighbourCorrelation(double[] values) {
    double mean = mean(values);
    double together = 0;
    double alone = 0;
    for (int i = 0; i < values.length; i++) {
      alone += (values[i] - mean) * (values[i] - mean);
      if (i > 0) together += (values[i] - mean) * (values[i - 1] - mean);
    }
    return together / alone;
  }

  static double span(double[] values) {
    return Arrays.stream(values).max().orElse(Double.NaN)
        - Arrays.stream(values).min().orElse(Double.NaN);
  }
}
