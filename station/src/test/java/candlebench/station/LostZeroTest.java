package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.simulator.ScaleKey;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleQuirks.Quirk;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The scale's zero moves where the numbers hardly show it: across a silence, in the moment of a taking, out of what it can show. */
class LostZeroTest {

  /** Seeds 2240, 6538 and 8755: a tared pot shows about nothing before the scale goes off, and nothing after it. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_tared_pot_that_shows_about_nothing_is_lifted_once_after_a_silence(int rate) {
    Scenario scenario = tared(rate);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.add("1.3");
    scenario.bench.run(3);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(5);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.AWAY);
    putBackOnAnEmptyScale(scenario, "383.7");
    assertThat(scenario.now()).isEqualTo("now.heavier");
    scenario.bench.say(new MakerCommand.Choose("count-it", ""));
    scenario.pour("24.7", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_pot_that_was_lifted_in_the_silence_is_put_on_and_lifted_once_more(int rate) {
    Scenario scenario = tared(rate);
    scenario.pour("20", 4);
    scenario.bench.run(2);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(1);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(2);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(5);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("402.4"));
    scenario.bench.run(4);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(3);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("402.4"));
    scenario.bench.run(4);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    scenario.pour("6", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  /** Seed 8362: no reading was seen in this step yet, so that the one before it must be known. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void tare_in_the_moment_of_a_taking_with_a_slab_falling_in_is_noticed(int rate) {
    ScaleQuirks atOnce = ScaleQuirks.of(Quirk.TARES_AT_ONCE);
    Scenario scenario = Scenario.batch(Scenario.at(rate).format("toledo/chk").quirks(atOnce));
    VirtualBench bench = scenario.bench;
    bench.pan.putOn("pot", Scenario.POT);
    while (bench.all(PotTared.class).isEmpty()) bench.run(0.02);
    bench.press(ScaleKey.TARE);
    scenario.add("232");
    bench.run(6);
    assertThat(scenario.now()).isEqualTo("now.lift-pot-off");
    bench.pan.liftOff("pot");
    bench.run(3);
    bench.pan.putOn("pot", Mass.ofGrams("584.4"));
    bench.run(4);
    assertThat(scenario.now()).isEqualTo("now.heavier");
    assertThat(bench.all(PotTared.class)).hasSize(1);
  }

  /** Seed 6407: an empty scale that came on at zero is no drip of what was taken. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_weight_is_not_reopened_by_a_scale_that_went_off_after_it(int rate) {
    Scenario scenario = tared(rate);
    scenario.pour("26", 4);
    scenario.settle();
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(1);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(8);
    assertThat(scenario.bench.all(AcceptanceReopened.class)).isEmpty();
  }

  /** Seed 2492: a spoon lay there when the zero was found, and the pot comes as it goes. */
  @ParameterizedTest
  @ValueSource(ints = {5, 10, 25})
  void a_pot_put_on_as_the_scale_was_falling_below_its_zero_is_lifted_once(int rate) {
    VirtualBench bench = new VirtualBench(Scenario.at(rate));
    bench.run(3);
    bench.start("harbour-lane-oil", 1);
    bench.pan.putOn("spoon", Mass.ofGrams("20.5"));
    bench.run(3);
    bench.press(ScaleKey.TARE);
    bench.run(3);
    bench.pan.liftOff("spoon");
    bench.run(0.5);
    bench.pan.putOn("pot", Scenario.POT);
    bench.run(10);
    assertThat(bench.all(PotTared.class)).isEmpty();
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.clear-scale");
    bench.pan.liftOff("pot");
    bench.run(20);
    bench.press(ScaleKey.ON_OFF);
    bench.run(1);
    bench.press(ScaleKey.ON_OFF);
    bench.run(5);
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(bench.last(PotTared.class).tare().roughGrams()).isCloseTo(352.4, within(0.3));
  }

  /** Seed 6288: a hand brings a scale that reads below zero up to about nothing, and goes as the pot is set down. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_pot_put_on_a_scale_that_read_below_zero_is_not_tared(int rate) {
    VirtualBench bench = new VirtualBench(Scenario.at(rate));
    bench.pan.lean("hand", 28.6);
    bench.run(1);
    bench.press(ScaleKey.ON_OFF);
    bench.run(1);
    bench.press(ScaleKey.ON_OFF);
    bench.run(5);
    bench.pan.lean("hand", 0);
    bench.run(4);
    bench.start("harbour-lane-oil", 1);
    bench.run(2);
    assertThat(bench.prompt().trouble().orElseThrow().key()).isEqualTo("trouble.underload");
    bench.pan.lean("elbow", 29.5);
    bench.run(0.8);
    bench.pan.putOn("pot", Scenario.POT);
    bench.pan.lean("elbow", 0);
    bench.run(10);
    assertThat(bench.all(PotTared.class)).isEmpty();
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.clear-scale");
  }

  /** Thirty grams in, and the pot tared away with them: the scale shows about nothing. */
  private static Scenario tared(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.pour("30", 4);
    scenario.bench.run(3);
    scenario.bench.press(ScaleKey.TARE);
    scenario.bench.run(3);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(3);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("382.4"));
    scenario.bench.run(4);
    return scenario;
  }

  private static void putBackOnAnEmptyScale(Scenario scenario, String grams) {
    VirtualBench bench = scenario.bench;
    bench.pan.liftOff("pot");
    bench.run(3);
    bench.press(ScaleKey.ON_OFF);
    bench.run(1);
    bench.press(ScaleKey.ON_OFF);
    bench.run(5);
    bench.pan.putOn("pot", Mass.ofGrams(grams));
    bench.run(5);
  }
}
