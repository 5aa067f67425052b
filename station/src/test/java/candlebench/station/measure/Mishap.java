package candlebench.station.measure;

import candlebench.shared.Mass;
import candlebench.simulator.Pan;
import candlebench.simulator.Surroundings;
import candlebench.simulator.Surroundings.Disturbance;
import java.util.Optional;
import java.util.SplittableRandom;

/** One thing that happens on or beside the pan while something is poured, at a share of the target drawn by seed; or nothing. */
final class Mishap {
  private static final double SPOON_SECONDS = 3;

  private final Optional<SplittableRandom> random;
  private final int kind;
  private final double share;
  private Optional<Surroundings> around = Optional.empty();
  private long spoonOff = Long.MAX_VALUE;

  private Mishap(Optional<SplittableRandom> random) {
    this.random = random;
    kind = random.map(dice -> dice.nextInt(Disturbance.values().length + 2)).orElse(0);
    share = random.map(dice -> 0.2 + 0.8 * dice.nextDouble()).orElse(0.0);
  }

  static Mishap none() {
    return new Mishap(Optional.empty());
  }

  static Mishap drawn(long seed) {
    return new Mishap(Optional.of(new SplittableRandom(seed)));
  }

  void advanceTo(long nanos, double poured, Task task, Pan pan) {
    if (random.isEmpty()) return;
    if (around.isEmpty() && poured >= share * task.target().roughGrams()) happen(nanos, task, pan);
    around.ifPresent(surroundings -> surroundings.advanceTo(nanos, pan));
    if (nanos >= spoonOff) {
      spoonOff = Long.MAX_VALUE;
      pan.lean("spoon", 0);
    }
  }

  private void happen(long nanos, Task task, Pan pan) {
    SplittableRandom dice = random.orElseThrow();
    around = Optional.of(new Surroundings(0, dice.nextLong(), nanos));
    Disturbance[] all = Disturbance.values();
    if (kind < all.length) around.get().disturb(all[kind], nanos);
    else if (kind == all.length) {
      pan.lean("spoon", 15 + 20 * dice.nextDouble());
      spoonOff = nanos + Math.round((SPOON_SECONDS * (0.5 + dice.nextDouble())) * 1e9);
    } else {
      double grams = 0.05 * Math.min(20, task.target().roughGrams());
      pan.drop(new Mass(Math.round(grams * 1e12)), 0.2);
    }
  }
}
