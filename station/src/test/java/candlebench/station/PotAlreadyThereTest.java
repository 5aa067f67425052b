package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.Prepared;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pot stands on the scale before the batch begins, or before the first number has come. */
class PotAlreadyThereTest {

  private static VirtualBench started(int rate, double secondsBefore, String recipe) {
    VirtualBench bench = new VirtualBench(Scenario.at(rate));
    bench.pan.putOn("pot", Scenario.POT);
    bench.run(secondsBefore);
    bench.start(recipe, 1);
    return bench;
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void where_nothing_is_to_be_set_out_it_is_simply_weighed(int rate) {
    for (double before : new double[] {0, 0.2, 5}) {
      VirtualBench bench = started(rate, before, "harbour-lane-oil");
      bench.runUntil(Prompt.Kind.ADD_PART, 15);
      assertThat(bench.last(PotTared.class).tare().roughGrams()).isCloseTo(352.4, within(0.3));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void put_on_in_the_moment_of_the_start_it_is_weighed(int rate) {
    for (double after : new double[] {0, 0.05, 0.3}) {
      VirtualBench bench = new VirtualBench(Scenario.at(rate));
      bench.start("harbour-lane-oil", 1);
      bench.run(after);
      bench.pan.putOn("pot", Scenario.POT);
      bench.runUntil(Prompt.Kind.ADD_PART, 15);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void where_vessels_are_to_be_set_out_the_page_says_so_and_the_key_goes_on(int rate) {
    VirtualBench bench = started(rate, 0, "harbour-lane-quick");
    bench.run(20);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.PREPARE);
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.pot-is-there");
    assertThat(bench.say(new MakerCommand.GoOn())).isEmpty();
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void lifted_off_and_put_back_it_says_without_a_key_that_they_are_set_out(int rate) {
    VirtualBench bench = started(rate, 3, "harbour-lane-quick");
    bench.run(5);
    bench.pan.liftOff("pot");
    bench.run(3);
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(bench.last(Prepared.class).byKey()).isFalse();
  }
}
