package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.simulator.ScaleTraits;
import candlebench.station.batch.planning.PlannedProduct;
import candlebench.station.batch.planning.RecipeJson;
import candlebench.station.batch.planning.UnreadablePlan;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent.Asked;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.CupTipped;
import candlebench.station.guidance.GuidanceEvent.PotTaken;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Place;
import candlebench.station.guidance.PotStanding;
import candlebench.station.guidance.PotStanding.Doing;
import candlebench.station.guidance.Prompt;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * A whole day in virtual time: 48 glasses from two pots in turns, on two scales, with three oils, a dye and an additive. Once the pots are
 * mixed up, once mix is spilt so that a glass comes short, and once the program is killed.
 */
class FortyEightVesselsTest {
  private static final String PLAN = """
      {"recipe": {"id": "day", "version": 1, "name": "A day (invented)",
         "oilLoad": {"share": "8 %", "of": "wax"},
         "parts": [
           {"kind": "wax", "name": "wax", "share": "100 %", "of": "wax", "tolerance": "1 %"},
           {"kind": "additive", "name": "hardener", "share": "1 %", "of": "wax", "tolerance": "5 %"},
           {"kind": "dye", "name": "dye", "share": "0.1 %", "of": "wax", "tolerance": "5 %"},
           {"kind": "oil", "name": "cedar", "share": "50 %", "of": "oil", "tolerance": "1 %"},
           {"kind": "oil", "name": "amber", "share": "30 %", "of": "oil", "tolerance": "1 %"},
           {"kind": "oil", "name": "moss", "share": "20 %", "of": "oil", "tolerance": "2 %"}],
         "waits": {"melt": "10 min", "mix": "1 min"}},
       "vessel": {"name": "glass", "fill": {"weight": "150 g"}, "tolerance": "3 g"},
       "pots": [{"name": "Pot A", "empty": "400 g"}, {"name": "Pot B", "empty": "436 g"}],
       "cup": {"empty": "41 g"},
       "scales": [{"name": "bench", "capacity": "3 kg", "division": "0.1 g"},
                  {"name": "fine", "capacity": "500 g", "division": "0.01 g"}],
       "batch": {"vessels": 48, "loss": {"perPot": "8 g", "perVessel": "0.2 g"}, "charges": "fewest"}}
      """;

  private static final int BENCH = 0;
  private static final int FINE = 1;
  private static final Mass CUP = Mass.ofGrams("41");
  private static final Mass GLASS = Mass.ofGrams("150");
  private static final Mass FILM = Mass.ofGrams("8");
  private static final Mass SPILT = Mass.ofGrams("70");

  private final VirtualBench bench;

  /** What each pot weighs, wherever it stands. */
  private final Map<String, Mass> pots =
      new HashMap<>(Map.of("Pot A", Mass.ofGrams("400"), "Pot B", Mass.ofGrams("436")));

  private boolean swapped;
  private boolean spilt;
  private boolean killed;
  private int glasses;

  FortyEightVesselsTest() throws UnreadablePlan {
    bench = new VirtualBench(VirtualBench.Make.of(new BenchSetup(
            List.of(
                new BenchSetup.Scale("bench", Optional.empty(), Optional.of(Mass.ofGrams("3000"))),
                new BenchSetup.Scale("fine", Optional.empty(), Optional.of(Mass.ofGrams("500")))),
            List.of(
                new BenchSetup.Pot("Pot A", Mass.ofGrams("400"), Mass.ZERO),
                new BenchSetup.Pot("Pot B", Mass.ofGrams("436"), Mass.ZERO)),
            List.of(new PlannedProduct(RecipeJson.read(PLAN))),
            BenchSetup.Timing.USUAL,
            ZoneOffset.UTC))
        .beside(ScaleTraits.balanceFiveHundredGrams()));
  }

