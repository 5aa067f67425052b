package candlebench.station.measure;

import candlebench.protocol.Decoded;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.simulator.VirtualScale;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Readings of one pour up to the moment of its stop, and what it settled at.
 *
 * @param at arrival of each reading, in seconds
 * @param cut when it was stopped, by a valve, a hand or the word to the maker
 */
record CutPour(double[] at, double[] grams, double cut, double settled) {
  private static final long TICK = 20_000_000L;
  private static final double SETTLES = 1.8;

  /** The pours of a folder with {@code pours.tsv} and one {@code csv} file of time and weight for each recording. */
  static List<CutPour> recorded(Path folder) throws IOException {
    List<CutPour> pours = new ArrayList<>();
    for (String line : Files.readAllLines(folder.resolve("pours.tsv"))) {
      String[] field = line.split("\t");
      Path file = folder.resolve(field[0] + ".csv");
      if (field[0].equals("recording") || field[9].equals("-") || !Files.exists(file)) continue;
      pours.add(of(file, Double.parseDouble(field[1]), Double.parseDouble(field[8])));
    }
    return pours;
  }

  private static CutPour of(Path file, double start, double cut) throws IOException {
    List<double[]> rows = new ArrayList<>();
    for (String row : Files.readAllLines(file)) {
      String[] value = row.split(",");
      if (value[0].equals("t_s") || value[1].isEmpty() || value[1].equals("-")) continue;
      double[] point = {Double.parseDouble(value[0]), Double.parseDouble(value[1])};
      if (point[0] >= start - 1 && point[0] <= cut + 3) rows.add(point);
    }
    double settled = rows.stream()
        .filter(row -> row[0] > cut + SETTLES)
        .mapToDouble(row -> row[1])
        .average()
        .orElseThrow();
    return of(rows, cut, settled);
  }

  private static CutPour of(List<double[]> rows, double cut, double settled) {
    return new CutPour(
        rows.stream().mapToDouble(row -> row[0]).toArray(),
        rows.stream().mapToDouble(row -> row[1]).toArray(),
        cut,
        settled);
  }

  /** A maker and a scale drawn at random: some seconds of free stream, some of a thin one, then the word to stop. */
  static CutPour simulated(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    DrawnBench bench = DrawnBench.draw(random, 10);
    ScaleFormat format = ScaleFormats.of("and");
    Pan pan = new Pan();
    VirtualScale scale =
        new VirtualScale(bench.scale(), bench.quirks(), format, format.layouts().get(0), pan, seed);
    VirtualMaker maker = new VirtualMaker(bench.maker(), Slips.none(), seed, 0);
    Framer framer = format.newFramer();
    List<double[]> rows = new ArrayList<>();
    double slow = 2 + 3 * random.nextDouble();
    double cut = slow + 2 + 4 * random.nextDouble();
    for (long nanos = TICK; nanos < (cut + 6) * 1e9; nanos += TICK) {
      scale.advanceTo(
          nanos,
          (when, bytes) -> framer.feed(
              bytes, bytes.length, new Stamp(Instant.EPOCH.plusNanos(when), when), frame -> {
                if (format.decode(frame) instanceof Decoded.Weighed weighed)
                  rows.add(new double[] {
                    when / 1e9, weighed.indication().mass(MassUnit.GRAM).roughGrams()
                  });
              }));
      double seconds = nanos / 1e9;
      Told told = seconds < slow ? Told.POUR : seconds < cut ? Told.SLOW : Told.STOP;
      maker.advanceTo(nanos, Perceived.told(told), pan);
    }
    Mass all = pan.truth();
    return of(rows, cut, all.roughGrams());
  }
}
