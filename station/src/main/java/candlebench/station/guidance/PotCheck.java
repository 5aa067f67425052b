package candlebench.station.guidance;

import candlebench.shared.Mass;
import java.util.Optional;

/** Whether what stands there can be one of the known empty pots: a spoon in it, a lid on it or another pot would be weighed as wax. */
record PotCheck(Mass load, Scene scene, Pan pan) {
  /** A pot is itself within 2 %: drips and scratches (common practice, no source). */
  private static final long PERCENT = 2;

  /** What lies in a pot by mistake: a spoon of 25 g, a thermometer, a lid (common practice, no source). */
  private static final Mass LEFT_IN = Mass.ofGrams("80");

  Optional<BenchSetup.Pot> known() {
    return scene.pots().stream().filter(this::fits).findFirst();
  }

  /** The pot of that name, if it can be that one: two pots may weigh the same. */
  Optional<BenchSetup.Pot> known(String name) {
    return scene.pots().stream()
        .filter(pot -> pot.name().equals(name) && fits(pot))
        .findFirst();
  }

  boolean odd() {
    return !scene.pots().isEmpty() && known().isEmpty();
  }

  boolean fits(BenchSetup.Pot pot) {
    Mass off = load.minus(pot.empty()).abs();
    return !off.isMoreThan(pot.empty().times(PERCENT, 100)) || !pan.differs(off, ZeroShift.STEPS);
  }

  /** What seems to be wrong with it. */
  Words words() {
    return scene.pots().stream()
        .filter(pot -> load.isMoreThan(pot.empty()))
        .filter(pot -> !load.minus(pot.empty()).isMoreThan(LEFT_IN))
        .min((a, b) -> b.empty().compareTo(a.empty()))
        .map(pot -> Words.of("detail.something-in-pot")
            .and("pot", pot.name())
            .and("more", load.minus(pot.empty())))
        .orElse(Words.of("detail.unknown-pot").and("load", load));
  }
}
