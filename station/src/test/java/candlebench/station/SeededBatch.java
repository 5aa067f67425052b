package candlebench.station;

import candlebench.protocol.Decoded;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import candlebench.shared.Tolerance;
import candlebench.simulator.CellTraits;
import candlebench.simulator.LineFaults;
import candlebench.simulator.MakerTraits;
import candlebench.simulator.ScaleKey;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleQuirks.Quirk;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.Slips;
import candlebench.simulator.Surroundings;
import candlebench.simulator.VirtualMaker;
import candlebench.station.VirtualBench.Cut;
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
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.Prompt;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * One batch drawn by its seed: recipe, scale, its oddities and its format, maker, surroundings and what goes wrong. The same seed runs
 * the same.
 */
public final class SeededBatch {
  private static final int LONGEST_SECONDS = 2400;
  private static final int[] RATES = {2, 5, 10, 25};

  /** What can go wrong, each for itself, and off in most runs so that one does not hide another. */
  public enum Mishap {
    TARE_KEY,
    ZERO_KEY,
    UNIT_KEY,
    OFF_AND_ON,
    CABLE,
    KILL,
    LIFTED,
    /** The power goes while something is written down, or before anybody is told; the page sends its tap again. */
    POWER_CUT,
    WALL_BACK,
    WALL_FORWARD,
    /** A page comes back and sends its last tap again. */
    RECONNECT,
    LINE_PIECES,
    LINE_LOSSES,
    LINE_RUBBISH,
    LINE_DELAYS;

    /** Those that are drawn first, so that a seed with nothing else of it runs as it always did. */
    static final Set<Mishap> AT_THE_BENCH = EnumSet.range(TARE_KEY, LIFTED);

    static final Set<Mishap> AROUND_IT = EnumSet.complementOf(EnumSet.range(TARE_KEY, LIFTED));

    boolean isOfTheLine() {
      return compareTo(LINE_PIECES) >= 0;
    }
  }

  /** How a run went. */
  public record Run(
      long seed,
      Set<Mishap> mishaps,
      String scale,
      double seconds,
      int keys,
      int overPours,
      boolean done) {}

  final VirtualBench bench;
  private final long seed;
  private final SplittableRandom random;
  private final FollowingMaker maker;
  private final Surroundings around;
  private final SplittableRandom more;
  private final Set<Mishap> mishaps;
  private final Set<Mishap> met = EnumSet.noneOf(Mishap.class);
  private final List<Mishap> due = new ArrayList<>();
  private final String scale;
  private long nextMishap;
  private long switchOnAt = Long.MAX_VALUE;
  private long plugInAt = Long.MAX_VALUE;
  private long putBackAt = Long.MAX_VALUE;
  private String lifted = "";
  private Mass liftedMass = Mass.ZERO;

  public SeededBatch(long seed) {
    this(seed, EnumSet.allOf(Mishap.class));
  }

  /** @param possible what may go wrong at all; whatever else of it was drawn is the same */
  public SeededBatch(long seed, Set<Mishap> possible) {
    this.seed = seed;
    random = new SplittableRandom(seed * 7919 + 1);
    more = new SplittableRandom(seed * 104_729 + 7);
    mishaps = drawnMishaps(possible);
    Set<Mishap> outside = drawnAround(possible);
    due.addAll(mishaps);
    for (Mishap mishap : outside)
      if (!mishap.isOfTheLine()) due.add(more.nextInt(due.size() + 1), mishap);
    mishaps.addAll(outside);
    Recipe recipe = recipe();
    int rate = RATES[random.nextInt(RATES.length)];
    ScaleQuirks drawn = quirks();
    // Each conversion sent three or four times at a few frames a second is a scale that converts
    // every two seconds: there is none.
    ScaleQuirks quirks = rate < 10 ? drawn.without(Quirk.REPEATS_CONVERSIONS) : drawn;
    ScaleFormat format = format();
    if (!namesUnits(format) || neverNamesUnits(format, quirks)) due.remove(Mishap.UNIT_KEY);
    scale = format.id() + " " + rate + "/s " + quirks.on();
    bench = new VirtualBench(VirtualBench.Make.of(BenchSetup.of(List.of(recipe)))
        .traits(ScaleTraits.benchThreeKilograms().with(cell()).withSendsPerSecond(rate))
        .quirks(quirks)
        .format(format.id())
        .seed(seed));
    if (outside.stream().anyMatch(Mishap::isOfTheLine)) {
      bench.line(line(outside), seed);
      outside.stream().filter(Mishap::isOfTheLine).forEach(met::add);
    }
    bench.promises.mayBeOff("0.8");
    bench.run(3);
    bench.start(recipe.id(), 1 + random.nextInt(3));
    MakerTraits hands = MakerTraits.drawn(random.split());
    Slips slips = random.nextInt(3) == 0 ? Slips.tired() : Slips.none();
    maker = new FollowingMaker(
        bench,
        new VirtualMaker(hands, slips, seed, bench.nanos()),
        Mass.ofGrams(Integer.toString(280 + random.nextInt(300))),
        seed);
    around = new Surroundings(random.nextInt(2) * 40, seed, bench.nanos());
    bench.around(this::advanceTo);
    nextMishap = later(5, 40);
  }

