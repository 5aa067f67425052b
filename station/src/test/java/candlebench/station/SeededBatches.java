package candlebench.station;

import candlebench.station.SeededBatch.Mishap;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import java.util.stream.LongStream;

/**
 * Runs many drawn batches, checks the promises of the bench in each, and says how they went. A seed that broke one runs the same again,
 * and is run with ever fewer kinds of mishap, as long as it still breaks.
 *
 * <p>Run it from the command line: {@code mvn -q -pl station -am -Ptables test-compile exec:java
 * -Dexec.mainClass=candlebench.station.SeededBatches -Dexec.args="10000"}. Arguments: how many batches (500), the first seed (0), and
 * {@code without=KILL,CABLE} or {@code only=KILL,CABLE} to leave kinds of mishap out of the whole run.
 */
public final class SeededBatches {
  private SeededBatches() {}

  /** How often a kind of mishap came about, and in how many of these batches no promise broke. */
  record Tally(int met, int survived) {}

  /** What became of many runs: those that ended, what broke, each with its seed, and every kind of mishap. */
  record Outcome(
      List<SeededBatch.Run> runs,
      List<String> broken,
      List<Long> brokenSeeds,
      Map<Mishap, Tally> mishaps) {}

  static Outcome of(long first, long count) {
    return of(first, count, SeededBatch::new);
  }

  static Outcome of(long first, long count, LongFunction<SeededBatch> drawn) {
    Outcome all = new Outcome(
        new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new EnumMap<>(Mishap.class));
    LongStream.range(first, first + count).parallel().forEach(seed -> {
      Optional<SeededBatch> batch = Optional.empty();
      Optional<SeededBatch.Run> run = Optional.empty();
      String wrong;
      try {
        batch = Optional.of(drawn.apply(seed));
        run = Optional.of(batch.get().run());
        wrong = wrong(seed, batch.get(), run.get());
      } catch (AssertionError | RuntimeException e) {
        wrong = e.toString();
      }
      Set<Mishap> met = batch.map(SeededBatch::met).orElse(Set.of());
      synchronized (all) {
        run.ifPresent(all.runs()::add);
        int survived = wrong.isEmpty() ? 1 : 0;
        for (Mishap mishap : met)
          all.mishaps()
              .merge(
                  mishap,
                  new Tally(1, survived),
                  (a, b) -> new Tally(a.met() + b.met(), a.survived() + b.survived()));
        if (wrong.isEmpty()) return;
        all.brokenSeeds().add(seed);
        all.broken().add("seed " + seed + " " + run.map(each -> each + " ").orElse("") + wrong);
      }
    });
    return all;
  }

  private static String wrong(long seed, SeededBatch batch, SeededBatch.Run run) {
    if (!run.done()) return "never came to its end: " + batch.bench.prompt();
    return seed % 10 == 0 && !batch.bench.replayed().equals(batch.bench.events)
        ? "its inputs give other events when replayed"
        : "";
  }

  /** The fewest kinds of mishap with which something still breaks, found by leaving out one after the other. */
  static Set<Mishap> fewest(Set<Mishap> possible, Predicate<Set<Mishap>> breaks) {
    Set<Mishap> fewest = possible;
    for (Mishap mishap : possible) {
      Set<Mishap> fewer = EnumSet.copyOf(fewest);
      fewer.remove(mishap);
      if (breaks.test(fewer)) fewest = fewer;
    }
    return fewest;
  }

  private static boolean breaks(long seed, Set<Mishap> possible) {
    return !of(seed, 1, each -> new SeededBatch(each, possible)).broken().isEmpty();
  }

  /** The kinds that words such as {@code without=KILL,CABLE} leave; all without such words. */
  static Set<Mishap> possible(String words) {
    String[] parts = words.split("=", 2);
    Set<Mishap> named = EnumSet.noneOf(Mishap.class);
    if (parts.length == 2 && !parts[1].isEmpty())
      for (String name : parts[1].split(",")) named.add(Mishap.valueOf(name));
    return switch (parts[0]) {
      case "" -> EnumSet.allOf(Mishap.class);
      case "only" -> named;
      case "without" -> EnumSet.complementOf(EnumSet.copyOf(named));
      default -> throw new IllegalArgumentException("only= or without=, not " + words);
    };
  }

  public static void main(String[] args) {
    long count = args.length > 0 ? Long.parseLong(args[0]) : 500;
    long first = args.length > 1 ? Long.parseLong(args[1]) : 0;
    Set<Mishap> possible = possible(args.length > 2 ? args[2] : "");
    long start = System.nanoTime();
    Outcome outcome = of(first, count, seed -> new SeededBatch(seed, possible));
    double seconds = (System.nanoTime() - start) / 1e9;
    outcome.broken().forEach(System.out::println);
    for (long seed : outcome.brokenSeeds())
      System.out.println("seed " + seed + " breaks with no more than "
          + fewest(possible, fewer -> breaks(seed, fewer)));
    print(outcome, count, seconds);
    if (!outcome.broken().isEmpty()) System.exit(1);
    System.out.printf(
        Locale.ROOT,
        "no failure in %d: at most %.2g of batches, with 95 %% certainty%n",
        count,
        3.0 / count);
  }

  private static void print(Outcome outcome, long count, double seconds) {
    long calm = outcome.runs().stream().filter(run -> run.mishaps().isEmpty()).count();
    long handsFree = outcome.runs().stream()
        .filter(run -> run.mishaps().isEmpty() && run.keys() == 0)
        .count();
    int overPours = outcome.runs().stream().mapToInt(SeededBatch.Run::overPours).sum();
    double hours = outcome.runs().stream().mapToDouble(SeededBatch.Run::seconds).sum() / 3600;
    System.out.printf(
        Locale.ROOT,
        "%d batches, %.1f h at the bench in %.0f s; %d broken%n",
        count,
        hours,
        seconds,
        outcome.broken().size());
    System.out.printf(
        Locale.ROOT,
        "%d without a mishap, %d of them without a key pressed; %d over-pours announced%n",
        calm,
        handsFree,
        overPours);
    System.out.printf("%n%-14s %8s %10s %8s%n", "mishap", "met", "survived", "broken");
    outcome
        .mishaps()
        .forEach((mishap, tally) -> System.out.printf(
            "%-14s %8d %10d %8d%n",
            mishap, tally.met(), tally.survived(), tally.met() - tally.survived()));
  }
}
