package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.simulator.ScaleKey;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.PotReweighed;
import candlebench.station.guidance.GuidanceEvent.Undone;
import candlebench.station.guidance.GuidanceEvent.WaitEnded;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceInput;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Place;
import candlebench.station.guidance.Prompt;
import candlebench.station.guidance.Words;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The scale's unit key, and the maker's own: undo, go on, a weight entered by hand. */
class KeysTest {

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void the_unit_key_in_mid_pour_moves_nothing(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.pour("30", 4);
    scenario.bench.run(3);
    scenario.bench.press(ScaleKey.UNIT);
    Set<Prompt.Kind> steps = new HashSet<>();
    for (int tenth = 0; tenth < 20; tenth++) {
      scenario.bench.run(0.1);
      steps.add(scenario.prompt().step());
      scenario
          .prompt()
          .weighing()
          .orElseThrow()
          .net()
          .ifPresent(net -> assertThat(net.roughGrams()).isCloseTo(30, within(0.4)));
    }
    assertThat(steps).containsExactly(Prompt.Kind.ADD_PART);
    scenario.pour("26", 4);
    WeightAccepted oil = scenario.settle();
    assertThat(oil.indication().unit()).contains(MassUnit.OUNCE);
    assertThat(oil.net().roughGrams()).isCloseTo(56, within(0.4));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void an_undone_weight_is_not_simply_taken_again_and_a_key_takes_it(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("56", 4);
    scenario.settle();
    scenario.bench.run(3);
    assertThat(scenario.bench.state().undoTime(scenario.bench.now())).isPresent();
    assertThat(scenario.bench.say(new MakerCommand.Undo())).isEmpty();
    assertThat(scenario.bench.last(Undone.class).what()).isEqualTo("weight-accepted");
    int before = scenario.takings();
    scenario.bench.run(15);
    assertThat(scenario.takings()).isEqualTo(before);
    assertThat(scenario.detail()).isEqualTo("detail.taken-back");
    assertThat(scenario.bench.say(new MakerCommand.GoOn())).isEmpty();
    assertThat(scenario.takings()).isEqualTo(before + 1);
  }

  @Test
  void the_scales_own_print_key_goes_on_and_leaves_word_of_it() {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(10));
    scenario.bench.printKey();
    assertThat(scenario.takings()).isEqualTo(1);
    scenario.pour("54", 4);
    scenario.bench.run(4);
    assertThat(scenario.bench.prompt().confirm().map(Words::key)).contains("confirm.take-short");
    int before = scenario.takings();
    scenario.bench.printKey();
    assertThat(scenario.takings()).isEqualTo(before + 1);
    assertThat(scenario.taken().how()).isEqualTo(How.PRINT_KEY);
    assertThat(scenario.taken().reason()).isEqualTo("short");
  }

  @Test
  void after_ten_seconds_nothing_is_left_to_take_back() {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(10));
    scenario.pour("56", 4);
    scenario.settle();
    scenario.bench.run(10.1);
    assertThat(scenario.bench.state().undoTime(scenario.bench.now())).isEmpty();
    assertThat(scenario.bench.say(new MakerCommand.Undo()).orElseThrow().words().key())
        .isEqualTo("refused.nothing-to-undo");
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_drip_after_the_weight_was_taken_opens_it_again(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("55.8", 4);
    Mass first = scenario.settle().net();
    scenario.bench.run(1);
    scenario.bench.pan.flow(0.2, 0);
    scenario.bench.run(1.5);
    scenario.bench.pan.flow(0, 0);
    WeightAccepted again = scenario.settle();
    assertThat(scenario.bench.all(AcceptanceReopened.class)).hasSize(1);
    assertThat(again.net().minus(first).roughGrams()).isCloseTo(0.3, within(0.15));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void stirring_with_the_pot_on_the_scale_opens_nothing(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("56", 4);
    scenario.settle();
    long start = scenario.bench.nanos();
    scenario.bench.around(nanos ->
        scenario.bench.pan.lean("spoon", 35 + 15 * Math.sin(2 * Math.PI * (nanos - start) / 1e9)));
    scenario.bench.run(5);
    scenario.bench.around(nanos -> scenario.bench.pan.lean("spoon", 25));
    scenario.bench.run(4);
    assertThat(scenario.bench.all(AcceptanceReopened.class)).isEmpty();
    assertThat(scenario.bench.all(OverPoured.class)).isEmpty();
  }

  @Test
  void the_one_large_key_ends_a_wait_and_undo_waits_on() {
    Scenario scenario = Scenario.batch(Scenario.at(10));
    assertThat(scenario.bench.say(new MakerCommand.GoOn())).isEmpty();
    scenario.bench.pan.putOn("pot", Scenario.POT);
    scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
    scenario.add("700");
    scenario.bench.runUntil(Prompt.Kind.MELT, 15);
    scenario.bench.run(2);
    scenario.bench.say(new MakerCommand.GoOn());
    assertThat(scenario.bench.last(WaitEnded.class).byKey()).isTrue();
    scenario.bench.say(new MakerCommand.Undo());
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.MELT);
    scenario.bench.run(14);
    assertThat(scenario.bench.last(WaitEnded.class).byKey()).isFalse();
  }