  private Set<Mishap> drawnMishaps(Set<Mishap> possible) {
    Set<Mishap> drawn = EnumSet.noneOf(Mishap.class);
    for (Mishap mishap : Mishap.AT_THE_BENCH) if (random.nextInt(5) == 0) drawn.add(mishap);
    drawn.retainAll(possible);
    return drawn;
  }

  private Set<Mishap> drawnAround(Set<Mishap> possible) {
    Set<Mishap> drawn = EnumSet.noneOf(Mishap.class);
    for (Mishap mishap : Mishap.AROUND_IT) if (more.nextInt(8) == 0) drawn.add(mishap);
    drawn.retainAll(possible);
    return drawn;
  }

  /** Bits and bytes that change a number are not drawn: where a format has no checksum nothing could tell. */
  private static LineFaults line(Set<Mishap> faults) {
    LineFaults line = LineFaults.none();
    if (faults.contains(Mishap.LINE_PIECES)) line = line.withCuts(0.5);
    if (faults.contains(Mishap.LINE_LOSSES)) line = line.withLosses(0.05);
    if (faults.contains(Mishap.LINE_RUBBISH)) line = line.withRubbish(0.02);
    if (faults.contains(Mishap.LINE_DELAYS)) line = line.withDelays(0.1, Duration.ofMillis(400));
    return line;
  }

  private Recipe recipe() {
    String percent = (5 + random.nextInt(6)) + "";
    Load load = random.nextBoolean() ? Load.ofWax(percent) : Load.ofTotal(percent);
    Part oil = new Part(
        "oil",
        PartKind.OIL,
        Way.POURED,
        load,
        Tolerance.ofGrams("0.5", "0.5"),
        random.nextBoolean() ? Fraction.percent("12") : Fraction.ZERO);
    Part wax = Part.wax("wax", random.nextInt(4) == 0 ? Way.POURED : Way.BY_PIECES, "5");
    int fill = 80 + random.nextInt(120);
    return new Recipe(
        "drawn",
        "drawn",
        List.of(wax, oil),
        new VesselKind("glass", Mass.ofGrams(fill + ""), Tolerance.ofGrams("2", "3")),
        true,
        new Loss(Mass.ofGrams(random.nextInt(12) + ""), Mass.ofGrams("0.3")),
        new Waits(Duration.ofSeconds(8), Duration.ofSeconds(5), Duration.ofHours(24)),
        "");
  }

  private CellTraits cell() {
    CellTraits bench = CellTraits.benchThreeKilograms();
    double noise = 0.01 + 0.04 * random.nextDouble();
    return bench.withNoise(noise).withFilter(0.15 + 0.4 * random.nextDouble());
  }

  private ScaleQuirks quirks() {
    Set<Quirk> drawn = EnumSet.noneOf(Quirk.class);
    for (Quirk quirk : Quirk.values())
      if (quirk != Quirk.SWITCHES_OFF && random.nextInt(8) == 0) drawn.add(quirk);
    return new ScaleQuirks(drawn);
  }

  private ScaleFormat format() {
    List<ScaleFormat> all = ScaleFormats.all();
    return random.nextBoolean() ? ScaleFormats.of("and") : all.get(random.nextInt(all.size()));
  }

  /** A scale that never names its unit cannot tell that its unit key was pressed; the maker has stated it once for all. */
  private static boolean namesUnits(ScaleFormat format) {
    WireLayout layout = format.layouts().get(0);
    return encodes(layout, Basis.GROSS) || encodes(layout, Basis.UNSTATED);
  }

  /** Formats that leave the unit out while the load moves never name it where the scale never calls it still. */
  private static boolean neverNamesUnits(ScaleFormat format, ScaleQuirks quirks) {
    return quirks.has(Quirk.NEVER_SAYS_STABLE)
        && (format.id().equals("sbi") || format.id().equals("kern/18"));
  }

  private static boolean encodes(WireLayout layout, Basis basis) {
    Decoded ounces =
        new Decoded.Weighed(Indication.of("12.350", MassUnit.OUNCE), basis, Stability.STABLE);
    return layout.encode(ounces, new WireLayout.Shown(MassUnit.OUNCE, 3, 1)).isPresent();
  }

