package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.PotTaught;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import candlebench.station.journal.CheckpointJson;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The right pot, rightly emptied of its own weight. Two pots are known: 352 g and 461 g. */
class KnownPotsTest {

  private static VirtualBench.Make make(int rate) {
    return VirtualBench.Make.of(Scenario.knowingPots()).rate(rate).seed(rate);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void within_two_per_cent_it_is_the_pot(int rate) {
    for (String grams : new String[] {"345.5", "352", "358.5"}) {
      Scenario scenario = Scenario.oilJob(make(rate));
      scenario.bench.pan.putOn("pot", Mass.ofGrams(grams));
      scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
      assertThat(scenario.bench.last(PotTared.class).pot()).isEqualTo("small");
    }
  }

  @Test
  void a_pot_weighed_once_is_known_from_then_on_and_after_a_restart() throws Exception {
    VirtualBench bench = new VirtualBench(make(10));
    bench.run(3);
    assertThat(bench.say(new MakerCommand.TeachPot("jug", "scale", "Robin"))).isPresent();
    bench.pan.putOn("jug", Mass.ofGrams("611.7"));
    bench.run(4);
    assertThat(bench.say(new MakerCommand.TeachPot(" ", "scale", "Robin"))).isPresent();
    assertThat(bench.say(new MakerCommand.TeachPot("jug", "no such scale", "Robin")))
        .isPresent();
    assertThat(bench.say(new MakerCommand.TeachPot("jug", "scale", "Robin"))).isEmpty();
    assertThat(bench.last(PotTaught.class).empty().roughGrams()).isCloseTo(611.7, within(0.2));
    bench.pan.liftOff("jug");
    bench.run(2);
    bench.restart(Duration.ofSeconds(10));
    bench.run(2);
    bench.start("harbour-lane-oil", 1);
    bench.run(1);
    bench.pan.putOn("jug", Mass.ofGrams("612"));
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(bench.last(PotTared.class).pot()).isEqualTo("jug");
    assertThat(bench.say(new MakerCommand.TeachPot("jug", "scale", "Robin"))).isPresent();
    assertThat(
            CheckpointJson.bench(CheckpointJson.text(bench.state().progress())).taught())
        .isEqualTo(bench.state().progress().taught());
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void with_a_spoon_in_it_the_pot_is_not_weighed_until_the_spoon_is_out(int rate) {
    Scenario scenario = Scenario.oilJob(make(rate));
    scenario.bench.pan.putOn("pot", Mass.ofGrams("377"));
    scenario.bench.run(15);
    assertThat(scenario.bench.all(PotTared.class)).isEmpty();
    assertThat(scenario.detail()).isEqualTo("detail.something-in-pot");
    scenario.add("-25");
    scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(scenario.bench.last(PotTared.class).pot()).isEqualTo("small");
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_pot_that_is_none_of_them_or_loaded_already_is_used_only_when_told(int rate) {
    Scenario scenario = Scenario.oilJob(make(rate));
    scenario.bench.pan.putOn("pot", Mass.ofGrams("612"));
    scenario.bench.run(15);
    assertThat(scenario.bench.all(PotTared.class)).isEmpty();
    assertThat(scenario.detail()).isEqualTo("detail.unknown-pot");
    assertThat(scenario.bench.say(new MakerCommand.GoOn())).isEmpty();
    assertThat(scenario.bench.last(PotTared.class).pot()).isEmpty();
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
  }

  @Test
  void where_no_pot_is_known_a_spoon_taken_out_later_is_made_good_by_weighing_it_again() {
    Scenario scenario = Scenario.oilJob(Scenario.at(10));
    scenario.bench.pan.putOn("pot", Mass.ofGrams("377.4"));
    scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
    scenario.add("-25");
    scenario.bench.run(20);
    assertThat(scenario.bench.all(PotTared.class)).hasSize(2);
    scenario.pour("56", 4);
    scenario.settle();
    assertThat(scenario.bench.last(PotTared.class).tare().roughGrams())
        .isCloseTo(352.4, org.assertj.core.api.Assertions.within(0.3));
  }

  @Test
  void what_was_poured_into_a_pot_that_was_tared_away_is_not_taken_for_a_pot() {
    Scenario scenario = Scenario.oilJob(Scenario.at(10));
    scenario.bench.pan.putOn("pot", Scenario.POT);
    scenario.bench.run(1.5);
    scenario.bench.press(candlebench.simulator.ScaleKey.TARE);
    scenario.bench.run(3);
    scenario.pour("60", 6);
    scenario.bench.run(8);
    assertThat(scenario.bench.all(PotTared.class)).isEmpty();
    assertThat(scenario.detail()).isEqualTo("detail.grew-pot");
  }
}
