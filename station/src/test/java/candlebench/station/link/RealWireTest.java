package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.Stamp;
import candlebench.simulator.Outlet;
import candlebench.simulator.Pan;
import candlebench.simulator.PseudoTerminal;
import candlebench.simulator.RunningBench;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.SendMode;
import candlebench.simulator.TcpOutlet;
import candlebench.simulator.VirtualScale;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real serial and network path, with a virtual scale at the far end: a device node of the system, a socket. */
class RealWireTest {
  private static final ScaleFormat FORMAT = ScaleFormats.of("and");
  private static final String LOST = "LOST";

  @TempDir
  Path folder;

  private final Pan pan = new Pan();
  private final BlockingQueue<String> heard = new LinkedBlockingQueue<>();
  private RunningBench bench;
  private ScaleLink link;

  @AfterEach
  void close() {
    link.close();
    bench.close();
  }

  @Test
  void a_serial_scale_is_heard_unplugged_and_heard_again() throws Exception {
    PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"));
    run(
        terminal,
        ScaleTraits.benchThreeKilograms(),
        new SerialLine(terminal.address(), LineSettings.of("9600-8N1")),
        Optional.empty());
    isHeardUnpluggedAndHeardAgain();
  }

  @Test
  void a_scale_over_tcp_is_heard_unplugged_and_heard_again() throws Exception {
    TcpOutlet outlet = new TcpOutlet(0);
    run(
        outlet,
        ScaleTraits.benchThreeKilograms(),
        new TcpLine("127.0.0.1", outlet.port()),
        Optional.empty());
    isHeardUnpluggedAndHeardAgain();
  }

  @Test
  void a_serial_scale_that_sends_only_on_request_is_asked() throws Exception {
    PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"));
    run(
        terminal,
        ScaleTraits.benchThreeKilograms().with(SendMode.ON_REQUEST),
        new SerialLine(terminal.address(), LineSettings.of("9600-8N1")),
        Optional.of(Duration.ofMillis(100)));
    bench.act(() -> pan.putOn("pot", Mass.ofGrams("350")));
    await(words -> words.startsWith("350.") || words.startsWith("349."));
  }

  @Test
  void a_wrong_speed_is_said_to_be_garbled_not_a_weight() throws Exception {
    PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"));
    run(
        terminal,
        ScaleTraits.benchThreeKilograms(),
        new SerialLine(terminal.address(), LineSettings.of("2400-7E1")),
        Optional.empty());
    await(words -> words.equals("GARBLED"));
    assertThat(link.counters().frames()).isZero();
    assertThat(link.counters().bytes()).isPositive();
  }

  @Test
  void a_port_that_another_program_holds_is_told_from_one_that_is_not_there() throws Exception {
    PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"));
    SerialLine line = new SerialLine(terminal.address(), LineSettings.of("9600-8N1"));
    run(terminal, ScaleTraits.benchThreeKilograms(), line, Optional.empty());
    await(words -> words.equals("LIVE"));
    assertThat(line.open())
        .isInstanceOfSatisfying(
            Line.NotOpened.class,
            refused -> assertThat(refused.why().state()).isEqualTo(LinkState.HELD));
    assertThat(new SerialLine(folder.resolve("nothing").toString(), LineSettings.of("9600-8N1"))
            .open())
        .isInstanceOfSatisfying(
            Line.NotOpened.class,
            refused -> assertThat(refused.why().state()).isEqualTo(LinkState.LOST));
  }

  private void isHeardUnpluggedAndHeardAgain() throws InterruptedException {
    bench.act(() -> pan.putOn("pot", Mass.ofGrams("350")));
    await(words -> words.startsWith("350."));
    for (int i = 0; i < 2; i++) {
      bench.unplug(0);
      await(words -> words.equals(LOST));
      bench.replug(0);
      await(words -> words.startsWith("350."));
    }
    assertThat(link.counters().openings()).isEqualTo(3);
  }

  private void run(Outlet outlet, ScaleTraits traits, Line line, Optional<Duration> ask) {
    VirtualScale scale =
        new VirtualScale(traits, ScaleQuirks.none(), FORMAT, FORMAT.layouts().get(0), pan, 1);
    bench = RunningBench.start(List.of(new RunningBench.Station(scale, outlet)), moment -> {});
    ScaleSettings settings = new ScaleSettings(
        line, FORMAT, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), ask);
    link = new ScaleLink(0, settings, new Ear(), new SystemStamps());
    link.start();
  }

  private void await(Predicate<String> wanted) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (System.nanoTime() < end) {
      String words = heard.poll(20, TimeUnit.SECONDS);
      if (words != null && wanted.test(words)) return;
    }
    throw new AssertionError("never heard; " + link.counters().bytes() + " bytes came");
  }

  private final class Ear implements LinkListener {
    @Override
    public void heard(int scale, Frame frame, Decoded decoded) {
      if (decoded instanceof Decoded.Weighed weighed)
        heard.add(weighed.indication().number());
    }

    @Override
    public void printKeyPressed(int scale, Stamp stamp) {}

    @Override
    public void changed(int scale, LinkReport report, Stamp stamp) {
      heard.add(report.state().name());
    }
  }
}
