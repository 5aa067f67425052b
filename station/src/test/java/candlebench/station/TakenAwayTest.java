package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.Asked;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A spoon lay beside the pot when the scale's zero was found, and is taken away later, below what a leap of a stream would be. */
class TakenAwayTest {
  private static final Mass SPOON = Mass.ofGrams("20.4");

  /** Seeds 1896, 2042, 2278, 2804, 4968 and 5824 of the drawn batches. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_spoon_taken_away_between_two_pieces_is_asked_about(int rate) {
    Scenario scenario = waxWithASpoonBeside(rate);
    scenario.bench.pan.liftOff("spoon");
    scenario.bench.run(2);
    scenario.add("17.8");
    scenario.bench.run(6);
    asked(scenario);
    scenario.add("2.2");
    WeightAccepted taken = scenario.settle();
    assertThat(taken.net().roughGrams()).isCloseTo(700, within(0.3));
  }

  /** Seeds 3210 and 9007. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_spoon_taken_away_under_a_thin_stream_is_asked_about(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.pour("20", 4);
    scenario.bench.run(3);
    putSpoonBeside(scenario, "372.4");
    scenario.bench.pan.flow(1, 0.25);
    scenario.bench.run(3);
    scenario.bench.pan.liftOff("spoon");
    scenario.bench.runUntil(Prompt.Kind.ASK, 8);
    scenario.bench.pan.flow(0, 0);
    assertThat(scenario.now()).isEqualTo("now.lighter");
    assertThat(scenario.takings()).isZero();
  }

  /** Seed 84: an elbow lifts the vessel a little for a second and a half. */
  @ParameterizedTest
  @ValueSource(ints = {5, 10, 25})
  void a_hand_that_lifts_for_a_moment_and_goes_is_not_asked_about(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.bench.pan.flow(0.8, 0.25);
    scenario.bench.run(30);
    scenario.bench.pan.lean("elbow", -12);
    scenario.bench.run(2.5);
    scenario.bench.pan.lean("elbow", 0);
    scenario.bench.run(8);
    scenario.bench.pan.flow(0, 0);
    assertThat(scenario.bench.all(Asked.class)).isEmpty();
  }

  /** Seed 9884: a slab went in while the program was down, and the maker lifts the pot when asked. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_pot_with_wax_in_it_is_not_tared_as_an_empty_one_when_it_was_lifted_at_the_asking(
      int rate) {
    Scenario scenario = Scenario.batch(Scenario.at(rate));
    VirtualBench bench = scenario.bench;
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    scenario.add("29.3");
    bench.restart(Duration.ofSeconds(5));
    bench.runUntil(Prompt.Kind.ASK, 10);
    bench.pan.liftOff("pot");
    bench.run(3);
    bench.pan.putOn("pot", Mass.ofGrams("784.4"));
    bench.run(10);
    assertThat(bench.all(PotTared.class)).hasSize(1);
    assertThat(scenario.now()).isEqualTo("now.heavier");
    bench.say(new MakerCommand.Choose("count-it", ""));
    bench.run(2);
    scenario.add("268");
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(700, within(0.3));
  }

  private static Scenario waxWithASpoonBeside(int rate) {
    Scenario scenario = Scenario.batch(Scenario.at(rate));
    scenario.bench.pan.putOn("pot", Scenario.POT);
    scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
    scenario.add("680");
    scenario.bench.run(3);
    putSpoonBeside(scenario, "1032.4");
    return scenario;
  }

  /** While the pot is off the scale, so that it counts for nothing. */
  private static void putSpoonBeside(Scenario scenario, String pot) {
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(1);
    scenario.bench.pan.putOn("spoon", SPOON);
    scenario.bench.run(3);
    scenario.bench.pan.putOn("pot", Mass.ofGrams(pot));
    scenario.bench.run(5);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
  }

  /** What is gone was never in it. */
  private static void asked(Scenario scenario) {
    assertThat(scenario.now()).isEqualTo("now.lighter");
    assertThat(scenario.takings()).isZero();
    scenario.bench.run(2);
    assertThat(scenario.bench.say(new MakerCommand.Choose("was-beside", ""))).isEmpty();
    scenario.bench.run(1);
  }
}
