package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.simulator.NumberWatcher.Habits;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class NumberWatcherTest {
  private static final double TARGET = 56;
  private static final long TICK = 20_000_000;

  private record Result(double error, double seconds) {}

  @Test
  void a_careful_watcher_lands_close_by_drops_and_takes_longer_than_a_careless_one() {
    List<Result> careful = pours(new Habits(2.5, 2.0, 0.1, 0.11));
    List<Result> careless = pours(new Habits(0.5, 0, 0.1, 0.11));
    assertThat(overshoots(careful, 0.5)).isLessThan(0.05);
    assertThat(overshoots(careless, 0.5)).isGreaterThan(0.3);
    assertThat(median(careful.stream().map(Result::seconds).toList()))
        .isGreaterThan(1.5 * median(careless.stream().map(Result::seconds).toList()));
    assertThat(median(careful.stream().map(result -> Math.abs(result.error())).toList()))
        .isLessThan(0.15);
  }

  private static double overshoots(List<Result> results, double over) {
    return results.stream().filter(result -> result.error() > over).count()
        / (double) results.size();
  }

  private static List<Result> pours(Habits habits) {
    List<Result> results = new ArrayList<>();
    for (int seed = 0; seed < 60; seed++) results.add(pour(habits, seed));
    return results;
  }

  private static Result pour(Habits habits, long seed) {
    Pan pan = new Pan();
    pan.putOn("pot", Mass.ofGrams("450"));
    VirtualScale scale = new VirtualScale(
        ScaleTraits.benchThreeKilograms(),
        ScaleQuirks.none(),
        Rig.FORMAT,
        Rig.layout("standard"),
        pan,
        seed);
    MakerTraits traits = MakerTraits.drawn(new SplittableRandom(seed));
    NumberWatcher watcher = new NumberWatcher(traits, habits, PourKind.OIL_BOTTLE, seed, 0);
    long nanos = 0;
    while (!watcher.isDone()) {
      nanos += TICK;
      scale.advanceTo(nanos, (at, bytes) -> {});
      double shown = scale.display().orElseThrow().mass(MassUnit.GRAM).roughGrams();
      watcher.advanceTo(nanos, Perceived.number(TARGET - shown), pan);
      assertThat(nanos).as("seed " + seed).isLessThan(600_000_000_000L);
    }
    return new Result(pan.truth().roughGrams() - 450 - TARGET, nanos / 1e9);
  }

  private static double median(List<Double> values) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    return sorted.get(sorted.size() / 2);
  }
}