  private long later(double least, double most) {
    return bench.nanos() + Math.round(1e9 * (least + (most - least) * random.nextDouble()));
  }

  private void advanceTo(long nanos) {
    around.advanceTo(nanos, bench.pan);
    maker.advanceTo(nanos);
    mend(nanos);
    if (nanos >= nextMishap && !due.isEmpty()) goWrong(nanos);
  }

  private void mend(long nanos) {
    if (nanos >= switchOnAt) {
      switchOnAt = Long.MAX_VALUE;
      maker.switchOn();
    }
    if (nanos >= plugInAt) {
      plugInAt = Long.MAX_VALUE;
      bench.replug();
    }
    if (nanos >= putBackAt) {
      putBackAt = Long.MAX_VALUE;
      bench.pan.putOn(lifted, liftedMass);
      maker.handsBusy(false);
    }
  }

  private void goWrong(long nanos) {
    Mishap mishap = due.get(0);
    if (mishap == Mishap.LIFTED && !mayBeLifted()) return;
    if (mishap == Mishap.KILL || isSetDownJustNow(mishap)) return;
    due.remove(0);
    met.add(mishap);
    nextMishap = later(10, 60);
    switch (mishap) {
      case TARE_KEY -> bench.press(ScaleKey.TARE);
      case ZERO_KEY -> bench.press(ScaleKey.ZERO);
      case UNIT_KEY -> bench.press(ScaleKey.UNIT);
      case OFF_AND_ON -> {
        if (bench.scale.isOn()) bench.press(ScaleKey.ON_OFF);
        switchOnAt = later(2, 8);
      }
      case CABLE -> {
        bench.unplug();
        plugInAt = later(1, 10);
      }
      case LIFTED -> {
        lifted = bench.pan.receiver().orElseThrow();
        liftedMass = bench.pan.liftOff(lifted);
        maker.handsBusy(true);
        putBackAt = later(2, 5);
      }
      case POWER_CUT -> bench.cutPower(more.nextBoolean() ? Cut.BEFORE_DISK : Cut.AFTER_DISK);
      case WALL_BACK -> bench.setWallClock(Duration.ofMinutes(-1 - more.nextInt(1500)));
      case WALL_FORWARD -> bench.setWallClock(Duration.ofMinutes(1 + more.nextInt(1500)));
      case RECONNECT -> bench.lastTapAgain();
      case KILL, LINE_PIECES, LINE_LOSSES, LINE_RUBBISH, LINE_DELAYS ->
        throw new AssertionError(mishap);
    }
  }

  /** A tare in the very moment in which a pot is set down leaves no number that tells: a known limit, so it is not drawn. */
  private boolean isSetDownJustNow(Mishap mishap) {
    Prompt prompt = bench.prompt();
    boolean awaited = prompt.step() == Prompt.Kind.PREPARE
        || prompt.step() == Prompt.Kind.PLACE_POT
        || prompt.step() == Prompt.Kind.PLACE_VESSEL;
    return (mishap == Mishap.TARE_KEY || mishap == Mishap.ZERO_KEY)
        && awaited
        && prompt.countIn().isEmpty()
        && bench.pan.receiver().isPresent();
  }

  private boolean mayBeLifted() {
    return bench.pan.receiver().filter(thing -> !thing.equals("spoon")).isPresent()
        && bench.pan.flow() == 0
        && maker.hasFreeHands()
        && bench.prompt().weighing().isPresent();
  }

  /** What did go wrong so far. */
  Set<Mishap> met() {
    return met;
  }

  /** Runs the batch to its end; throws {@link BenchPromises.Broken} where a promise does not hold. */
  public Run run() {
    int seconds = 0;
    while (bench.prompt().step() != Prompt.Kind.DONE && seconds < LONGEST_SECONDS) {
      bench.run(1);
      seconds++;
      if (bench.isDark()) {
        bench.restart(Duration.ofMillis(more.nextInt(1_000, 30_000)));
        bench.lastTapAgain();
      }
      boolean kill = !due.isEmpty() && due.get(0) == Mishap.KILL && bench.nanos() >= nextMishap;
      if (!kill) continue;
      due.remove(0);
      met.add(Mishap.KILL);
      bench.restart(Duration.ofMillis(random.nextInt(200, 15_000)));
      nextMishap = later(10, 60);
    }
    return new Run(
        seed,
        mishaps,
        scale,
        bench.nanos() / 1e9,
        maker.keys(),
        bench.all(OverPoured.class).size(),
        bench.all(BatchDone.class).size() == 1);
  }
}
