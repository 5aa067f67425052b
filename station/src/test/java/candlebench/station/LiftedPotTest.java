package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.station.guidance.Cue;
import candlebench.station.guidance.GuidanceEvent.Answered;
import candlebench.station.guidance.GuidanceEvent.Asked;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pot is lifted in mid pour, and comes back the same, heavier, lighter, or as another pot. */
class LiftedPotTest {

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void put_back_as_it_was_the_pour_goes_on(int rate) {
    Scenario scenario = lifted(rate);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.AWAY);
    assertThat(scenario.prompt().cue()).isEqualTo(Cue.WAITING);

    scenario.bench.pan.putOn("pot", Mass.ofGrams("382.4"));
    scenario.bench.run(4);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    assertThat(scenario.bench.all(Asked.class)).isEmpty();
    scenario.pour("26", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void heavier_by_10_g_the_bench_asks_and_counts_it_when_told(int rate) {
    Scenario scenario = lifted(rate);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("392.4"));
    scenario.bench.run(4);
    assertThat(scenario.now()).isEqualTo("now.heavier");
    assertThat(scenario.bench.say(new MakerCommand.GoOn()).orElseThrow().words().key())
        .isEqualTo("refused.choose");
    scenario.bench.run(20);
    assertThat(scenario.takings()).isZero();

    assertThat(scenario.bench.say(new MakerCommand.Choose("count-it", ""))).isEmpty();
    assertThat(scenario.bench.last(Answered.class).less()).isFalse();
    scenario.pour("16", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void lighter_by_10_g_the_bench_asks_and_counts_what_is_left(int rate) {
    Scenario scenario = lifted(rate);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("372.4"));
    scenario.bench.run(4);
    assertThat(scenario.now()).isEqualTo("now.lighter");
    scenario.bench.say(new MakerCommand.Choose("count-it", ""));
    scenario.pour("36", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void another_pot_is_asked_about_and_the_right_one_ends_the_question(int rate) {
    Scenario scenario = lifted(rate);
    scenario.bench.pan.putOn("other", Mass.ofGrams("461"));
    scenario.bench.run(4);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ASK);
    scenario.bench.pan.liftOff("other");
    scenario.bench.run(3);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("382.4"));
    scenario.bench.run(4);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    assertThat(scenario.bench.all(Answered.class)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void before_anything_is_in_it_another_pot_is_simply_weighed_empty(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(3);
    scenario.bench.pan.putOn("other", Mass.ofGrams("461"));
    scenario.bench.run(8);
    assertThat(scenario.bench.all(PotTared.class)).hasSize(2);
    scenario.pour("56", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
    assertThat(scenario.taken().tare().roughGrams()).isCloseTo(461, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_spoon_beside_the_pot_is_taken_away_in_mid_pour_and_what_was_poured_stays(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.pour("10", 4);
    scenario.bench.run(3);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(2);
    scenario.bench.pan.putOn("spoon", Mass.ofGrams("25"));
    scenario.bench.run(3);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("362.4"));
    scenario.bench.run(4);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    scenario.pour("20", 4);
    scenario.bench.run(2);
    scenario.bench.pan.liftOff("spoon");
    scenario.bench.run(6);
    assertThat(scenario.now()).isEqualTo("now.lighter");
    assertThat(scenario.bench.say(new MakerCommand.Choose("was-beside", ""))).isEmpty();
    scenario.pour("26", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.4));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void twenty_grams_spooned_out_in_mid_pour_are_asked_about_and_poured_again(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.pour("30", 4);
    scenario.bench.run(2);
    scenario.add("-20");
    scenario.bench.run(6);
    assertThat(scenario.now()).isEqualTo("now.lighter");
    scenario.bench.say(new MakerCommand.Choose("count-it", ""));
    assertThat(scenario.bench.last(Answered.class).choice()).isEqualTo("count-it");
    scenario.pour("46", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.4));
  }

  private static Scenario lifted(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.pour("30", 4);
    scenario.bench.run(3);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(3);
    return scenario;
  }
}
