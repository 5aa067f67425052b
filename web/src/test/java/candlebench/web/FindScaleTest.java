package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.simulator.Pan;
import candlebench.simulator.PseudoTerminal;
import candlebench.simulator.RunningBench;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.VirtualScale;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** From nothing to a live scale by what the page asks for, in the packaged program with a virtual scale behind a real device node. */
@Tag("packaged")
@EnabledOnOs(OS.LINUX)
class FindScaleTest {
  private static final Pattern ADDRESS = Pattern.compile("http://[^ :]+:(\\d+)/");
  private static final String JSON = "Content-Type: application/json";

  @TempDir
  Path folder;

  private PseudoTerminal terminal;
  private RunningBench bench;
  private Process process;
  private int port;

  @BeforeEach
  void plugIn() {
    ScaleFormat format = ScaleFormats.of("and");
    Pan pan = new Pan();
    ScaleTraits traits = ScaleTraits.benchThreeKilograms().with(LineSettings.of("2400-7E1"));
    VirtualScale scale =
        new VirtualScale(traits, ScaleQuirks.none(), format, format.layouts().get(0), pan, 7);
    pan.putOn("pot", Mass.ofGrams("350"));
    terminal = new PseudoTerminal(folder.resolve("scale"));
    bench = RunningBench.start(List.of(new RunningBench.Station(scale, terminal)), nanos -> {});
  }

  @AfterEach
  void end() throws InterruptedException {
    process.destroyForcibly().waitFor();
    bench.close();
  }

  @Test
  void a_scale_is_found_used_and_there_again_at_the_next_start() throws Exception {
    long plugged = System.nanoTime();
    start();
    assertThat(view()).contains("\"scales\":[]", "NO_SCALE");
    assertThat(post("/api/find", "{\"device\":\"" + terminal.address() + "\"}").status())
        .isEqualTo(200);
    String search = await("/api/find", answer -> answer.contains("\"over\":true"));
    assertThat(search)
        .contains("find.recognised", "2400", "7E1", "\"format\":\"and\"", "find.by-itself");

    assertThat(post("/api/use", "{\"format\":\"sics\"}").body()).contains("no such scale");
    assertThat(post("/api/use", "{\"format\":\"and\"}").body()).isEqualTo("{\"done\":true}");
    assertLive();
    System.out.printf("from nothing to live: %.1f s%n", (System.nanoTime() - plugged) / 1e9);
    assertThat(Files.readAllLines(folder.resolve("data/scales.txt")))
        .containsExactly("serial:" + terminal.address() + "?format=and&line=2400-7E1");

    process.destroyForcibly().waitFor();
    start();
    assertLive();
  }

  @Test
  void only_ports_are_opened_for_a_page() throws Exception {
    start();
    Path file = Files.writeString(folder.resolve("notes.txt"), "mine");
    for (String device :
        List.of("", file.toString(), folder.toString(), "scale", "/dev/../etc/passwd", "/no/such"))
      assertThat(post("/api/find", "{\"device\":\"" + device + "\"}").body())
          .as(device)
          .contains("is no serial port: choose one of the list");
    assertThat(post("/api/use", "{\"format\":\"and\"}").body()).contains("look on its port first");
    assertThat(file).hasContent("mine");
  }

  private void start() throws IOException {
    process = Program.command(
            "serve", "--port", "0", "--data", folder.resolve("data").toString())
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
    BufferedReader out = process.inputReader();
    Matcher address = ADDRESS.matcher(out.readLine());
    assertThat(address.find()).isTrue();
    port = Integer.parseInt(address.group(1));
  }

  private void assertLive() throws Exception {
    String view = await("/api/view", answer -> answer.contains("\"unit\":\"g\""));
    assertThat(view).contains("\"link\":\"live\"", "\"format\":\"and\"");
  }

  private String view() throws IOException {
    return RawHttp.get(port, "/api/view").body();
  }

  private RawHttp.Answer post(String path, String body) throws IOException {
    return RawHttp.post(port, path, body, JSON);
  }

  /** Asks over and over, also while the page's server is opened anew. */
  private String await(String path, Predicate<String> so) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    String last = "";
    while (System.nanoTime() < deadline) {
      try {
        last = RawHttp.get(port, path).body();
        if (so.test(last)) return last;
      } catch (IOException beingOpenedAnew) {
        last = beingOpenedAnew.toString();
      }
      Thread.yield();
    }
    throw new AssertionError("still not so: " + last);
  }
}
