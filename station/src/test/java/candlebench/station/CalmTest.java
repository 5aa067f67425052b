package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.simulator.Surroundings;
import candlebench.simulator.Surroundings.Disturbance;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A dropped piece, a knock, a draught, a hand: nothing cries wolf, and nothing wrong is taken. */
class CalmTest {

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void near_the_target_no_disturbance_is_called_an_over_pour(int rate) {
    for (Disturbance what : Disturbance.values())
      for (int seed = 0; seed < 3; seed++) {
        Scenario scenario = Scenario.oilOnWax(Scenario.at(rate).seed(rate + seed));
        Surroundings around = new Surroundings(0, seed, scenario.bench.nanos());
        scenario.bench.around(nanos -> around.advanceTo(nanos, scenario.bench.pan));
        scenario.pour("54.5", 4);
        scenario.bench.run(1);
        around.disturb(what, scenario.bench.nanos());
        scenario.bench.run(8);
        assertThat(scenario.bench.all(OverPoured.class))
            .as("%s, seed %d", what, seed)
            .isEmpty();
      }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void pieces_that_fall_hard_are_weighed_where_they_come_to_rest(int rate) {
    Scenario scenario = Scenario.batch(Scenario.at(rate));
    VirtualBench bench = scenario.bench;
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(candlebench.station.guidance.Prompt.Kind.ADD_PART, 15);
    bench.pan.add(Mass.ofGrams("660"));
    bench.run(3);
    for (int piece = 0; piece < 4; piece++) {
      bench.pan.drop(Mass.ofGrams("9.5"), 0.3);
      bench.run(1.5);
    }
    WeightAccepted wax = scenario.settle();
    assertThat(bench.all(OverPoured.class)).isEmpty();
    assertThat(wax.net().minus(Mass.ofGrams("698")).abs()).isLessThan(Mass.ofGrams("0.4"));
  }
}