  @Test
  void wax_that_ran_out_is_taken_short_by_the_key_and_the_oil_follows() {
    Scenario scenario = Scenario.batch(Scenario.at(10));
    scenario.bench.pan.putOn("pot", Scenario.POT);
    scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
    scenario.add("600");
    scenario.bench.run(4);
    assertThat(scenario.prompt().confirm().orElseThrow().key()).isEqualTo("confirm.take-short");
    scenario.bench.say(new MakerCommand.GoOn());
    assertThat(scenario.taken().reason()).isEqualTo("short");
    scenario.bench.runUntil(Prompt.Kind.RETURN_POT, 20);
    scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(scenario.prompt().weighing().orElseThrow().target().roughGrams())
        .isCloseTo(48, within(0.05));
    assertThat(scenario.detail()).isEqualTo("detail.follows-wax");
  }

  @Test
  void with_no_scale_a_weight_is_entered_by_hand_and_marked_and_the_pot_weighed_when_it_is_back() {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(10));
    VirtualBench bench = scenario.bench;
    assertThat(refusal(scenario, byHand("55", "scale broken"))).isEqualTo("refused.scale-answers");
    bench.unplug();
    bench.run(3);
    assertThat(scenario.prompt().byHand()).isTrue();
    assertThat(refusal(scenario, byHand("55", " "))).isEqualTo("refused.reason-needed");
    assertThat(bench.say(byHand("55", "kitchen scale"))).isEmpty();
    assertThat(scenario.taken().how()).isEqualTo(How.BY_HAND);
    assertThat(scenario.taken().reason()).isEqualTo("kitchen scale");
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.MIX);
    bench.runUntil(Prompt.Kind.PLACE_VESSEL, 20);
    bench.say(byHand("252", "kitchen scale"));
    assertThat(scenario.taken().place()).isEqualTo(new Place(Place.Kind.VESSEL, 0));
    assertThat(scenario.taken().how()).isEqualTo(How.BY_HAND);
    bench.pan.liftOff("pot");
    bench.replug();
    bench.run(3);
    bench.pan.putOn("glass", Mass.ofGrams("180"));
    bench.runUntil(Prompt.Kind.FILL_VESSEL, 15);
    scenario.pour("252", 20);
    assertThat(scenario.settle().how()).isEqualTo(How.SETTLED);
  }

  @Test
  void after_wax_entered_by_hand_the_pot_is_weighed_before_oil_goes_in() {
    Scenario scenario = Scenario.batch(Scenario.at(10));
    VirtualBench bench = scenario.bench;
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    bench.unplug();
    bench.run(3);
    bench.say(byHand("698", "kitchen scale"));
    bench.pan.add(Mass.ofGrams("701"));
    bench.replug();
    bench.runUntil(Prompt.Kind.RETURN_POT, 30);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(bench.last(PotReweighed.class).gross().roughGrams()).isCloseTo(1053.4, within(0.3));
    scenario.pour("56", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @Test
  void a_repeated_tap_counts_once() {
    Scenario scenario = Scenario.batch(Scenario.at(10));
    var state = scenario.bench.state();
    var tap = new GuidanceInput.MakerSaid("same", new MakerCommand.GoOn(), scenario.bench.now());
    var first = state.on(tap);
    var second = first.next().on(tap);
    assertThat(first.events()).hasSize(1);
    assertThat(second.events()).isEmpty();
    assertThat(second.effects()).isEqualTo(first.effects());
  }

  @Test
  void a_temperature_is_noted_and_a_slip_of_the_finger_is_not() {
    Scenario scenario = Scenario.batch(Scenario.at(10));
    assertThat(scenario.bench.say(new MakerCommand.NoteTemperature(853))).isEmpty();
    assertThat(refusal(scenario, new MakerCommand.NoteTemperature(8530)))
        .isEqualTo("refused.temperature");
    assertThat(refusal(scenario, new MakerCommand.Abandon(""))).isEqualTo("refused.reason-needed");
    assertThat(scenario.bench.say(new MakerCommand.Abandon("power cut"))).isEmpty();
    assertThat(scenario.now()).isEqualTo("now.abandoned");
    assertThat(List.of(refusal(scenario, new MakerCommand.GoOn()))).contains("refused.no-batch");
  }

  private static MakerCommand byHand(String grams, String reason) {
    return new MakerCommand.EnterByHand(Mass.ofGrams(grams), reason);
  }

  private static String refusal(Scenario scenario, MakerCommand command) {
    return scenario.bench.say(command).orElseThrow().words().key();
  }
}
