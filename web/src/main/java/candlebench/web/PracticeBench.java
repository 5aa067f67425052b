package candlebench.web;

import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.simulator.Pan;
import candlebench.simulator.RunningBench;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.TcpOutlet;
import candlebench.simulator.VirtualScale;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongConsumer;

/** A bench scale that does not exist, running in real time behind a socket on this computer, and its pan. */
final class PracticeBench implements AutoCloseable {
  private static final String FORMAT = "and";
  private static final long SEED = 1;

  private final Pan pan = new Pan();
  private final TcpOutlet outlet = new TcpOutlet(0);
  private final RunningBench running;
  private volatile Optional<LongConsumer> worker = Optional.empty();

  private PracticeBench() {
    ScaleFormat format = ScaleFormats.of(FORMAT);
    VirtualScale scale = new VirtualScale(
        ScaleTraits.benchThreeKilograms(),
        new ScaleQuirks(Set.of()),
        format,
        format.layouts().get(0),
        pan,
        SEED);
    running = RunningBench.start(List.of(new RunningBench.Station(scale, outlet)), nanos -> {
      pan.advanceTo(nanos);
      worker.ifPresent(hands -> hands.accept(nanos));
    });
  }

  static PracticeBench start() {
    return new PracticeBench();
  }

  /** Where a station finds the scale. */
  String uri() {
    return "tcp:" + outlet.address() + "?format=" + FORMAT + "&name=Practice%20scale&max=3kg";
  }

  /** Has someone work at the pan from now on, told each moment of the bench. */
  void play(LongConsumer hands) {
    worker = Optional.of(hands);
  }

  /** The pan; to be touched only by who works at it, or within {@link #act}. */
  Pan pan() {
    return pan;
  }

  /** Does something to the pan between two moments. */
  void act(Runnable action) {
    running.act(action);
  }

  @Override
  public void close() {
    running.close();
  }
}
