package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.shared.Verdict;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.PourKind;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.Loss;
import candlebench.station.batch.Part;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.VesselKind;
import candlebench.station.batch.Waits;
import candlebench.station.batch.Way;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.Cue;
import candlebench.station.guidance.GuidanceEvent.AcceptanceReopened;
import candlebench.station.guidance.GuidanceEvent.BottleWeighed;
import candlebench.station.guidance.GuidanceEvent.HabitsLearnt;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A part that is weighed by what its bottle loses: out of its tap on the scale, or poured beside it and put back. */
class FromBottleTest {
  private static final Mass BOTTLE = Mass.ofGrams("412.3");
  private static final Mass POT = Scenario.POT;
  private static final Mass STEP = Mass.ofGrams("0.1");

  private static Recipe recipe(boolean onWax) {
    Tolerance half = Tolerance.ofGrams("0.5", "0.5");
    Load load = onWax ? Load.ofWax("8") : Load.ofTotal("100");
    Part oil =
        new Part("Quay Cedar (invented)", PartKind.OIL, Way.FROM_BOTTLE, load, half, Fraction.ZERO);
    Part wax = Part.wax("Lane Soy 1 (invented)", Way.BY_PIECES, "5");
    return new Recipe(
        "harbour-lane-tap",
        "Oil out of its bottle (invented)",
        onWax ? List.of(wax, oil) : List.of(oil),
        new VesselKind("Pot", Mass.ofGrams(onWax ? "756" : "56"), half),
        false,
        Loss.NONE,
        Waits.NONE,
        "");
  }

  /** A bench at which the bottle was put on the scale, and the pot stands beside it. */
  private static VirtualBench withBottle(double rate) {
    VirtualBench bench = new VirtualBench(
        VirtualBench.Make.of(BenchSetup.of(List.of(recipe(false)))).rate(rate).seed(11));
    bench.run(3);
    bench.start("harbour-lane-tap", 1);
    bench.run(1);
    bench.pan.putOn("pot", POT);
    bench.runUntil(Prompt.Kind.PLACE_BOTTLE, 15);
    bench.pan.liftOff("pot");
    bench.run(2);
    bench.pan.putOn("bottle", BOTTLE);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    return bench;
  }

  /** What the bottle has lost. */
  private static Mass lost(VirtualBench bench) {
    return BOTTLE.minus(bench.pan.of("bottle"));
  }

  private static void rightlyTaken(VirtualBench bench, Mass lost) {
    WeightAccepted taken = bench.last(WeightAccepted.class);
    assertThat(taken.net().minus(new Division(STEP).nearest(lost)).abs())
        .as("%s taken of %s", taken.net(), lost)
        .isLessThanOrEqualTo(STEP);
    assertThat(taken.tare().minus(taken.gross())).isEqualTo(taken.net());
  }

  /** A maker at the tap, who does what the page says; what runs out is lost to the bottle. */
  private static Set<Cue> tapped(VirtualBench bench, long seed) {
    VirtualMaker maker = VirtualMaker.drawn(Slips.none(), seed);
    maker.takes(PourKind.OIL_BOTTLE);
    Pan pot = new Pan();
    pot.putOn("pot", POT);
    Set<Cue> cues = EnumSet.noneOf(Cue.class);
    bench.around(nanos -> {
      Mass before = pot.truth();
      Prompt seen = bench.prompt();
      cues.add(seen.cue());
      maker.advanceTo(nanos, perceived(seen), pot);
      if (bench.pan.holds("bottle")) bench.pan.add(before.minus(pot.truth()));
    });
    for (int tenth = 0; tenth < 1200 && !isOver(bench); tenth++) bench.run(0.1);
    bench.around(nanos -> {});
    return cues;
  }

  private static boolean isOver(VirtualBench bench) {
    return !bench.all(WeightAccepted.class).isEmpty()
        || !bench.all(OverPoured.class).isEmpty();
  }

  private static Perceived perceived(Prompt seen) {
    return switch (seen.cue()) {
      case NONE, WAITING, PIECES -> Perceived.told(Told.WAIT);
      case POUR -> stream(Told.POUR, seen);
      case SLOW -> stream(Told.SLOW, seen);
      case STOP -> Perceived.told(Told.STOP);
      case DROPS -> Perceived.drops(seen.drops().orElse(1));
      case HOLD_STILL -> Perceived.told(Told.HOLD_STILL);
      case OVER -> Perceived.told(Told.OVER);
    };
  }

