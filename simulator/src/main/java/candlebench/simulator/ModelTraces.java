package candlebench.simulator;

import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.ScaleQuirks.Quirk;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Traces of the model under the conditions of published recordings, to be held against them. */
final class ModelTraces {
  private static final double RAW_RATE = 11.7;
  private static final long TICK = 10_000_000;
  private static final ScaleFormat FORMAT = ScaleFormats.of("and");

  private ModelTraces() {}

  /** What an unfiltered cell of 1 kg feels at 11.7 a second under a constant load, in grams. */
  static double[] rawRest(long seed, int samples, CellTraits traits) {
    Pan pan = new Pan();
    pan.putOn("weight", Mass.ofGrams("200"));
    LoadCell cell = new LoadCell(traits, pan, new SplittableRandom(seed));
    long step = Math.round(1e9 / RAW_RATE);
    double[] grams = new double[samples];
    for (int i = 0; i < samples; i++) grams[i] = cell.feel((i + 1) * step);
    return grams;
  }

  /** A radio scale of 2 kg by 0.1 g, ten values a second, its readings arriving unevenly. */
  static ScaleTraits radioScale() {
    ScaleTraits bench = ScaleTraits.benchThreeKilograms();
    return bench
        .with(new CellTraits(0.04, 0.06, 1.8, 0.00005, 0.02, 0))
        .with(LineSettings.of("115200-8N1"))
        .withLinkDelay(Duration.ofMillis(80));
  }

  /** Hand pours of about 40 g by many makers, none slow by choice, each followed by rest, one trace for each. */
  static List<WeightTrace> handPours(int count) {
    List<WeightTrace> traces = new ArrayList<>();
    for (int seed = 0; seed < count; seed++) {
      MakerTraits traits = MakerTraits.drawn(new SplittableRandom(seed)).withSlowShare(0);
      VirtualMaker maker = new VirtualMaker(traits, Slips.none(), seed, 0);
      SplittableRandom random = new SplittableRandom(~(long) seed);
      double wanted = 35 + 15 * random.nextDouble();
      traces.add(trace(seed, 20 + 4 * random.nextDouble(), (nanos, pan) -> {
        boolean pouring = nanos > 2_000_000_000L && pan.truth().roughGrams() < 200 + wanted;
        maker.advanceTo(nanos, Perceived.told(pouring ? Told.POUR : Told.STOP), pan);
      }));
    }
    return traces;
  }

  /** A machine's fill that is cut off by a valve at 12 s, and what was shown at that moment. */
  static WeightTrace valveCut(long seed, double gramsPerSecond) {
    return trace(seed, 18, (nanos, pan) -> {
      boolean open = nanos > 2_000_000_000L && nanos < 12_000_000_000L;
      pan.flow(open ? gramsPerSecond : 0, 0);
    });
  }

  /** What acts on the pan at each moment. */
  interface Acting {
    void act(long nanos, Pan pan);
  }

  private static WeightTrace trace(long seed, double length, Acting acting) {
    Pan pan = new Pan();
    pan.putOn("vessel", Mass.ofGrams("200"));
    VirtualScale scale = new VirtualScale(
        radioScale(),
        ScaleQuirks.of(Quirk.ARRIVES_UNEVENLY),
        FORMAT,
        FORMAT.layouts().get(0),
        pan,
        seed);
    List<double[]> samples = new ArrayList<>();
    Framer framer = FORMAT.newFramer();
    WireSink sink = (nanos, bytes) -> framer.feed(
        bytes, bytes.length, new Stamp(Instant.EPOCH.plusNanos(nanos), nanos), frame -> {
          if (FORMAT.decode(frame) instanceof Weighed weighed)
            samples.add(new double[] {
              nanos / 1e9, weighed.indication().mass(MassUnit.GRAM).roughGrams()
            });
        });
    for (long nanos = TICK; nanos < length * 1e9; nanos += TICK) {
      scale.advanceTo(nanos, sink);
      acting.act(nanos, pan);
    }
    return new WeightTrace(
        samples.stream().mapToDouble(sample -> sample[0]).toArray(),
        samples.stream().mapToDouble(sample -> sample[1]).toArray());
  }
}
