package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.simulator.Surroundings.Disturbance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SurroundingsTest {
  private static final ScaleTraits BENCH = ScaleTraits.benchThreeKilograms();
  private static final long TICK = 20_000_000;

  @ParameterizedTest
  @EnumSource(Disturbance.class)
  void each_disturbance_is_seen_on_the_scale_and_leaves_the_true_load_alone(Disturbance what) {
    Rig rig = new Rig(BENCH.with(BENCH.cell().withoutDrift()), ScaleQuirks.none(), 1);
    rig.pan.putOn("pot", Mass.ofGrams("450"));
    rig.runFor("10");
    Surroundings surroundings = new Surroundings(0, 2, rig.scale.nanos());
    surroundings.disturb(what, rig.scale.nanos());
    int before = rig.heard.size();
    for (int tick = 0; tick < 1500; tick++) {
      rig.scale.advanceTo(rig.scale.nanos() + TICK, rig::hear);
      surroundings.advanceTo(rig.scale.nanos(), rig.pan);
    }
    double most = rig.heard.subList(before, rig.heard.size()).stream()
        .mapToDouble(heard -> Math.abs(heard.grams() - 450))
        .max()
        .orElseThrow();
    assertThat(most).isGreaterThan(0.19);
    assertThat(Math.abs(rig.last().grams() - 450)).as("over again").isLessThan(0.16);
    assertThat(rig.pan.truth()).isEqualTo(Mass.ofGrams("450"));
    assertThat(surroundings.isDisturbing(rig.scale.nanos())).isFalse();
  }

  @Test
  void things_happen_as_often_as_asked() {
    Pan pan = new Pan();
    Surroundings surroundings = new Surroundings(60, 3, 0);
    int begun = 0;
    boolean before = false;
    for (long nanos = TICK; nanos < 20 * 3600 * 1_000_000_000L; nanos += 5 * TICK) {
      surroundings.advanceTo(nanos, pan);
      boolean now = pan.pressure() != 0 || surroundings.isDisturbing(nanos);
      if (now && !before) begun++;
      before = now;
    }
    assertThat(begun).as("in 20 hours at 60 an hour, some falling together").isBetween(900, 1250);
  }
}