  private static Perceived stream(Told told, Prompt seen) {
    return seen.stopInNanos()
        .map(nanos -> Perceived.stopIn(told, Duration.ofNanos(nanos)))
        .orElse(Perceived.told(told));
  }

  @ParameterizedTest
  @ValueSource(doubles = {2, 5, 10, 25})
  void a_tap_on_the_scale_is_slowed_stopped_and_ended_by_drops(double rate) {
    for (long seed = 1; seed <= 3; seed++) {
      VirtualBench bench = withBottle(rate);
      Set<Cue> cues = tapped(bench, seed);
      assertThat(bench.all(OverPoured.class)).as("maker %s", seed).isEmpty();
      rightlyTaken(bench, lost(bench));
      assertThat(bench.last(WeightAccepted.class).verdict()).isEqualTo(Verdict.WITHIN);
      assertThat(cues).contains(Cue.POUR, Cue.SLOW, Cue.STOP, Cue.HOLD_STILL);
      assertThat(bench.all(HabitsLearnt.class)).isNotEmpty();
      assertThat(bench.replayed()).isEqualTo(bench.events);
    }
  }

  /** Lifts the bottle, pours so much of it into the pot, and puts it back. */
  private static void spoon(VirtualBench bench, String grams) {
    Mass bottle = bench.pan.liftOff("bottle");
    bench.run(1.5);
    assertThat(bench.prompt().now().key()).isEqualTo("now.put-bottle-back");
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.bottle-to-go");
    bench.run(2);
    bench.pan.putOn("bottle", bottle.minus(Mass.ofGrams(grams)));
    bench.run(3);
  }

