package candlebench.station.measure;

import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.simulator.NumberWatcher;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.PourKind;
import candlebench.simulator.VirtualScale;

/** The same maker with nothing but the number on the scale's own display. */
final class WatcherPours {
  private static final long TICK = 20_000_000;
  private static final ScaleFormat FORMAT = ScaleFormats.of("and");

  private WatcherPours() {}

  static PourResult pour(
      DrawnBench bench, NumberWatcher.Habits habits, PourKind kind, double target, long seed) {
    Pan pan = new Pan();
    pan.putOn("pot", Mass.ofGrams("450"));
    VirtualScale scale =
        new VirtualScale(bench.scale(), bench.quirks(), FORMAT, FORMAT.layouts().get(0), pan, seed);
    NumberWatcher watcher = new NumberWatcher(bench.maker(), habits, kind, seed, 0);
    long nanos = 0;
    while (!watcher.isDone() && nanos < 300_000_000_000L) {
      nanos += TICK;
      scale.advanceTo(nanos, (at, bytes) -> {});
      double shown = scale.display().orElseThrow().mass(MassUnit.GRAM).roughGrams();
      watcher.advanceTo(nanos, Perceived.number(target - shown), pan);
    }
    return new PourResult(pan.truth().roughGrams() - 450 - target, nanos / 1e9, false, 0, 0, 0, 0);
  }
}
