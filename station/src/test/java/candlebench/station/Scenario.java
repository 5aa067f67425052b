package candlebench.station;

import candlebench.shared.Mass;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Prompt;
import java.util.List;

/** A bench brought to a certain step by steady hands, for what is to happen then. */
final class Scenario {
  static final Mass POT = Mass.ofGrams("352.4");

  final VirtualBench bench;

  private Scenario(VirtualBench bench) {
    this.bench = bench;
  }

  static BenchSetup usual() {
    return BenchSetup.of(HarbourLane.all());
  }

  /** A setup that knows two pots. */
  static BenchSetup knowingPots() {
    BenchSetup usual = usual();
    return new BenchSetup(
        usual.scales(),
        List.of(
            new BenchSetup.Pot("small", Mass.ofGrams("352"), Mass.ofGrams("900")),
            new BenchSetup.Pot("large", Mass.ofGrams("461"), Mass.ofGrams("1800"))),
        usual.products(),
        usual.timing(),
        usual.zone());
  }

  static VirtualBench.Make at(int rate) {
    return VirtualBench.Make.of(usual()).rate(rate).seed(rate);
  }

  /** One part, 56 g of oil, just begun; nothing on the scale yet. */
  static Scenario oilJob(VirtualBench.Make make) {
    VirtualBench bench = new VirtualBench(make);
    bench.run(3);
    bench.start("harbour-lane-oil", 1);
    bench.run(1);
    return new Scenario(bench);
  }

  /** One part, with the pot on the scale and its own weight taken. */
  static Scenario oilJobWithPot(VirtualBench.Make make) {
    Scenario scenario = oilJob(make);
    scenario.bench.pan.putOn("pot", POT);
    scenario.bench.runUntil(Prompt.Kind.ADD_PART, 15);
    return scenario;
  }

  /** The small batch, just begun. */
  static Scenario batch(VirtualBench.Make make) {
    VirtualBench bench = new VirtualBench(make);
    bench.run(3);
    bench.start("harbour-lane-quick", 3);
    bench.run(1);
    return new Scenario(bench);
  }

  /** The small batch with 700.0 g of wax in the pot, melted and weighed again, ready for its oil. */
  static Scenario oilOnWax(VirtualBench.Make make) {
    Scenario scenario = batch(make);
    VirtualBench bench = scenario.bench;
    bench.pan.putOn("pot", POT);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    bench.pan.add(Mass.ofGrams("700"));
    bench.runUntil(Prompt.Kind.MELT, 15);
    bench.runUntil(Prompt.Kind.RETURN_POT, 30);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    return scenario;
  }

  /** The small batch with mix in the pot beside the scale, ready for its first vessel. */
  static Scenario atVessels(VirtualBench.Make make) {
    Scenario scenario = oilOnWax(make);
    scenario.pour("56", 4);
    scenario.bench.runUntil(Prompt.Kind.MIX, 15);
    scenario.bench.runUntil(Prompt.Kind.PLACE_VESSEL, 20);
    scenario.bench.pan.liftOff("pot");
    scenario.bench.run(2);
    return scenario;
  }

  /** Pours so much at a steady flow. */
  void pour(String grams, double gramsPerSecond) {
    double seconds = Mass.ofGrams(grams).roughGrams() / gramsPerSecond;
    bench.pan.flow(gramsPerSecond, 0.25);
    bench.run(seconds);
    bench.pan.flow(0, 0);
    Mass missing = Mass.ofGrams(grams)
        .minus(new Mass(Math.round(gramsPerSecond * Math.ceil(seconds / 0.02) * 0.02 * 1e12)));
    if (missing.abs().isLessThan(Mass.ofGrams("0.5"))) bench.pan.add(missing);
    bench.run(0.1);
  }

  /** Waits until a weight more is taken than there were; fails if that takes longer than half a minute. */
  WeightAccepted settle() {
    int before = takings();
    for (int tenth = 0; tenth < 300 && takings() == before; tenth++) bench.run(0.1);
    if (takings() == before) throw new AssertionError("nothing was taken at " + prompt());
    return taken();
  }

  void add(String grams) {
    bench.pan.add(Mass.ofGrams(grams));
  }

  WeightAccepted taken() {
    return bench.last(WeightAccepted.class);
  }

  int takings() {
    return bench.all(WeightAccepted.class).size();
  }

  Prompt prompt() {
    return bench.prompt();
  }

  String now() {
    return bench.prompt().now().key();
  }

  String detail() {
    return bench.prompt().detail().orElseThrow().key();
  }
}
