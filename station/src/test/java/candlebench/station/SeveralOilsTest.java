package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.station.batch.Load;
import candlebench.station.batch.Loss;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.Recipes;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent.CureChecked;
import candlebench.station.guidance.GuidanceEvent.RemedyChosen;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Wax, an additive, a dye and three oils, one after the other into one pot; the second oil is poured over. */
class SeveralOilsTest {
  private static final Recipe MADE = Recipes.of(
      "200",
      Loss.NONE,
      Recipes.WAX,
      Recipes.part("additive", PartKind.ADDITIVE, Load.ofWax("1")),
      Recipes.part("dye", PartKind.DYE, Load.ofWax("2")),
      Recipes.part("first oil", PartKind.OIL, Load.ofWax("4")),
      Recipes.part("second oil", PartKind.OIL, Load.ofTotal("3")),
      Recipes.part("third oil", PartKind.OIL, Load.ofWax("2")));

  private final VirtualBench bench =
      new VirtualBench(VirtualBench.Make.of(BenchSetup.of(List.of(MADE))));

  private WeightAccepted add(Mass amount) {
    int before = bench.all(WeightAccepted.class).size();
    bench.pan.add(amount);
    for (int tenth = 0; tenth < 200 && bench.all(WeightAccepted.class).size() == before; tenth++)
      bench.run(0.1);
    assertThat(bench.all(WeightAccepted.class)).as("%s", bench.prompt()).hasSize(before + 1);
    return bench.last(WeightAccepted.class);
  }

  private Mass wanted() {
    return bench.prompt().weighing().orElseThrow().target();
  }

  private void weigh(String part) {
    assertThat(bench.prompt().weighing().orElseThrow().name()).isEqualTo(part);
    assertThat(add(wanted()).verdict()).isEqualTo(Verdict.WITHIN);
  }

  @Test
  void each_is_asked_for_in_turn_and_one_oil_over_is_cured_by_more_of_all_that_is_in() {
    bench.run(3);
    bench.start("test", 4);
    bench.run(1);
    bench.pan.putOn("pot", Mass.ofGrams("400"));
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    weigh("wax");
    bench.say(new MakerCommand.GoOn());
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    for (String part : List.of("additive", "dye", "first oil")) weigh(part);
    Map<Integer, Mass> before = inPot();

    Mass target = wanted();
    bench.pan.add(target.times(11, 10));
    bench.runUntil(Prompt.Kind.OVER, 10);
    bench.run(3);
    assertThat(bench.say(new MakerCommand.Choose("add-more", ""))).isEmpty();
    RemedyChosen chosen = bench.last(RemedyChosen.class);
    assertThat(chosen.more().keySet()).containsExactlyInAnyOrder(0, 1, 2, 3);
    chosen
        .more()
        .forEach((part, more) -> assertThat(more.roughGrams())
            .isCloseTo(before.get(part).roughGrams() / 10, within(1.5)));
    for (String part : List.of("wax", "additive", "dye", "first oil")) weigh(part);
    assertThat(bench.all(CureChecked.class))
        .hasSize(4)
        .allMatch(checked -> checked.verdict() == Verdict.WITHIN);

    weigh("third oil");
    Mass wax = inPot().get(0);
    assertThat(inPot().get(5).roughGrams()).isCloseTo(wax.roughGrams() * 0.02, within(0.2));
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.MIX);
    assertThat(bench.replayed()).isEqualTo(bench.events);
  }

  private Map<Integer, Mass> inPot() {
    return bench.state().progress().running().orElseThrow().charge().inPot();
  }
}
