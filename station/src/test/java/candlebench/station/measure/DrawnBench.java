package candlebench.station.measure;

import candlebench.protocol.LineSettings;
import candlebench.shared.Mass;
import candlebench.simulator.CellTraits;
import candlebench.simulator.MakerTraits;
import candlebench.simulator.ScaleFace;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleQuirks.Quirk;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.SendMode;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;

/** One maker at one scale, drawn at random. */
record DrawnBench(MakerTraits maker, ScaleTraits scale, ScaleQuirks quirks) {

  static DrawnBench draw(SplittableRandom random, double readingsPerSecond) {
    return new DrawnBench(
        MakerTraits.drawn(random.split()), scale(random, readingsPerSecond), quirks(random));
  }

  /** Filters from 0.12 to 0.8 s, half of them quick on steps over 2 to 18 divisions; noise of a recorded cell, 0.02 to 0.03 g. */
  private static ScaleTraits scale(SplittableRandom random, double readingsPerSecond) {
    double filter = 0.12 * Math.exp(random.nextDouble() * Math.log(0.8 / 0.12));
    double bypass = random.nextBoolean() ? 0 : 0.2 + 1.6 * random.nextDouble();
    double noise = 0.02 + 0.01 * random.nextDouble();
    return new ScaleTraits(
        Mass.ofGrams("6000"),
        List.of(ScaleFace.grams(1)),
        new CellTraits(noise, filter, bypass, 0.0001, 0.02, 0.3),
        40,
        SendMode.CONTINUOUS,
        readingsPerSecond,
        LineSettings.of("9600-8N1"),
        1,
        0.4 + 0.6 * random.nextDouble(),
        Duration.ofMinutes(10),
        Duration.ofMillis(random.nextInt(30)));
  }

  private static ScaleQuirks quirks(SplittableRandom random) {
    ScaleQuirks quirks = ScaleQuirks.none();
    if (random.nextDouble() < 0.5) quirks = quirks.with(Quirk.ARRIVES_UNEVENLY);
    if (random.nextDouble() < 0.3) quirks = quirks.with(Quirk.NEVER_SAYS_STABLE);
    return quirks;
  }
}
