package candlebench.station.measure;

import candlebench.station.guidance.pour.TailLine;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.stream.LongStream;

/**
 * Sets estimators of where a pour will end side by side: each sees the readings up to some time before the stop, foretells the settled
 * weight with the delay learnt from all other pours, and is judged by what came.
 *
 * <p>After {@code mvn -q test-compile}, on 500 simulated pours and on the recordings of real scales in a folder:
 * {@code java -cp shared/target/classes:protocol/target/classes:simulator/target/classes:station/target/classes:station/target/test-classes
 * candlebench.station.measure.MeasureEstimators FOLDER}.
 */
public final class MeasureEstimators {
  private static final double[] BEFORE = {1, 0.5, 0};
  private static final double NOISE = 0.05;
  private static final double LEAST_FLOW = 0.2;
  private static final int SIMULATED = 500;

  private record Candidate(String name, Supplier<EndEstimator> make) {}

  private static final List<Candidate> CANDIDATES = List.of(
      new Candidate("median line, 0.5 s", () -> new MedianLine(0.5)),
      new Candidate("median line, 0.8 s", () -> new MedianLine(0.8)),
      new Candidate("median line, 1.2 s", () -> new MedianLine(1.2)),
      new Candidate("straight run", () -> new StraightRun(NOISE)),
      new Candidate("Kalman, lag 0.3 s", () -> new LagKalman(0.3, NOISE)),
      new Candidate("Kalman, five lags", () -> new LagBank(NOISE)),
      new Candidate("line and dying tail", MeasureEstimators::tailLine));

  private MeasureEstimators() {}

  public static void main(String[] args) throws IOException {
    if (args.length > 0) print("recorded", CutPour.recorded(Path.of(args[0])));
    print(
        "simulated", LongStream.range(0, SIMULATED).mapToObj(CutPour::simulated).toList());
  }

  private static void print(String what, List<CutPour> pours) {
    System.out.printf(
        "%d %s pours: error of the foretold end in g, median (90 %%), so long before the stop%n",
        pours.size(), what);
    System.out.printf("%-22s %17s %17s %17s%n", "", "1 s", "0.5 s", "at the stop");
    for (Candidate candidate : CANDIDATES) {
      StringBuilder row = new StringBuilder(String.format("%-22s", candidate.name()));
      for (double before : BEFORE) row.append(score(pours, candidate, before));
      System.out.println(row);
    }
  }

  private static String score(List<CutPour> pours, Candidate candidate, double before) {
    int n = pours.size();
    double[] end = new double[n];
    double[] flow = new double[n];
    double[] delay = new double[n];
    for (int i = 0; i < n; i++) {
      CutPour pour = pours.get(i);
      EndEstimator estimator = candidate.make().get();
      for (int k = 0; k < pour.at().length && pour.at()[k] <= pour.cut() - before; k++)
        estimator.seen(pour.at()[k], pour.grams()[k]);
      end[i] = estimator.endAfter(before);
      flow[i] = estimator.gramsPerSecond();
      delay[i] = (pour.settled() - end[i]) / Math.max(LEAST_FLOW, flow[i]);
    }
    double[] error = new double[n];
    for (int i = 0; i < n; i++)
      error[i] =
          Math.abs(end[i] + flow[i] * medianWithout(delay, i) - pours.get(i).settled());
    Arrays.sort(error);
    return String.format(Locale.ROOT, "     %5.2f (%5.2f)", error[n / 2], error[(int) (0.9 * n)]);
  }

  private static double medianWithout(double[] values, int left) {
    double[] others = new double[values.length - 1];
    System.arraycopy(values, 0, others, 0, left);
    System.arraycopy(values, left + 1, others, left, values.length - left - 1);
    Arrays.sort(others);
    return others[others.length / 2];
  }

  private static EndEstimator tailLine() {
    TailLine line = new TailLine(NOISE);
    return new EndEstimator() {
      @Override
      public void seen(double seconds, double grams) {
        line.seen(seconds, grams);
      }

      @Override
      public double grams() {
        return line.grams();
      }

      @Override
      public double gramsPerSecond() {
        return line.gramsPerSecond();
      }
    };
  }
}
