package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.protocol.LineSettings;
import candlebench.shared.Mass;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@EnabledOnOs(OS.LINUX)
class RunningBenchTest {
  private static final LineSettings SEVEN = LineSettings.of("2400-7E1");
  private static final ScaleTraits FAST =
      ScaleTraits.benchThreeKilograms().withSendsPerSecond(20).with(SEVEN);

  @TempDir
  Path folder;

  @Test
  void a_program_reads_the_scale_in_real_time_tares_it_and_survives_a_pulled_plug()
      throws Exception {
    Pan pan = new Pan();
    pan.putOn("pot", Mass.ofGrams("450"));
    try (PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"));
        RunningBench bench = RunningBench.start(List.of(station(pan, terminal)), nanos -> {})) {
      bench.act(() -> pan.add(Mass.ofGrams("100")));
      try (SerialProgram program = new SerialProgram(terminal.address(), SEVEN)) {
        awaitText(program, "ST,+000100.0  g\r\n");
        program.send("T\r\n".getBytes(StandardCharsets.US_ASCII));
        awaitText(program, "ST,+000000.0  g\r\n");
        bench.unplug(0);
        assertThat(program.awaitGone()).isTrue();
      }
      bench.replug(0);
      bench.act(() -> pan.add(Mass.ofGrams("56")));
      try (SerialProgram program = new SerialProgram(terminal.address(), SEVEN)) {
        awaitText(program, "ST,+000056.0  g\r\n");
      }
      assertThat(bench.<Mass>ask(pan::truth)).isEqualTo(Mass.ofGrams("606"));
    }
  }

  @Test
  void a_program_that_listens_at_another_speed_hears_no_weight() throws Exception {
    try (PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"));
        RunningBench bench =
            RunningBench.start(List.of(station(new Pan(), terminal)), nanos -> {})) {
      try (SerialProgram program =
          new SerialProgram(terminal.address(), LineSettings.of("9600-8N1"))) {
        assertThat(new String(program.awaitBytes(100), StandardCharsets.ISO_8859_1))
            .doesNotContain("0.0");
      }
      try (SerialProgram program =
          new SerialProgram(terminal.address(), LineSettings.of("2400-8N1"))) {
        byte[] heard = program.awaitBytes(100);
        for (int i = 0; i < heard.length; i++) heard[i] &= 0x7F;
        assertThat(new String(heard, StandardCharsets.US_ASCII))
            .as("parity in the top bit")
            .contains(",+000000.0  g\r\n");
      }
      assertThat(bench.<Boolean>ask(terminal::isOpened)).isFalse();
    }
  }

  @Test
  void hands_that_fail_are_told_when_the_bench_is_closed() {
    TcpOutlet outlet = new TcpOutlet(0);
    java.util.concurrent.CountDownLatch called = new java.util.concurrent.CountDownLatch(1);
    RunningBench bench = RunningBench.start(List.of(station(new Pan(), outlet)), nanos -> {
      called.countDown();
      throw new IllegalStateException("dropped the pot");
    });
    assertThatThrownBy(() -> {
          assertThat(called.await(20, java.util.concurrent.TimeUnit.SECONDS)).isTrue();
          bench.close();
        })
        .hasMessageContaining("stopped by itself")
        .hasRootCauseMessage("dropped the pot");
  }

  private static RunningBench.Station station(Pan pan, Outlet outlet) {
    return new RunningBench.Station(
        new VirtualScale(FAST, ScaleQuirks.none(), Rig.FORMAT, Rig.layout("standard"), pan, 1),
        outlet);
  }

  private static void awaitText(SerialProgram program, String text) throws InterruptedException {
    for (int count = 1; ; count += 18) {
      String read = new String(program.awaitBytes(count), StandardCharsets.ISO_8859_1);
      if (read.contains(text)) return;
      assertThat(count).as("read so far: " + read).isLessThan(3_000);
      count = read.length();
    }
  }
}