  @ParameterizedTest
  @ValueSource(doubles = {2, 5, 10, 25})
  void a_bottle_that_is_lifted_and_put_back_shows_what_it_lost(double rate) {
    VirtualBench bench = withBottle(rate);
    spoon(bench, "30");
    assertThat(bench
            .prompt()
            .weighing()
            .orElseThrow()
            .net()
            .orElseThrow()
            .minus(Mass.ofGrams("30"))
            .abs())
        .isLessThanOrEqualTo(STEP);
    spoon(bench, "20.4");
    spoon(bench, "5.4");
    for (int tenth = 0; tenth < 150 && !isOver(bench); tenth++) bench.run(0.1);
    rightlyTaken(bench, Mass.ofGrams("55.8"));
    assertThat(bench.all(OverPoured.class)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {2, 5, 10, 25})
  void too_much_out_of_a_bottle_is_said_and_made_good(double rate) {
    VirtualBench bench = new VirtualBench(
        VirtualBench.Make.of(BenchSetup.of(List.of(recipe(true)))).rate(rate).seed(12));
    bench.run(3);
    bench.start("harbour-lane-tap", 1);
    bench.run(1);
    bench.pan.putOn("pot", POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    bench.pan.add(Mass.ofGrams("700"));
    bench.runUntil(Prompt.Kind.PLACE_BOTTLE, 15);
    Mass pot = bench.pan.liftOff("pot");
    bench.run(2);
    bench.pan.putOn("bottle", BOTTLE);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    bench.pan.flow(-4, 0.25);
    bench.run(61 / 4.0);
    bench.pan.flow(0, 0);
    bench.runUntil(Prompt.Kind.OVER, 3);
    Mass oil = lost(bench);
    assertThat(bench.prompt().choices())
        .filteredOn(way -> way.whyNot().isEmpty())
        .extracting(Prompt.Option::id)
        .contains("add-more", "keep", "scrap")
        .doesNotContain("take-back");
    bench.run(2);
    assertThat(bench.say(new MakerCommand.Choose("add-more", ""))).isEmpty();
    rightlyTaken(bench, oil);
    bench.runUntil(Prompt.Kind.RETURN_POT, 3);
    bench.pan.liftOff("bottle");
    bench.run(2);
    bench.pan.putOn("pot", pot.plus(oil));
    bench.runUntil(Prompt.Kind.ADD_MORE, 15);
    Mass more = bench.prompt().weighing().orElseThrow().target();
    assertThat(more.roughGrams()).isBetween(60.0, 65.0);
    bench.pan.add(more);
    bench.runUntil(Prompt.Kind.DONE, 15);
    BatchProgress done = bench.state().progress().batch().orElseThrow();
    double load =
        done.charge().inPot().get(1).roughGrams() / done.charge().inPot().get(0).roughGrams();
    assertThat(load).isBetween(0.0799, 0.0801);
  }

  @Test
  void a_bottle_that_runs_empty_is_followed_by_another() {
    VirtualBench bench = withBottle(10);
    spoon(bench, "30");
    bench.pan.liftOff("bottle");
    bench.run(2);
    bench.pan.putOn("other", Mass.ofGrams("800"));
    bench.runUntil(Prompt.Kind.ASK, 10);
    bench.run(1);
    assertThat(bench.prompt().choices()).hasSize(1);
    assertThat(bench.say(new MakerCommand.Choose("count-it", ""))).isEmpty();
    bench.run(1);
    bench.pan.flow(-2, 0);
    bench.run(13);
    bench.pan.flow(0, 0);
    for (int tenth = 0; tenth < 150 && !isOver(bench); tenth++) bench.run(0.1);
    Mass lost = Mass.ofGrams("30").plus(Mass.ofGrams("800").minus(bench.pan.of("other")));
    rightlyTaken(bench, lost);
  }

  @Test
  void a_part_that_drips_out_after_it_was_taken_is_weighed_again() {
    VirtualBench bench = withBottle(10);
    bench.pan.add(Mass.ofGrams("-56"));
    for (int tenth = 0; tenth < 150 && !isOver(bench); tenth++) bench.run(0.1);
    bench.pan.flow(-0.05, 0);
    bench.run(8);
    assertThat(bench.all(AcceptanceReopened.class)).isNotEmpty();
  }

  @Test
  void a_creeping_tap_is_not_taken_or_is_weighed_again() {
    VirtualBench bench = withBottle(10);
    bench.pan.add(Mass.ofGrams("-55.9"));
    bench.pan.flow(-0.05, 0);
    bench.run(9);
    bench.pan.flow(0, 0);
    bench.run(20);
    rightlyTaken(bench, lost(bench));
  }

  @Test
  void a_restart_finds_the_bottle_again() {
    VirtualBench bench = withBottle(10);
    bench.pan.flow(-3, 0);
    bench.run(10);
    bench.pan.flow(0, 0);
    bench.run(3);
    bench.restart(Duration.ofMinutes(1));
    bench.runUntil(Prompt.Kind.ADD_PART, 10);
    bench.pan.add(lost(bench).minus(Mass.ofGrams("56")));
    for (int tenth = 0; tenth < 150 && !isOver(bench); tenth++) bench.run(0.1);
    rightlyTaken(bench, lost(bench));
    assertThat(bench.all(BottleWeighed.class)).hasSize(1);
  }

  @Test
  void the_pot_is_not_taken_for_the_bottle_nor_one_that_holds_too_little() {
    VirtualBench bench = new VirtualBench(
        VirtualBench.Make.of(BenchSetup.of(List.of(recipe(false)))).seed(13));
    bench.run(3);
    bench.start("harbour-lane-tap", 1);
    bench.run(1);
    bench.pan.putOn("pot", POT);
    bench.runUntil(Prompt.Kind.PLACE_BOTTLE, 15);
    bench.run(5);
    assertThat(bench.all(BottleWeighed.class)).isEmpty();
    bench.pan.liftOff("pot");
    bench.run(2);
    bench.pan.putOn("pot", POT);
    bench.run(5);
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.that-is-no-bottle");
    bench.pan.liftOff("pot");
    bench.run(2);
    bench.pan.putOn("bottle", Mass.ofGrams("52"));
    bench.run(5);
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.bottle-too-light");
    assertThat(bench.say(new MakerCommand.GoOn())).isPresent();
    assertThat(bench.all(BottleWeighed.class)).isEmpty();
  }

  @Test
  void the_lots_and_the_recipe_are_as_of_any_part() {
    VirtualBench bench = withBottle(10);
    bench.pan.add(Mass.ofGrams("-56"));
    for (int tenth = 0; tenth < 150 && !isOver(bench); tenth++) bench.run(0.1);
    BatchProgress batch = bench.state().progress().batch().orElseThrow();
    assertThat(batch.charge().inPot())
        .isEqualTo(Map.of(0, bench.last(WeightAccepted.class).net()));
    assertThat(batch.charge().gross())
        .isEqualTo(batch.charge().tare().plus(bench.last(WeightAccepted.class).net()));
  }
}
