package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.simulator.CellTraits;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleQuirks.Quirk;
import candlebench.simulator.ScaleTraits;
import candlebench.station.guidance.Cue;
import candlebench.station.guidance.Trust;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Only settled weights are taken, by the station's own clock; the scale's flag may delay that, but neither hasten nor block it. */
class SettlingTest {
  private static final CellTraits QUIET =
      CellTraits.benchThreeKilograms().withNoise(0.01).withoutDrift();

  private static VirtualBench.Make quiet(int rate) {
    return Scenario.at(rate)
        .traits(ScaleTraits.benchThreeKilograms().with(QUIET).withSendsPerSecond(rate));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_truly_still_load_is_counted_in_within_a_second_and_a_half(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(quiet(rate));
    scenario.pour("56", 4);
    scenario.bench.run(1.5 + 1.0);
    // The scale's own filter takes a second to come within half a division; the rest is ours.
    assertThat(scenario.prompt().countIn()).isPresent();
    scenario.settle();
  }

  @ParameterizedTest
  @EnumSource(
      value = Quirk.class,
      names = {
        "ALWAYS_SAYS_STABLE",
        "NEVER_SAYS_STABLE",
        "FLAG_LATE_AND_FLICKERING",
        "REPEATS_CONVERSIONS",
        "ARRIVES_UNEVENLY"
      })
  void a_flag_that_lies_comes_late_or_never_takes_nothing_wrong_and_blocks_nothing(Quirk quirk) {
    for (int rate : new int[] {2, 5, 10, 25}) {
      Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate).quirks(ScaleQuirks.of(quirk)));
      scenario.pour("54", 4);
      scenario.bench.pan.flow(0.15, 0.25);
      scenario.bench.run(10);
      assertThat(scenario.takings()).as("while it flows, %d a second", rate).isZero();
      scenario.bench.pan.flow(0, 0);
      scenario.add("0.4");
      assertThat(scenario.settle().net().roughGrams()).isCloseTo(55.9, within(0.3));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_thin_stream_of_a_twentieth_of_a_gram_a_second_is_not_taken_for_rest(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(quiet(rate));
    scenario.pour("55.6", 4);
    scenario.bench.pan.flow(0.05, 0.1);
    scenario.bench.run(12);
    assertThat(scenario.takings()).isZero();
    scenario.bench.pan.flow(0, 0);
    scenario.settle();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_slow_loss_of_steam_is_rest(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(quiet(rate));
    scenario.pour("56.2", 4);
    scenario.bench.pan.flow(-0.02, 0);
    scenario.settle();
    scenario.bench.run(12);
    assertThat(
            scenario.bench.all(candlebench.station.guidance.GuidanceEvent.AcceptanceReopened.class))
        .isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void on_a_bench_that_shakes_three_times_a_second_nothing_is_taken(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(quiet(rate));
    scenario.pour("56", 4);
    scenario.bench.around(nanos ->
        scenario.bench.pan.lean("shaking bench", 1.5 * Math.sin(2 * Math.PI * 3.1 * nanos / 1e9)));
    scenario.bench.run(20);
    assertThat(scenario.takings()).isZero();
    scenario.bench.around(nanos -> scenario.bench.pan.lean("shaking bench", 0));
    scenario.settle();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_gap_of_two_seconds_is_no_rest_and_an_old_number_is_not_shown(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(quiet(rate));
    scenario.pour("56", 4);
    scenario.bench.run(1.2);
    for (int gap = 0; gap < 4; gap++) {
      scenario.bench.unplug();
      scenario.bench.run(2);
      assertThat(scenario.prompt().weighing().orElseThrow().net()).isEmpty();
      assertThat(scenario.prompt().weighing().orElseThrow().trust()).isEqualTo(Trust.STALE);
      assertThat(scenario.prompt().cue()).isEqualTo(Cue.WAITING);
      scenario.bench.replug();
      scenario.bench.run(1.5);
    }
    assertThat(scenario.takings()).isZero();
    scenario.settle();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void overload_is_no_weight(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(quiet(rate));
    scenario.bench.pan.add(Mass.ofGrams("3000"));
    scenario.bench.run(4);
    assertThat(scenario.prompt().trouble().orElseThrow().key()).isEqualTo("trouble.overload");
    assertThat(scenario.prompt().weighing().orElseThrow().net()).isEmpty();
    scenario.bench.pan.add(Mass.ofGrams("-2944"));
    assertThat(scenario.settle().net().roughGrams()).isCloseTo(56, within(0.2));
  }
}
