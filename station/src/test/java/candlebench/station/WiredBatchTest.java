package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.protocol.LineSettings;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.shared.Verdict;
import candlebench.simulator.MakerTraits;
import candlebench.simulator.PseudoTerminal;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Prompt;
import candlebench.station.link.BytePort;
import candlebench.station.link.Line;
import candlebench.station.link.LinkListener;
import candlebench.station.link.LinkReport;
import candlebench.station.link.ScaleLink;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.SerialLine;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The small batch of the demonstration in virtual time, each frame on its way through a real device node, the serial library and a link.
 * Four formats of different shapes: lines, fixed lengths behind STX with a checksum, from LF to ETX, and from {@code =} on.
 */
@EnabledOnOs(OS.LINUX)
class WiredBatchTest {
  private static final MakerTraits GENTLE =
      new MakerTraits(0.3, 0, 0.05, 0.5, 1, 0.5, 0, 0.03, 1.3);

  @TempDir
  Path folder;

  @ParameterizedTest
  @CsvSource({
    "and, 2400-7E1",
    "toledo/chk, 9600-7E1",
    "nci, 9600-8N1",
    "yaohua/eq-fwd, 1200-8N1",
  })
  void a_batch_runs_to_done_over_a_device_node(String format, String line) {
    VirtualBench bench = new VirtualBench(
        VirtualBench.Make.of(BenchSetup.of(HarbourLane.all())).format(format).seed(11));
    try (PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"));
        Wire wire = new Wire(bench, terminal, format, LineSettings.of(line))) {
      bench.wire(wire);
      bench.run(3);
      bench.start("harbour-lane-quick", 3);
      VirtualMaker hands = new VirtualMaker(GENTLE, Slips.none(), 5, bench.nanos());
      FollowingMaker maker = new FollowingMaker(bench, hands, Mass.ofGrams("352.4"), 5);
      bench.around(maker::advanceTo);
      bench.runUntil(Prompt.Kind.DONE, 900);
      assertThat(maker.keys()).isZero();
      assertThat(wire.link.counters().refused()).isZero();
      assertThat(wire.link.counters().frames()).isGreaterThan(500);
    }
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    assertThat(bench.all(WeightAccepted.class))
        .hasSize(5)
        .allMatch(weight -> weight.verdict() == Verdict.WITHIN);
  }

  /** Sends bytes into a device node and gives back those of the frames that the link at its other end heard. */
  private static final class Wire implements UnaryOperator<byte[]>, AutoCloseable {
    private final VirtualBench bench;
    private final PseudoTerminal terminal;
    private final ScaleLink link;
    private final AtomicReference<Stamp> now;
    private final Semaphore dealtWith = new Semaphore(0);
    private final ByteArrayOutputStream heard = new ByteArrayOutputStream();

    Wire(VirtualBench bench, PseudoTerminal terminal, String format, LineSettings line) {
      this.bench = bench;
      this.terminal = terminal;
      now = new AtomicReference<>(bench.now());
      SerialLine serial = new SerialLine(terminal.address(), line);
      ScaleSettings settings = new ScaleSettings(
          () -> watched(serial.open()),
          ScaleFormats.of(format),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.of(MassUnit.GRAM),
          Optional.empty());
      link = new ScaleLink(0, settings, new Ear(), now::get);
      link.start();
      // The first read shows that the line is open.
      await(1);
    }

    @Override
    public byte[] apply(byte[] sent) {
      now.set(bench.now());
      assertThat(terminal.offer(sent)).isTrue();
      await(sent.length);
      synchronized (heard) {
        byte[] frames = heard.toByteArray();
        heard.reset();
        return frames;
      }
    }

    private void await(int bytes) {
      try {
        if (!dealtWith.tryAcquire(bytes, 20, TimeUnit.SECONDS))
          throw new AssertionError("the link does not read: " + link.counters().bytes());
      } catch (InterruptedException ended) {
        throw new AssertionError(ended);
      }
    }

    private Line.Opening watched(Line.Opening opening) {
      return new Line.Opened(new Watched(((Line.Opened) opening).port()));
    }

    @Override
    public void close() {
      link.close();
    }

    /** A port that tells, when it is read again, that what it gave has been dealt with. */
    private final class Watched implements BytePort {
      private final BytePort port;
      private int given = 1;

      Watched(BytePort port) {
        this.port = port;
      }

      @Override
      public int read(byte[] into) {
        dealtWith.release(given);
        int count = port.read(into);
        given = Math.max(0, count);
        return count;
      }

      @Override
      public boolean write(byte[] bytes) {
        return port.write(bytes);
      }

      @Override
      public LinkReport whyGone() {
        return port.whyGone();
      }

      @Override
      public void close() {
        port.close();
      }
    }

    private final class Ear implements LinkListener {
      @Override
      public void heard(int scale, Frame frame, Decoded decoded) {
        synchronized (heard) {
          heard.writeBytes(frame.bytes());
        }
      }

      @Override
      public void printKeyPressed(int scale, Stamp stamp) {}

      @Override
      public void changed(int scale, LinkReport report, Stamp stamp) {}
    }
  }
}
