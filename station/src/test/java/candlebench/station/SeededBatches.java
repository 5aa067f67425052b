package candlebench.station;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongFunction;
import java.util.stream.LongStream;

/**
 * Runs many drawn batches, checks the promises of the bench in each, and says how they went. A seed that broke one runs the same again.
 *
 * <p>Run it from the command line: {@code mvn -q -pl station -am -Ptables test-compile exec:java
 * -Dexec.mainClass=candlebench.station.SeededBatches -Dexec.args="10000"}. Arguments: how many batches (500), the first seed (0).
 */
public final class SeededBatches {
  private SeededBatches() {}

  /** What became of many runs: those that ended, and what broke, each with its seed. */
  record Outcome(List<SeededBatch.Run> runs, List<String> broken) {}

  static Outcome of(long first, long count) {
    return of(first, count, SeededBatch::new);
  }

  static Outcome of(long first, long count, LongFunction<SeededBatch> drawn) {
    List<SeededBatch.Run> runs = new ArrayList<>();
    List<String> broken = new ArrayList<>();
    LongStream.range(first, first + count).parallel().forEach(seed -> {
      try {
        SeededBatch batch = drawn.apply(seed);
        SeededBatch.Run run = batch.run();
        String wrong = !run.done()
            ? "never came to its end: " + batch.bench.prompt()
            : seed % 10 == 0 && !batch.bench.replayed().equals(batch.bench.events)
                ? "its inputs give other events when replayed"
                : "";
        synchronized (runs) {
          runs.add(run);
          if (!wrong.isEmpty()) broken.add("seed " + seed + " " + run + " " + wrong);
        }
      } catch (AssertionError | RuntimeException e) {
        synchronized (runs) {
          broken.add("seed " + seed + " " + e);
        }
      }
    });
    return new Outcome(runs, broken);
  }

  public static void main(String[] args) {
    long count = args.length > 0 ? Long.parseLong(args[0]) : 500;
    long first = args.length > 1 ? Long.parseLong(args[1]) : 0;
    long start = System.nanoTime();
    Outcome outcome = of(first, count);
    outcome.broken().forEach(System.out::println);
    long calm = outcome.runs().stream().filter(run -> run.mishaps().isEmpty()).count();
    long handsFree = outcome.runs().stream()
        .filter(run -> run.mishaps().isEmpty() && run.keys() == 0)
        .count();
    int overPours = outcome.runs().stream().mapToInt(SeededBatch.Run::overPours).sum();
    double hours = outcome.runs().stream().mapToDouble(SeededBatch.Run::seconds).sum() / 3600;
    System.out.printf(
        "%d batches, %.1f h at the bench in %.0f s; %d broken%n",
        count, hours, (System.nanoTime() - start) / 1e9, outcome.broken().size());
    System.out.printf(
        "%d without a mishap, %d of them without a key pressed; %d over-pours announced%n",
        calm, handsFree, overPours);
    if (!outcome.broken().isEmpty()) System.exit(1);
    System.out.printf(
        "no failure in %d: at most %.2g of batches, with 95 %% certainty%n", count, 3.0 / count);
  }
}
