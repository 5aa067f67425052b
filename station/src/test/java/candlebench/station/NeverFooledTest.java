package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Tolerance;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleQuirks.Quirk;
import candlebench.simulator.ScaleTraits;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.Loss;
import candlebench.station.batch.Part;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.VesselKind;
import candlebench.station.batch.Waits;
import candlebench.station.batch.Way;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.Cue;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Prompt;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What happens at a bench fools nobody, on a scale by 0.1 g and on one by 1 g: no over-pour is announced that is none, and what is taken
 * is what a scale without noise would show, or is weighed again.
 */
class NeverFooledTest {

  /** A scale, and oil to be weighed on it within what it can tell. */
  enum Bench {
    TENTHS(ScaleTraits.benchThreeKilograms(), "0.1", "56", "0.5"),
    WHOLE_GRAMS(ScaleTraits.kitchenFiveKilograms(), "1", "200", "4");

    private final ScaleTraits traits;
    private final Division division;
    private final Mass target;
    private final Mass allowed;
    private final Recipe recipe;

    Bench(ScaleTraits traits, String step, String target, String allowed) {
      this.traits = traits;
      this.division = new Division(Mass.ofGrams(step));
      this.target = Mass.ofGrams(target);
      this.allowed = Mass.ofGrams(allowed);
      Tolerance tolerance = Tolerance.ofGrams(allowed, allowed);
      Part oil = new Part(
          "Quay Cedar (invented)",
          PartKind.OIL,
          Way.POURED,
          Load.ofTotal("100"),
          tolerance,
          Fraction.ZERO);
      recipe = new Recipe(
          "harbour-lane-oil",
          "Oil into a pot (invented)",
          List.of(oil),
          new VesselKind("Pot", this.target, tolerance),
          false,
          Loss.NONE,
          Waits.NONE,
          "");
    }

    Scenario begun(Quirk... quirks) {
      ScaleQuirks on = ScaleQuirks.none();
      for (Quirk quirk : quirks) on = on.with(quirk);
      Scenario scenario = Scenario.oilJob(VirtualBench.Make.of(BenchSetup.of(List.of(recipe)))
          .traits(traits)
          .quirks(on)
          .seed(7));
      scenario.bench.promises.mayBeOff(division.steps(2).text(MassUnit.GRAM, 1));
      scenario.bench.pan.putOn("pot", Scenario.POT);
      scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
      return scenario;
    }

    /** Poured to two allowances short, and left alone for a moment. */
    Scenario nearlyThere(Quirk... quirks) {
      Scenario scenario = begun(quirks);
      scenario.pour(target.minus(allowed.times(2)).text(MassUnit.GRAM, 1), 4);
      scenario.bench.run(2);
      return scenario;
    }

    /** The rest goes in, and what is taken must be right. */
    void finish(Scenario scenario) {
      assertThat(scenario.bench.all(OverPoured.class)).as("cried wolf").isEmpty();
      assertThat(scenario.takings()).as("taken too early").isZero();
      scenario.bench.run(3);
      scenario.bench.pan.add(target.minus(poured(scenario)));
      scenario.settle();
      rightlyTaken(scenario);
      assertThat(scenario.bench.all(OverPoured.class)).as("cried wolf").isEmpty();
    }

    void rightlyTaken(Scenario scenario) {
      WeightAccepted taken = scenario.taken();
      Mass off = taken.net().minus(division.nearest(poured(scenario))).abs();
      assertThat(off).as("%s taken", taken.net()).isLessThanOrEqualTo(division.step());
    }