  @Test
  void forty_eight_glasses_are_made_to_the_end_with_a_swap_a_spill_a_short_glass_and_a_restart() {
    bench.run(3);
    bench.start("day", 48);
    for (int act = 0; act < 3_000 && !isDone(); act++) act();

    assertThat(bench.all(BatchStarted.class)).hasSize(4);
    assertThat(bench.all(BatchDone.class)).as("%s", bench.prompt()).hasSize(4);
    assertThat(bench.all(PotTared.class))
        .extracting(PotTared::pot)
        .containsExactly("Pot A", "Pot B", "Pot A", "Pot B");
    assertThat(bench.all(PotTaken.class).size()).isGreaterThan(4);
    assertThat(bench.all(CupTipped.class)).hasSize(4).allMatch(CupTipped::weighed);
    assertThat(bench.all(Asked.class)).isNotEmpty();
    for (String part : List.of("wax", "hardener", "dye", "cedar", "amber", "moss"))
      assertThat(of(part)).as(part).hasSize(4).allMatch(w -> w.verdict() == Verdict.WITHIN);
    assertThat(of("dye")).allMatch(weight -> weight.scaleName().equals("fine"));

    List<WeightAccepted> filled = bench.all(WeightAccepted.class).stream()
        .filter(weight -> weight.place().kind() == Place.Kind.VESSEL)
        .toList();
    assertThat(filled).hasSize(48);
    assertThat(filled)
        .filteredOn(weight -> weight.verdict() == Verdict.UNDER)
        .singleElement()
        .satisfies(shortOne -> assertThat(shortOne.reason()).isEqualTo("short"));
    assertThat(swapped && spilt && killed).isTrue();
    assertThat(bench.replayed()).isEqualTo(bench.events);
  }

  private List<WeightAccepted> of(String part) {
    return bench.all(WeightAccepted.class).stream()
        .filter(weight -> weight.name().equals(part))
        .toList();
  }

  private boolean isDone() {
    return bench.prompt().step() == Prompt.Kind.DONE;
  }

  private BatchProgress batch() {
    return bench.state().progress().batch().orElseThrow();
  }

  private String inHand() {
    String code = batch().started().code();
    return bench.state().progress().work().orElseThrow().potOf(code).orElseThrow();
  }

  /** One thing that the page asks for is done. */
  private void act() {
    Prompt prompt = bench.prompt();
    switch (prompt.step()) {
      case PREPARE -> bench.say(new MakerCommand.GoOn());
      case PLACE_POT -> {
        if (prompt.now().key().equals("now.next-pot")) another();
        else on(inHand());
      }
      case RETURN_POT -> on(inHand());
      case ADD_PART -> add(prompt);
      case MELT, MIX -> {
        off();
        another();
      }
      case PLACE_CUP -> {
        if (!bench.pan(FINE).holds("cup")) bench.pan(FINE).putOn("cup", CUP);
      }
      case TIP_CUP -> tip();
      case PLACE_VESSEL -> glassOn();
      case FILL_VESSEL -> fill(prompt);
      case LIFT_VESSEL -> off();
      case AWAY -> on(inHand());
      default -> throw new AssertionError(prompt);
    }
    bench.run(2);
  }

  /** The pot that calls, or the next empty one; where neither is there, time passes. */
  private void another() {
    List<PotStanding> all = bench.state().pots(bench.now());
    Optional<String> calls = all.stream()
        .filter(pot -> pot.doing() == Doing.CALLS || pot.doing() == Doing.LEFT)
        .map(PotStanding::pot)
        .findFirst();
    Optional<String> empty = all.stream()
        .filter(pot -> pot.doing() == Doing.TO_COME)
        .map(PotStanding::pot)
        .filter(name ->
            all.stream().noneMatch(pot -> pot.pot().equals(name) && pot.doing() != Doing.TO_COME))
        .findFirst();
    calls.or(() -> empty).ifPresentOrElse(this::on, () -> bench.run(10));
    bench.run(3);
  }

