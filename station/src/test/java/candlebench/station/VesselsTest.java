package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.simulator.ScaleKey;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.OverGone;
import candlebench.station.guidance.GuidanceEvent.VesselLifted;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every vessel to its fill, and enough for the last. */
class VesselsTest {

  private static void glass(Scenario scenario, String grams) {
    scenario.bench.pan.putOn("glass", Mass.ofGrams(grams));
    scenario.bench.runUntil(Prompt.Kind.FILL_VESSEL, 15);
  }

  private static void lift(Scenario scenario) {
    scenario.bench.pan.liftOff("glass");
    scenario.bench.run(1.5);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void quick_hands_that_leave_no_time_to_see_the_scale_clear_need_no_key(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("56", 4);
    scenario.bench.runUntil(Prompt.Kind.PLACE_VESSEL, 30);
    scenario.bench.run(1);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.pan.putOn("glass", Mass.ofGrams("170"));
    scenario.bench.runUntil(Prompt.Kind.FILL_VESSEL, 15);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void three_grams_over_in_the_first_two_the_third_is_asked_for_evenly_less(int rate) {
    Scenario scenario = Scenario.atVessels(Scenario.at(rate));
    glass(scenario, "181");
    scenario.pour("252.7", 20);
    scenario.settle();
    lift(scenario);
    assertThat(scenario.bench.all(VesselLifted.class)).hasSize(1);
    glass(scenario, "179");
    assertThat(scenario.prompt().weighing().orElseThrow().target().roughGrams())
        .isCloseTo(251.65, within(0.3));
    assertThat(scenario.detail()).isEqualTo("detail.even-fill");
    scenario.pour("252.6", 20);
    scenario.settle();
    lift(scenario);
    glass(scenario, "184");
    assertThat(scenario.prompt().weighing().orElseThrow().target().roughGrams())
        .isCloseTo(250.7, within(0.4));
    scenario.pour("250.7", 20);
    scenario.settle();
    lift(scenario);
    assertThat(scenario.bench.all(BatchDone.class)).hasSize(1);
  }

  @Test
  void when_it_will_not_last_that_is_said_before_the_vessel_and_the_last_is_taken_short() {
    Scenario scenario = Scenario.atVessels(Scenario.at(10));
    for (int i = 0; i < 2; i++) {
      glass(scenario, "181");
      scenario.pour("253.5", 20);
      scenario.settle();
      lift(scenario);
    }
    assertThat(scenario.detail()).isEqualTo("detail.mix-short");
    glass(scenario, "181");
    scenario.pour("246", 20);
    scenario.bench.run(4);
    assertThat(scenario.bench.say(new MakerCommand.GoOn())).isEmpty();
    assertThat(scenario.taken().verdict()).isEqualTo(Verdict.UNDER);
    assertThat(scenario.taken().reason()).isEqualTo("short");
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void the_pot_left_on_the_scale_is_not_taken_for_a_vessel(int rate) {
    Scenario scenario = Scenario.atVessels(Scenario.at(rate));
    scenario.bench.pan.putOn("pot", Mass.ofGrams("1108.4"));
    scenario.bench.run(12);
    assertThat(scenario.bench.all(VesselTared.class)).isEmpty();
    assertThat(scenario.detail()).isEqualTo("detail.that-is-the-pot");
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_filled_vessel_put_back_by_mistake_is_asked_about(int rate) {
    Scenario scenario = Scenario.atVessels(Scenario.at(rate));
    glass(scenario, "181");
    scenario.pour("252", 20);
    scenario.settle();
    lift(scenario);
    scenario.bench.pan.putOn("glass", Mass.ofGrams("433"));
    scenario.bench.run(12);
    assertThat(scenario.bench.all(VesselTared.class)).hasSize(1);
    assertThat(scenario.detail()).isEqualTo("detail.odd-vessel");
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void too_full_a_vessel_is_poured_back_a_little(int rate) {
    Scenario scenario = Scenario.atVessels(Scenario.at(rate));
    glass(scenario, "181");
    scenario.pour("258", 20);
    scenario.bench.runUntil(Prompt.Kind.OVER, 5);
    assertThat(scenario.detail()).isEqualTo("detail.over-vessel");
    scenario.bench.run(1);
    scenario.add("-6");
    assertThat(scenario.settle().verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(scenario.bench.last(OverGone.class).choice()).isEqualTo("taken-back");
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_vessel_tared_away_on_the_scale_is_lifted_and_put_back(int rate) {
    Scenario scenario = Scenario.atVessels(Scenario.at(rate));
    glass(scenario, "181");
    scenario.pour("100", 20);
    scenario.bench.run(2);
    scenario.bench.press(ScaleKey.TARE);
    scenario.bench.run(4);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.AWAY);
    scenario.bench.pan.liftOff("glass");
    scenario.bench.run(3);
    scenario.bench.pan.putOn("glass", Mass.ofGrams("281"));
    scenario.bench.run(4);
    scenario.pour("152", 20);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(252, within(0.3));
  }
}
