package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.shared.Verdict;
import candlebench.simulator.ScaleTraits;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.Loss;
import candlebench.station.batch.Part;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.Recipes;
import candlebench.station.batch.Way;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent.CupTared;
import candlebench.station.guidance.GuidanceEvent.CupTipped;
import candlebench.station.guidance.GuidanceEvent.OverGone;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A little dye, weighed in a cup on a fine scale while the pot stands on the other. */
class InCupTest {
  private static final Part DYE = new Part(
      "dye",
      PartKind.DYE,
      Way.IN_CUP,
      Load.ofWax("0.2"),
      Tolerance.ofGrams("0.05", "0.05"),
      Fraction.ZERO);
  private static final Recipe MADE = Recipes.of(
      "200", Loss.NONE, Recipes.WAX, DYE, Recipes.part("oil", PartKind.OIL, Load.ofWax("8")));
  private static final Mass CUP = Mass.ofGrams("41.3");

  private final VirtualBench bench = new VirtualBench(VirtualBench.Make.of(new BenchSetup(
          List.of(BenchSetup.Scale.named("bench"), BenchSetup.Scale.named("fine")),
          List.of(),
          List.of(MADE),
          BenchSetup.Timing.USUAL,
          ZoneOffset.UTC))
      .beside(ScaleTraits.balanceFiveHundredGrams()));

  private void waxMelted() {
    bench.run(3);
    bench.start("test", 4);
    bench.run(1);
    bench.pan.putOn("pot", Mass.ofGrams("400"));
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    bench.pan.add(bench.prompt().weighing().orElseThrow().target());
    bench.runUntil(Prompt.Kind.MELT, 15);
    bench.say(new MakerCommand.GoOn());
    bench.runUntil(Prompt.Kind.PLACE_CUP, 15);
  }

  private void cupOn() {
    bench.pan(1).putOn("cup", CUP);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
  }

  private WeightAccepted dye(String grams) {
    bench.pan(1).add(Mass.ofGrams(grams));
    bench.runUntil(Prompt.Kind.TIP_CUP, 20);
    return bench.last(WeightAccepted.class);
  }

  /** Pours the cup into the pot on the other scale; a little stays. */
  private void tip(Mass poured, String stays) {
    bench.pan(1).liftOff("cup");
    bench.run(2);
    bench.pan.add(poured.minus(Mass.ofGrams(stays)));
    bench.run(1);
    bench.pan(1).putOn("cup", CUP.plus(Mass.ofGrams(stays)));
  }

  private BatchProgress batch() {
    return bench.state().progress().running().orElseThrow();
  }

  @Test
  void the_part_is_weighed_on_the_fine_scale_and_what_clings_to_the_cup_is_counted() {
    waxMelted();
    cupOn();
    assertThat(bench.last(CupTared.class).scaleName()).isEqualTo("fine");
    Mass target = bench.prompt().weighing().orElseThrow().target();
    assertThat(target.roughGrams()).isCloseTo(1.48, within(0.02));
    WeightAccepted weight = dye("1.49");
    assertThat(weight.scaleName()).isEqualTo("fine");
    assertThat(weight.verdict()).isEqualTo(Verdict.WITHIN);
    tip(Mass.ofGrams("1.49"), "0.06");
    bench.runUntil(Prompt.Kind.ADD_PART, 20);
    assertThat(bench.last(CupTipped.class).stayed().roughGrams()).isCloseTo(0.06, within(0.021));
    assertThat(batch().charge().inPot().get(1).roughGrams()).isCloseTo(1.43, within(0.03));
    assertThat(bench.prompt().weighing().orElseThrow().name()).isEqualTo("oil");
    assertThat(bench.replayed()).isEqualTo(bench.events);
  }

  @Test
  void a_scale_too_coarse_for_the_part_is_said_and_a_cup_still_full_is_not_taken_for_tipped() {
    waxMelted();
    bench.pan.liftOff("pot");
    bench.run(2);
    bench.pan.putOn("cup", CUP);
    bench.run(6);
    assertThat(bench.all(CupTared.class)).isEmpty();
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.too-coarse");
    bench.pan.liftOff("cup");
    bench.run(2);
    cupOn();
    dye("1.48");
    bench.pan(1).liftOff("cup");
    bench.run(2);
    bench.pan(1).putOn("cup", CUP.plus(Mass.ofGrams("1.48")));
    bench.run(8);
    assertThat(bench.all(CupTipped.class)).isEmpty();
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.cup-full");
  }

  @Test
  void too_much_in_the_cup_is_taken_back_and_a_restart_comes_back_to_the_cup() {
    waxMelted();
    cupOn();
    bench.pan(1).add(Mass.ofGrams("1.8"));
    bench.runUntil(Prompt.Kind.OVER, 10);
    bench.run(3);
    assertThat(bench.prompt().choices().stream()
            .filter(way -> way.whyNot().isEmpty())
            .map(Prompt.Option::id))
        .contains("take-back");
    bench.pan(1).add(Mass.ofGrams("-0.32"));
    bench.runUntil(Prompt.Kind.TIP_CUP, 20);
    assertThat(bench.all(OverGone.class)).hasSize(1);
    bench.restart(Duration.ofSeconds(20));
    bench.run(2);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.TIP_CUP);
    tip(Mass.ofGrams("1.48"), "0");
    bench.runUntil(Prompt.Kind.ADD_PART, 20);
    assertThat(bench.prompt().weighing().orElseThrow().name()).isEqualTo("oil");
    assertThat(bench.replayed()).isEqualTo(bench.events);
  }
}
