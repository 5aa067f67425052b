package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.simulator.MakerTraits;
import candlebench.simulator.ScaleKey;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.station.guidance.GuidanceEvent.Asked;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.WaitEnded;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import java.time.Duration;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The program is killed and started again, or the maker goes away and comes back: the bench is at the same step and says what is known. */
class ComeBackTest {

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void killed_in_mid_pour_it_goes_on_from_what_stood_there(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("30", 4);
    scenario.bench.run(4);
    scenario.bench.restart(Duration.ofMinutes(2));
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.AWAY);
    scenario.bench.run(4);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    assertThat(scenario.bench.all(Asked.class)).isEmpty();
    scenario.pour("26", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void ten_grams_more_than_was_left_are_noticed_and_asked_about(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("30", 4);
    scenario.bench.run(4);
    scenario.bench.pan.add(Mass.ofGrams("0"));
    scenario.bench.unplug();
    scenario.add("10");
    scenario.bench.restart(Duration.ofHours(1));
    scenario.bench.replug();
    scenario.bench.run(4);
    assertThat(scenario.now()).isEqualTo("now.heavier");
    scenario.bench.say(new MakerCommand.Choose("count-it", ""));
    scenario.pour("16", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void killed_with_an_over_pour_open_it_still_asks_for_a_choice(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("61", 4);
    scenario.bench.runUntil(Prompt.Kind.OVER, 5);
    scenario.bench.run(2);
    scenario.bench.restart(Duration.ofSeconds(20));
    scenario.bench.run(5);
    if (scenario.prompt().step() == Prompt.Kind.ASK)
      scenario.bench.say(new MakerCommand.Choose("count-it", ""));
    scenario.bench.run(2);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.OVER);
    assertThat(scenario.bench.say(new MakerCommand.Choose("add-more", ""))).isEmpty();
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_MORE);
  }

  @Test
  void a_wait_runs_on_by_the_wall_clock_while_the_program_is_away() {
    Scenario scenario = Scenario.batch(Scenario.at(10));
    VirtualBench bench = scenario.bench;
    bench.pan.putOn("pot", Scenario.POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    scenario.add("700");
    bench.runUntil(Prompt.Kind.MELT, 15);
    bench.run(5);
    bench.restart(Duration.ofSeconds(4));
    bench.run(0.5);
    assertThat(bench.prompt().timer().orElseThrow().remainingNanos() / 1e9)
        .isCloseTo(5.5, within(0.3));
    bench.run(6);
    assertThat(bench.all(WaitEnded.class)).hasSize(1);
  }

  @Test
  void killed_while_a_vessel_fills_the_vessel_is_found_again() {
    Scenario scenario = Scenario.atVessels(Scenario.at(10));
    VirtualBench bench = scenario.bench;
    bench.pan.putOn("glass", Mass.ofGrams("181"));
    bench.runUntil(Prompt.Kind.FILL_VESSEL, 15);
    scenario.pour("100", 20);
    bench.run(4);
    bench.restart(Duration.ofMinutes(1));
    bench.run(4);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.FILL_VESSEL);
    scenario.pour("152", 20);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(252, within(0.3));
  }

  @Test
  void next_day_with_the_scale_off_and_on_again_the_pot_is_lifted_and_put_back() {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(10));
    scenario.pour("30", 4);
    scenario.bench.run(4);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.restart(Duration.ofHours(20));
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(6);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.AWAY);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(3);
    assertThat(scenario.prompt().trouble()).isPresent();
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(1);
    scenario.bench.press(ScaleKey.ON_OFF);
    scenario.bench.run(5);
    scenario.bench.pan.putOn("pot", Mass.ofGrams("1082.4"));
    scenario.bench.run(4);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    scenario.pour("26", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 60, 600})
  void the_maker_is_away_for_minutes_and_the_pour_goes_on(int minutes) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(2));
    scenario.pour("30", 4);
    scenario.bench.run(minutes * 60 / (minutes > 60 ? 20 : 1));
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_PART);
    scenario.pour("26", 4);
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.4));
  }

  static Stream<Integer> seeds() {
    return IntStream.range(0, 24).boxed();
  }

  /** The promises of the bench hold across every kill: nothing recorded is lost or doubled, and the batch comes to its end. */
  @ParameterizedTest
  @MethodSource("seeds")
  void killed_at_random_moments_a_batch_still_runs_to_done(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int rate = new int[] {2, 5, 10, 25}[seed % 4];
    VirtualBench bench = new VirtualBench(Scenario.at(rate).seed(seed));
    bench.run(3);
    bench.start("harbour-lane-quick", 2);
    VirtualMaker hands = new VirtualMaker(MakerTraits.usual(), Slips.none(), seed, bench.nanos());
    FollowingMaker maker = new FollowingMaker(bench, hands, Scenario.POT, seed);
    bench.around(maker::advanceTo);
    int kills = 0;
    for (int second = 0; second < 1500; second++) {
      if (bench.prompt().step() == Prompt.Kind.DONE) break;
      bench.run(1);
      if (kills < 8 && random.nextInt(25) == 0) {
        kills++;
        bench.restart(Duration.ofMillis(random.nextInt(200, 20_000)));
      }
    }
    assertThat(bench.all(BatchDone.class))
        .as("seed %d, %s", seed, bench.prompt())
        .hasSize(1);
    assertThat(kills).isPositive();
    long vessels = bench.all(WeightAccepted.class).stream()
        .map(weight -> weight.place())
        .filter(place -> place.kind() == candlebench.station.guidance.Place.Kind.VESSEL)
        .distinct()
        .count();
    assertThat(vessels).isEqualTo(2);
  }
}
