package candlebench.simulator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Weight against the time of its arrival, from a recording or from the model, and the figures by which the two are compared.
 *
 * @param seconds in order, not even
 * @param grams as shown
 */
record WeightTrace(double[] seconds, double[] grams) {
  private static final double WINDOW_SECONDS = 2;
  private static final double STEEPEST_REST = 0.08;
  private static final double WIDEST_REST = 1;
  private static final int FEWEST = 9;

  int size() {
    return seconds.length;
  }

  /** Seconds between arrivals. */
  double[] intervals() {
    double[] intervals = new double[Math.max(0, size() - 1)];
    for (int i = 0; i < intervals.length; i++) intervals[i] = seconds[i + 1] - seconds[i];
    return intervals;
  }

  /** The share of samples equal to the one before. */
  double sameShare() {
    int same = 0;
    for (int i = 1; i < size(); i++) if (grams[i] == grams[i - 1]) same++;
    return same / (double) (size() - 1);
  }

  /**
   * The standard deviation about a straight line of each window of 2 s at rest: no slope over 0.08 g/s, no span over 1 g, not all zeros.
   */
  double[] restNoise() {
    List<Double> noise = new ArrayList<>();
    for (int from = 0, to; from < size(); from = to) {
      to = from;
      while (to < size() && seconds[to] < seconds[from] + WINDOW_SECONDS) to++;
      if (to < size() && to - from >= FEWEST) addRest(noise, from, to);
    }
    return noise.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private void addRest(List<Double> noise, int from, int to) {
    double[] x = Arrays.copyOfRange(seconds, from, to);
    double[] y = Arrays.copyOfRange(grams, from, to);
    if (Arrays.stream(y).allMatch(value -> value == 0) || Figures.span(y) >= WIDEST_REST) return;
    double meanX = Figures.mean(x);
    double meanY = Figures.mean(y);
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < x.length; i++) {
      xx += (x[i] - meanX) * (x[i] - meanX);
      xy += (x[i] - meanX) * (y[i] - meanY);
    }
    double slope = xx == 0 ? 0 : xy / xx;
    if (Math.abs(slope) >= STEEPEST_REST) return;
    double squares = 0;
    for (int i = 0; i < x.length; i++) {
      double off = y[i] - meanY - slope * (x[i] - meanX);
      squares += off * off;
    }
    noise.add(Math.sqrt(squares / (x.length - 2)));
  }

  /** The same weights at even steps, straight lines between the samples. */
  double[] evenly(double step) {
    int count = (int) ((seconds[size() - 1] - seconds[0]) / step) + 1;
    double[] even = new double[count];
    int at = 0;
    for (int i = 0; i < count; i++) {
      double moment = seconds[0] + i * step;
      while (at < size() - 2 && seconds[at + 1] <= moment) at++;
      double length = seconds[at + 1] - seconds[at];
      double share = length <= 0 ? 0 : Math.max(0, Math.min(1, (moment - seconds[at]) / length));
      even[i] = grams[at] + (grams[at + 1] - grams[at]) * share;
    }
    return even;
  }
}
