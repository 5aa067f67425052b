package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.station.batch.Remedy;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.Cue;
import candlebench.station.guidance.GuidanceEvent.BatchScrapped;
import candlebench.station.guidance.GuidanceEvent.CureChecked;
import candlebench.station.guidance.GuidanceEvent.OverGone;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.RemedyChosen;
import candlebench.station.guidance.GuidanceEvent.Undone;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** 61 g of oil where 56 g was wanted, on 700 g of wax: it is said at once, and there is no way on but by a choice. */
class OverPourTest {

  private static Scenario over(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("61", 4);
    scenario.bench.runUntil(Prompt.Kind.OVER, 5);
    scenario.bench.run(3);
    return scenario;
  }

  private static Map<String, Prompt.Option> ways(Scenario scenario) {
    return scenario.prompt().choices().stream()
        .collect(Collectors.toMap(Prompt.Option::id, way -> way));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void it_is_announced_with_what_it_is_over_and_every_way_on(int rate) {
    Scenario scenario = over(rate);
    OverPoured announced = scenario.bench.last(OverPoured.class);
    assertThat(announced.target().roughGrams()).isCloseTo(56, within(0.05));
    assertThat(scenario.prompt().cue()).isEqualTo(Cue.OVER);
    assertThat(ways(scenario).keySet())
        .containsExactlyInAnyOrder("add-more", "keep", "take-back", "split-off", "scrap");
    assertThat(ways(scenario).get("take-back").whyNot().orElseThrow().key())
        .isEqualTo("closed.already-in-pot");
    assertThat(ways(scenario).get("keep").needsReason()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void there_is_no_way_on_without_a_choice(int rate) {
    Scenario scenario = over(rate);
    int before = scenario.takings();
    scenario.bench.run(60);
    assertThat(scenario.takings()).isEqualTo(before);
    assertThat(refusal(scenario, new MakerCommand.GoOn())).isEqualTo("refused.choose");
    assertThat(refusal(scenario, choose("take-back"))).isEqualTo("closed.already-in-pot");
    assertThat(refusal(scenario, choose("keep"))).isEqualTo("refused.reason-needed");
    assertThat(refusal(scenario, choose("nonsense"))).isEqualTo("refused.choose");
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.OVER);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void adding_wax_is_guided_and_the_cure_is_checked_by_weight(int rate) {
    Scenario scenario = over(rate);
    assertThat(scenario.bench.say(choose("add-more"))).isEmpty();
    RemedyChosen chosen = scenario.bench.last(RemedyChosen.class);
    assertThat(chosen.remedy()).isEqualTo(Remedy.Kind.ADD_MORE);
    assertThat(chosen.more().get(0).roughGrams()).isCloseTo(62.5, within(5.0));

    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_MORE);
    Mass wanted = scenario.prompt().weighing().orElseThrow().target();
    assertThat(wanted.minus(chosen.more().get(0)).abs()).isLessThan(Mass.ofGrams("0.001"));
    scenario.bench.pan.add(wanted);
    scenario.settle();
    CureChecked checked = scenario.bench.last(CureChecked.class);
    assertThat(checked.verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(checked.there().minus(checked.wanted()).abs()).isLessThan(Mass.ofGrams("0.1"));
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.MIX);
  }

  @Test
  void the_figures_are_those_worked_by_hand() {
    Scenario scenario = over(10);
    BatchProgress batch = scenario.bench.state().progress().running().orElseThrow();
    Mass wax = batch.charge().inPot().get(0);
    scenario.bench.say(choose("add-more"));
    RemedyChosen chosen = scenario.bench.last(RemedyChosen.class);
    Mass oil = scenario.taken().net();
    // x g over ask for x/0.08 g of wax: 12.5 g each.
    Mass expected = oil.times(25, 2).minus(wax);
    assertThat(chosen.more().get(0).minus(expected).abs()).isLessThan(Mass.ofGrams("0.000001"));
    assertThat(chosen.total().minus(oil.times(27, 2)).abs()).isLessThan(Mass.ofGrams("0.000001"));
  }

  @Test
  void kept_with_a_reason_it_is_on_record_as_over() {
    Scenario scenario = over(10);
    assertThat(scenario.bench.say(new MakerCommand.Choose("keep", "tested up to 9 %")))
        .isEmpty();
    assertThat(scenario.taken().verdict()).isEqualTo(Verdict.OVER);
    assertThat(scenario.taken().reason()).isEqualTo("tested up to 9 %");
    assertThat(scenario.bench.last(RemedyChosen.class).reached().percentText(1)).isEqualTo("8.7");
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.MIX);
  }

  @Test
  void taking_the_choice_back_brings_the_question_back() {
    Scenario scenario = over(10);
    scenario.bench.say(choose("add-more"));
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_MORE);
    assertThat(scenario.bench.say(new MakerCommand.Undo())).isEmpty();
    assertThat(scenario.bench.all(Undone.class)).hasSize(1);
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.OVER);
    scenario.bench.run(3);
    scenario.bench.say(new MakerCommand.Choose("keep", "better so"));
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.MIX);
  }

  @Test
  void split_off_and_made_up_it_comes_out_at_the_planned_total() {
    Scenario scenario = over(10);
    VirtualBench bench = scenario.bench;
    bench.say(choose("split-off"));
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.MIX);
    bench.runUntil(Prompt.Kind.SPLIT_OFF, 20);
    bench.run(1);
    bench.pan.add(scenario.prompt().weighing().orElseThrow().target().negated());
    scenario.settle();
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.ADD_MORE);
    bench.pan.add(scenario.prompt().weighing().orElseThrow().target());
    scenario.settle();
    assertThat(bench.last(CureChecked.class).verdict()).isEqualTo(Verdict.WITHIN);
    BatchProgress batch = bench.state().progress().running().orElseThrow();
    assertThat(batch.charge().contents().roughGrams()).isCloseTo(756, within(1.5));
  }

  @Test
  void scrapped_with_a_reason_the_batch_is_over_and_its_weights_stay() {
    Scenario scenario = over(10);
    assertThat(refusal(scenario, choose("scrap"))).isEqualTo("refused.reason-needed");
    scenario.bench.say(new MakerCommand.Choose("scrap", "wrong oil"));
    assertThat(scenario.bench.last(BatchScrapped.class).reason()).isEqualTo("wrong oil");
    assertThat(scenario.prompt().step()).isEqualTo(Prompt.Kind.DONE);
    assertThat(scenario.bench.state().progress().batch().orElseThrow().charge().weights())
        .hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void far_over_it_is_said_while_it_still_runs(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.bench.pan.flow(6, 0.25);
    scenario.bench.run(9);
    scenario.bench.runUntil(Prompt.Kind.OVER, 5);
    assertThat(scenario.bench.last(OverPoured.class).settled()).isFalse();
    assertThat(scenario.bench.last(OverPoured.class).net()).isLessThan(Mass.ofGrams("70"));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void alone_in_its_pot_what_is_over_can_be_taken_back(int rate) {
    Scenario scenario = Scenario.oilJobWithPot(Scenario.at(rate));
    scenario.pour("60", 4);
    scenario.bench.runUntil(Prompt.Kind.OVER, 5);
    scenario.bench.run(2);
    scenario.add("-4");
    scenario.settle();
    assertThat(scenario.bench.last(OverGone.class).choice()).isEqualTo("taken-back");
    assertThat(scenario.taken().verdict()).isEqualTo(Verdict.WITHIN);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 10, 25})
  void a_spoon_left_on_the_pot_is_no_oil_and_the_maker_says_so(int rate) {
    Scenario scenario = Scenario.oilOnWax(Scenario.at(rate));
    scenario.pour("52", 4);
    scenario.bench.run(2);
    scenario.bench.pan.lean("spoon", 9);
    scenario.bench.runUntil(Prompt.Kind.OVER, 8);
    scenario.bench.pan.lean("spoon", 0);
    scenario.bench.run(3);
    assertThat(scenario.now()).isEqualTo("now.over-back");
    scenario.bench.say(choose("was-touched"));
    scenario.pour("4", 2);
    assertThat(scenario.settle().verdict()).isEqualTo(Verdict.WITHIN);
  }

  private static MakerCommand choose(String way) {
    return new MakerCommand.Choose(way, "");
  }

  private static String refusal(Scenario scenario, MakerCommand command) {
    return scenario.bench.say(command).orElseThrow().words().key();
  }
}