  private void on(String pot) {
    if (bench.pan.holds(pot)) {
      bench.run(1);
      return;
    }
    off();
    bench.run(1);
    boolean isNew = bench.state().progress().running().isEmpty()
        || !inHand().equals(pot)
        || batch().charge().pot().isEmpty();
    boolean toCome = bench.state().pots(bench.now()).stream()
        .anyMatch(each -> each.pot().equals(pot) && each.doing() != Doing.TO_COME);
    if (isNew && !toCome) pots.put(pot, Mass.ofGrams(pot.equals("Pot A") ? "400" : "436"));
    bench.pan.putOn(pot, pots.get(pot));
  }

  private void off() {
    bench.pan.receiver().ifPresent(thing -> {
      Mass mass = bench.pan.liftOff(thing);
      if (pots.containsKey(thing)) pots.put(thing, mass);
    });
  }

  private void add(Prompt prompt) {
    String part = prompt.weighing().orElseThrow().name();
    if (part.equals("amber") && !swapped && isMelted("Pot B")) swap();
    int scale = part.equals("dye") ? FINE : BENCH;
    int before = bench.all(WeightAccepted.class).size();
    bench.pan(scale).add(bench.prompt().weighing().orElseThrow().target());
    for (int tenth = 0; tenth < 150 && bench.all(WeightAccepted.class).size() == before; tenth++)
      bench.run(0.1);
  }

  private boolean isMelted(String pot) {
    return inHand().equals("Pot A")
        && bench.state().progress().aside().stream()
            .anyMatch(each -> !each.charge().inPot().isEmpty())
        && pots.get(pot).isMoreThan(Mass.ofGrams("1000"));
  }

  /** In the middle of the oils the other pot is put on: it is asked about, nothing is taken, and the right one goes on. */
  private void swap() {
    swapped = true;
    int before = bench.all(WeightAccepted.class).size();
    off();
    bench.run(3);
    bench.pan.putOn("Pot B", pots.get("Pot B"));
    bench.run(6);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.ASK);
    assertThat(bench.prompt().choices().get(0).label().key()).isEqualTo("choice.is-pot");
    assertThat(bench.all(WeightAccepted.class)).hasSize(before);
    off();
    bench.run(3);
    bench.pan.putOn("Pot A", pots.get("Pot A"));
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
  }

  private void tip() {
    Mass clings = Mass.ofGrams("0.03");
    Mass there = bench.pan(FINE).liftOff("cup").minus(CUP);
    bench.run(2);
    Mass poured = there.minus(clings);
    if (bench.pan.receiver().isPresent()) bench.pan.add(poured);
    else pots.merge(inHand(), poured, Mass::plus);
    bench.run(1);
    bench.pan(FINE).putOn("cup", CUP.plus(clings));
    for (int second = 0; second < 40 && bench.prompt().step() == Prompt.Kind.TIP_CUP; second++)
      bench.run(1);
    bench.pan(FINE).liftOff("cup");
  }

  private void glassOn() {
    if (bench.pan.holds("glass")) return;
    off();
    bench.run(2);
    glasses++;
    if (glasses == 30 && !killed) {
      killed = true;
      bench.restart(Duration.ofSeconds(30));
    }
    if (glasses == 18 && !spilt) {
      spilt = true;
      pots.merge(inHand(), SPILT.negated(), Mass::plus);
    }
    bench.pan.putOn("glass", GLASS);
  }

  /** Out of the pot, as long as more than its film is in it. */
  private void fill(Prompt prompt) {
    Mass target = prompt.weighing().orElseThrow().target();
    Mass empty = Mass.ofGrams(inHand().equals("Pot A") ? "400" : "436");
    Mass there = pots.get(inHand()).minus(empty).minus(FILM);
    Mass poured = there.isLessThan(target) ? there : target;
    pots.merge(inHand(), poured.negated(), Mass::plus);
    int before = bench.all(WeightAccepted.class).size();
    bench.pan.add(poured);
    for (int tenth = 0; tenth < 80 && bench.all(WeightAccepted.class).size() == before; tenth++)
      bench.run(0.1);
    if (bench.all(WeightAccepted.class).size() == before) bench.say(new MakerCommand.GoOn());
  }
}
