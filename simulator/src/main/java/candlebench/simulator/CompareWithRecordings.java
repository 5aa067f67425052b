package candlebench.simulator;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Holds the model against recordings of real scales: {@code CompareWithRecordings FOLDER} reads every {@code .csv} there whose first two
 * columns are seconds and grams, measures them and the model in the same way, and prints both side by side. The makers are held against
 * the recordings whose name says {@code pour-over}, as those were poured by hand.
 *
 * <p>Exit codes: 0 done, 2 wrong use or nothing to read.
 */
public final class CompareWithRecordings {
  private static final String BY_HAND = "pour-over";
  private static final int MODEL_POURS = 200;

  private CompareWithRecordings() {}

  public static void main(String[] arguments) {
    System.exit(run(arguments, System.out, System.err));
  }

  static int run(String[] arguments, PrintStream out, PrintStream errors) {
    if (arguments.length != 1) {
      errors.println("give the folder that holds the recordings, and nothing else");
      return 2;
    }
    try {
      List<Recording> recordings = read(Path.of(arguments[0]));
      if (recordings.isEmpty()) {
        errors.println("no .csv file with seconds and grams in " + arguments[0]);
        return 2;
      }
      print(recordings, out);
      return 0;
    } catch (IOException e) {
      errors.println("cannot read the recordings: " + e.getMessage());
      return 2;
    }
  }

  private record Recording(String name, WeightTrace trace) {}

  private static void print(List<Recording> recordings, PrintStream out) {
    List<WeightTrace> model = ModelTraces.handPours(MODEL_POURS);
    row(
        out,
        "trace",
        "samples",
        "interval 5/50/95 %/longest, ms",
        "same, %",
        "rest noise 50/90 %, g");
    for (Recording each : recordings) arrival(out, each.name(), List.of(each.trace()));
    arrival(out, "MODEL, " + MODEL_POURS + " traces", model);
    out.println();
    row(out, "pour", "gain, g", "flow 50/95 %, g/s", "fall, s", "tail, g, and settle, s");
    List<TracedPour> found = new ArrayList<>();
    for (Recording each : recordings)
      for (TracedPour pour : TracedPour.in(each.trace())) {
        row(
            out,
            each.name(),
            number(pour.gainGrams()),
            number(pour.medianFlow()) + " / " + number(pour.highFlow()),
            number(pour.fallSeconds()),
            number(pour.tailGrams()) + " / " + number(pour.settleSeconds()));
        if (each.name().contains(BY_HAND)) found.add(pour);
      }
    out.println();
    row(out, "10/50/90 % of hand pours", "recordings, " + found.size(), "model", "", "");
    List<TracedPour> poured = new ArrayList<>();
    model.forEach(trace -> poured.addAll(TracedPour.in(trace)));
    compare(out, "median flow, g/s", found, poured, pour -> OptionalDouble.of(pour.medianFlow()));
    compare(out, "95 % flow, g/s", found, poured, pour -> OptionalDouble.of(pour.highFlow()));
    compare(out, "fall from 90 to 10 %, s", found, poured, TracedPour::fallSeconds);
    compare(out, "tail, g", found, poured, TracedPour::tailGrams);
    compare(out, "settle, s", found, poured, TracedPour::settleSeconds);
  }

  private static void arrival(PrintStream out, String name, List<WeightTrace> traces) {
    double[] intervals = join(traces, WeightTrace::intervals);
    double[] noise = join(traces, WeightTrace::restNoise);
    int samples = traces.stream().mapToInt(WeightTrace::size).sum();
    double same = traces.stream().mapToDouble(WeightTrace::sameShare).average().orElse(Double.NaN);
    row(
        out,
        name,
        String.valueOf(samples),
        String.format(
            Locale.ROOT,
            "%.0f / %.0f / %.0f / %.0f",
            1000 * Figures.quantile(intervals, 0.05),
            1000 * Figures.quantile(intervals, 0.5),
            1000 * Figures.quantile(intervals, 0.95),
            1000 * Figures.quantile(intervals, 1)),
        String.format(Locale.ROOT, "%.0f", 100 * same),
        String.format(
            Locale.ROOT,
            "%.3f / %.3f",
            Figures.quantile(noise, 0.5),
            Figures.quantile(noise, 0.9)));
  }

  private static double[] join(List<WeightTrace> traces, Function<WeightTrace, double[]> figure) {
    return traces.stream()
        .flatMapToDouble(trace -> java.util.Arrays.stream(figure.apply(trace)))
        .toArray();
  }

  private static void compare(
      PrintStream out,
      String name,
      List<TracedPour> found,
      List<TracedPour> poured,
      Function<TracedPour, OptionalDouble> figure) {
    row(out, name, quantiles(found, figure), quantiles(poured, figure), "", "");
  }

  private static String quantiles(
      List<TracedPour> pours, Function<TracedPour, OptionalDouble> figure) {
    double[] values =
        pours.stream().map(figure).flatMapToDouble(OptionalDouble::stream).toArray();
    return number(Figures.quantile(values, 0.1)) + " / " + number(Figures.quantile(values, 0.5))
        + " / " + number(Figures.quantile(values, 0.9));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? number(value.getAsDouble()) : "-";
  }

  private static void row(PrintStream out, String first, String... others) {
    out.printf("%-34s", first);
    for (String other : others) out.printf(" %-26s", other);
    out.println();
  }

  private static List<Recording> read(Path folder) throws IOException {
    List<Recording> recordings = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file :
          files.filter(each -> each.toString().endsWith(".csv")).sorted().toList())
        recordings.add(
            new Recording(file.getFileName().toString().replace(".csv", ""), trace(file)));
    }
    return recordings;
  }

  /** Reads seconds and grams; a first line of names is skipped, another line that is not two numbers is an error. */
  private static WeightTrace trace(Path file) throws IOException {
    List<String> lines = Files.readAllLines(file);
    List<double[]> samples = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      String[] fields = lines.get(i).split(",");
      try {
        samples.add(new double[] {Double.parseDouble(fields[0]), Double.parseDouble(fields[1])});
      } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
        throw new IOException(
            file + ", line " + (i + 1) + ": seconds and grams were expected, not '" + lines.get(i)
                + "'",
            e);
      }
    }
    return new WeightTrace(
        samples.stream().mapToDouble(sample -> sample[0]).toArray(),
        samples.stream().mapToDouble(sample -> sample[1]).toArray());
  }
}
