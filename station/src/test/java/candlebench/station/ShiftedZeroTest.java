package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.simulator.ScaleKey;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleQuirks.Quirk;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import candlebench.station.guidance.Prompt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Someone presses tare or zero, or the scale goes off and comes back at zero: no net weight is taken across that. */
class ShiftedZeroTest {

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void tare_in_mid_pour_is_mended_by_lifting_off_and_putting_back(int rate) {
    Scenario scenario = thirtyGramsIn(Scenario.at(rate));
    scenario.bench.press(ScaleKey.TARE);
    scenario.bench.run(3);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.AWAY);
    assertThat(scenario.detail()).isEqualTo("detail.maybe-zeroed");

    liftAndPutBack(scenario, "382.4");
    assertThat(scenario.bench.last(ZeroFound.class).zero().roughGrams())
        .isCloseTo(382.4, within(0.3));
    rightInTheEnd(scenario);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void what_was_poured_after_the_tare_is_not_lost(int rate) {
    Scenario scenario = thirtyGramsIn(Scenario.at(rate));
    scenario.bench.press(ScaleKey.TARE);
    scenario.bench.run(0.3);
    scenario.pour("8", 4);
    scenario.bench.run(4);
    assertThat(scenario.takings()).isZero();
    liftAndPutBack(scenario, "390.4");
    assertThat(scenario.now()).isEqualTo("now.heavier");
    scenario.bench.say(new candlebench.station.guidance.MakerCommand.Choose("count-it", ""));
    scenario.pour("18", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_scale_that_was_tared_with_the_pot_on_may_lose_that_tare_again(int rate) {
    Scenario scenario = thirtyGramsIn(Scenario.at(rate));
    scenario.bench.press(ScaleKey.TARE);
    scenario.bench.run(3);
    liftAndPutBack(scenario, "382.4");
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    scenario.pour("10", 4);
    scenario.bench.run(2);
    scenario.bench.press(ScaleKey.TARE);
    scenario.bench.run(3);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.AWAY);
    assertThat(scenario.now()).isEqualTo("now.lift-pot-off");
    liftAndPutBack(scenario, "392.4");
    scenario.pour("16", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void zero_on_a_scale_whose_zero_key_tares_is_no_different(int rate) {
    Scenario scenario =
        thirtyGramsIn(Scenario.at(rate).quirks(ScaleQuirks.of(Quirk.ZERO_KEY_TARES)));
    scenario.bench.press(ScaleKey.ZERO);
    scenario.bench.run(3);
    liftAndPutBack(scenario, "382.4");
    rightInTheEnd(scenario);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void off_and_back_at_zero_with_the_pot_on_it_is_zeroed_empty_and_the_pot_put_back(int rate) {
    Scenario scenario = thirtyGramsIn(Scenario.at(rate));
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(4);
    assertThat(scenario.prompt().trouble()).isPresent();
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(5);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.AWAY);

    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(3);
    assertThat(scenario.prompt().trouble().orElseThrow().key()).isEqualTo("trouble.underload");
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(1);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(5);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("382.4"));
    scenario.bench.run(4);
    rightInTheEnd(scenario);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void off_and_on_a_scale_that_keeps_its_zero_nothing_is_asked(int rate) {
    Scenario scenario =
        thirtyGramsIn(Scenario.at(rate).quirks(ScaleQuirks.of(Quirk.KEEPS_ZERO_WHEN_OFF)));
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(4);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(6);
    rightInTheEnd(scenario);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_pot_tared_on_the_scale_before_the_start_is_lifted_once(int rate) {
    VirtualBench bench = new VirtualBench(Scenario.at(rate));
    bench.pan.putOn("pot", Scenario.POT);
    bench.run(3);
    bench.press(ScaleKey.TARE);
    bench.run(3);
    bench.start("harbour-lane-oil", 1);
    bench.run(5);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.PLACE_POT);
    bench.pan.liftOff("pot");
    bench.run(3);
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(bench.last(PotTared.class).tare().roughGrams()).isCloseTo(352.4, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_tare_that_was_lost_in_a_silence_is_not_reckoned_with_when_the_pot_is_weighed(int rate) {
    VirtualBench bench = new VirtualBench(Scenario.at(rate));
    bench.run(3);
    bench.start("harbour-lane-oil", 1);
    bench.pan.putOn("weight", Scenario.POT);
    bench.run(1.2);
    bench.press(ScaleKey.TARE);
    bench.run(2);
    bench.pan.liftOff("weight");
    bench.run(3);
    assertThat(bench.last(ZeroFound.class).zero().roughGrams()).isCloseTo(352.4, within(0.3));
    bench.press(ScaleKey.ON_OFF);
    bench.run(3);
    bench.press(ScaleKey.ON_OFF);
    bench.run(0.5);
    bench.unplug();
    bench.run(4);
    bench.pan.putOn("pot", Scenario.POT);
    bench.run(1);
    bench.replug();
    bench.run(10);
    assertThat(bench.all(PotTared.class)).isEmpty();
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.clear-scale");
    bench.pan.liftOff("pot");
    bench.run(4);
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(bench.last(PotTared.class).tare().roughGrams()).isCloseTo(352.4, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void the_scale_switches_itself_off_while_the_wax_melts_with_its_zero_elsewhere(int rate) {
    Scenario scenario = Scenario.batch(Scenario.at(rate));
    VirtualBench bench = scenario.bench;
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    scenario.add("300");
    bench.run(3);
    bench.press(ScaleKey.TARE);
    bench.run(3);
    liftAndPutBack(scenario, "652.4");
    scenario.add("400");
    bench.runUntil(Prompt.Kind.MELT, 15);
    bench.pan.liftOff("pot");
    bench.run(3);
    bench.press(ScaleKey.ON_OFF);
    bench.run(2);
    bench.press(ScaleKey.ON_OFF);
    bench.runUntil(Prompt.Kind.RETURN_POT, 30);
    bench.run(3);
    bench.pan.putOn("pot", Mass.ofGrams("1052.4"));
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    scenario.pour("56", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  private static Scenario thirtyGramsIn(VirtualBench.Make make) {
    Scenario scenario = Scenario.oilJobWithPot(make);
    scenario.pour("30", 4);
    scenario.bench.run(3);
    return scenario;
  }

  private static void liftAndPutBack(Scenario scenario, String grams) {
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(3);
    scenario.bench.pan.putOn("pot", Mass.ofGrams(grams));
    scenario.bench.run(4);
  }

  private static void rightInTheEnd(Scenario scenario) {
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    scenario.pour("26", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }
}