    Mass poured(Scenario scenario) {
      return scenario.bench.pan.of("pot").minus(Scenario.POT);
    }
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_piece_that_falls_hard(Bench bench) {
    Scenario scenario = bench.nearlyThere();
    for (int i = 0; i < 4; i++) {
      scenario.bench.pan.drop(bench.allowed.times(1, 8), 0.3);
      scenario.bench.run(0.4);
    }
    bench.finish(scenario);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void knocks_on_the_bench(Bench bench) {
    Scenario scenario = bench.nearlyThere();
    for (int i = 0; i < 12; i++) {
      scenario.bench.pan.knock(i % 2 == 0 ? 40 : -40);
      scenario.bench.run(0.1 + 0.15 * i);
    }
    bench.finish(scenario);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_spoon_laid_on_the_pan_for_two_seconds(Bench bench) {
    Scenario scenario = bench.nearlyThere();
    scenario.bench.pan.lean("spoon", 25);
    scenario.bench.run(2);
    scenario.bench.pan.lean("spoon", 0);
    bench.finish(scenario);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_hand_that_leans_on_the_pan(Bench bench) {
    Scenario scenario = bench.nearlyThere();
    for (int i = 0; i < 30; i++) {
      scenario.bench.pan.lean("hand", 60 + 20 * Math.sin(i));
      scenario.bench.run(0.1);
    }
    scenario.bench.pan.lean("hand", 0);
    bench.finish(scenario);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_draught_for_ten_seconds(Bench bench) {
    Scenario scenario = bench.nearlyThere();
    scenario.bench.pan.draught(0.4);
    scenario.bench.run(10);
    scenario.bench.pan.draught(0);
    bench.finish(scenario);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_hot_pot_under_which_the_scale_walks(Bench bench) {
    Scenario scenario = bench.nearlyThere();
    scenario.bench.pan.liftOff("pot");
    scenario.bench.pan.putOnHot(
        "pot", Scenario.POT.plus(bench.target).minus(bench.allowed.times(2)));
    scenario.bench.run(4);
    scenario.bench.pan.add(bench.target.minus(bench.poured(scenario)));
    scenario.settle();
    bench.rightlyTaken(scenario);
    assertThat(scenario.bench.all(OverPoured.class)).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void drops_that_zero_tracking_would_eat_are_counted(Bench bench) {
    Scenario scenario = bench.begun(Quirk.TRACKS_ZERO, Quirk.TRACKS_TARED_ZERO);
    for (int i = 0; i < 60; i++) {
      scenario.add("0.03");
      scenario.bench.run(0.77);
    }
    scenario.bench.run(1);
    Mass seen = scenario.prompt().weighing().flatMap(Prompt.Amounts::net).orElseThrow();
    assertThat(seen.minus(bench.division.nearest(bench.poured(scenario))).abs())
        .isLessThanOrEqualTo(bench.division.step());
    scenario.pour(
        bench
            .target
            .minus(bench.poured(scenario))
            .minus(bench.allowed.times(2))
            .text(MassUnit.GRAM, 1),
        4);
    bench.finish(scenario);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void no_flag_of_rest(Bench bench) {
    bench.finish(bench.nearlyThere(Quirk.NEVER_SAYS_STABLE));
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_flag_of_rest_that_lies(Bench bench) {
    Scenario scenario = bench.nearlyThere(Quirk.ALWAYS_SAYS_STABLE);
    scenario.bench.pan.flow(0.12 * bench.allowed.roughGrams(), 0.1);
    scenario.bench.run(7);
    scenario.bench.pan.flow(0, 0);
    bench.finish(scenario);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void conversions_sent_three_or_four_times(Bench bench) {
    Scenario scenario = bench.nearlyThere(Quirk.REPEATS_CONVERSIONS, Quirk.ALWAYS_SAYS_STABLE);
    scenario.bench.pan.flow(0.12 * bench.allowed.roughGrams(), 0.1);
    scenario.bench.run(7);
    scenario.bench.pan.flow(0, 0);
    bench.finish(scenario);
  }

  /** Short of the target, within what is allowed, by more than drops bring: short streams are asked for, then it is taken as it is. */
  @ParameterizedTest
  @EnumSource(Bench.class)
  void what_nobody_tops_up_is_taken_in_the_end(Bench bench) {
    for (Quirk flag : new Quirk[] {Quirk.ALWAYS_SAYS_STABLE, Quirk.NEVER_SAYS_STABLE}) {
      Scenario scenario = bench.begun(flag);
      Mass poured = bench.target.minus(bench.allowed.times(3, 8));
      scenario.pour(poured.text(MassUnit.GRAM, 1), 4);
      scenario.bench.run(45);
      assertThat(scenario.takings())
          .as("%s short by 3/8 of what is allowed", flag)
          .isEqualTo(1);
    }
  }

  /** What creeps by less than a division in a second is taken for rest by any rule; what it then adds must be noticed. */
  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_creeping_stream_is_not_taken_or_the_weight_is_opened_again(Bench bench) {
    for (Quirk flag : new Quirk[] {Quirk.ALWAYS_SAYS_STABLE, Quirk.NEVER_SAYS_STABLE}) {
      Scenario scenario = bench.begun(flag);
      Mass first = bench.target.minus(bench.allowed.times(1, 8));
      scenario.pour(first.text(MassUnit.GRAM, 1), 4);
      scenario.bench.pan.flow(0.05, 0.1);
      scenario.bench.run(9);
      scenario.bench.pan.flow(0, 0);
      if (scenario.takings() == 0) scenario.settle();
      scenario.bench.run(11);
      Mass off = scenario
          .taken()
          .net()
          .minus(bench.division.nearest(bench.poured(scenario)))
          .abs();
      boolean opened = !scenario.bench.all(AcceptanceReopened.class).isEmpty();
      assertThat(off.isMoreThan(bench.division.step()) && !opened)
          .as("%s off", off)
          .isFalse();
      assertThat(scenario.bench.all(OverPoured.class)).isEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_drip_after_the_weight_was_taken_opens_it_again(Bench bench) {
    Scenario scenario = bench.nearlyThere();
    scenario.bench.pan.add(bench.target.minus(bench.poured(scenario)));
    scenario.settle();
    Mass more = bench.division.steps(2);
    scenario.bench.run(2);
    scenario.bench.pan.add(more);
    scenario.bench.run(6);
    assertThat(scenario.bench.all(AcceptanceReopened.class)).hasSize(1);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_number_older_than_a_second(Bench bench) {
    Scenario scenario = bench.nearlyThere();
    scenario.bench.unplug();
    scenario.bench.run(1.2);
    assertThat(scenario.prompt().cue()).isEqualTo(Cue.WAITING);
    assertThat(scenario.prompt().weighing().orElseThrow().net()).isEmpty();
    scenario.bench.replug();
    bench.finish(scenario);
  }

  @ParameterizedTest
  @EnumSource(Bench.class)
  void a_slow_loss_after_a_hot_pour_is_rest(Bench bench) {
    for (double loss : new double[] {0.007, 0.02}) {
      Scenario scenario = bench.nearlyThere();
      scenario.bench.pan.add(bench.target.minus(bench.poured(scenario)));
      scenario.bench.pan.flow(-loss, 0);
      scenario.settle();
      bench.rightlyTaken(scenario);
      scenario.bench.run(11);
      assertThat(scenario.bench.all(AcceptanceReopened.class))
          .as("%s g/s", loss)
          .isEmpty();
    }
  }
}
