package candlebench.web;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.web.Program.Outcome;
import candlebench.web.RawHttp.Stream;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program as a station: what it prints, what it serves, how it ends. */
@Tag("packaged")
class ServedProgramTest {
  private static final Pattern ADDRESS =
      Pattern.compile("Candlebench(?: practice bench)?: http://127\\.0\\.0\\.1:(\\d+)/");
  private static final String NOWHERE = "tcp:127.0.0.1:9?format=and";

  @TempDir
  Path data;

  private final List<Process> started = new ArrayList<>();

  @AfterEach
  void end() {
    started.forEach(Process::destroyForcibly);
  }

  @Test
  void a_scale_is_shown_from_the_wire_to_the_stream() throws Exception {
    try (PracticeBench virtual = PracticeBench.start()) {
      int port = serve("--scale", virtual.uri(), "--scale", NOWHERE);
      virtual.act(() -> virtual.pan().putOn("pot", Mass.ofGrams("412.6")));
      try (Stream stream = RawHttp.stream(port)) {
        String view = stream.view();
        while (!view.contains(
            "\"link\":\"live\",\"format\":\"and\",\"shown\":\"412.6\",\"unit\":\"g\",\"stability\":\"stable\""))
          view = stream.view();
        assertThat(view).contains("\"name\":\"Practice scale\"", "\"practice\":false");
        assertThat(RawHttp.get(port, "/api/inputs").body())
            .startsWith("# from entry 0 at ")
            .containsPattern("(?m)^\\d+ h 0 (ST|US),\\+00");
        assertThat(view.indexOf("Practice scale")).isLessThan(view.indexOf("Scale 2"));
      }
    }
  }

  @Test
  void what_reached_the_bench_is_saved_by_one_command_and_plays_the_same() throws Exception {
    Path bundle = data.resolve("trouble.zip");
    try (PracticeBench virtual = PracticeBench.start()) {
      int port = serve("--scale", virtual.uri());
      String begin =
          "{\"id\":\"b1\",\"command\":\"start-batch\",\"recipe\":\"harbour-lane-oil\",\"vessels\":\"1\",\"person\":\"Robin\"}";
      assertThat(RawHttp.post(port, "/api/say", begin, "Content-Type: application/json")
              .status())
          .isEqualTo(200);
      virtual.act(() -> virtual.pan().putOn("pot", Mass.ofGrams("412.6")));
      try (Stream stream = RawHttp.stream(port)) {
        while (!stream.view().contains("\"step\":\"ADD_PART\"")) continue;
      }
      String where = Integer.toString(port);
      Outcome saved = Program.run(
          "bundle", "--port", where, "--data", data.toString(), "--out", bundle.toString());
      assertThat(saved).isEqualTo(new Outcome(0, saved.out(), ""));
      Outcome again = Program.run("bundle", "--port", where, "--out", bundle.toString());
      assertThat(again.code()).isEqualTo(2);
      assertThat(again.err()).contains("is there already: name a new file").hasLineCount(1);
    }
    Outcome replayed = Program.run("replay", bundle.toString());
    assertThat(replayed.code()).isZero();
    assertThat(replayed.out()).containsPattern("SAME  [1-9]\\d* entries");
  }

  @Test
  void a_number_grows_old_when_its_scale_falls_silent() throws Exception {
    try (ServerSocket silent = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      int port = serve("--scale", "tcp:127.0.0.1:" + silent.getLocalPort() + "?format=and");
      try (var line = silent.accept();
          Stream stream = RawHttp.stream(port)) {
        // Twice: where nothing silent came before, the first line may be the end of a longer one
        // and is not believed.
        line.getOutputStream().write("ST,+00056.00  g\r\nST,+00056.00  g\r\n".getBytes(US_ASCII));
        while (!stream.view().contains("\"shown\":\"56.00\"")) continue;
        long age = 0;
        while (age <= 1500) {
          Matcher told = Pattern.compile("\"ageMillis\":(-?\\d+)").matcher(stream.view());
          assertThat(told.find()).isTrue();
          assertThat(Long.parseLong(told.group(1))).isGreaterThanOrEqualTo(age);
          age = Long.parseLong(told.group(1));
        }
      }
    }
  }

  @Test
  void without_a_scale_the_page_leads_to_one() throws Exception {
    int port = serve();
    assertThat(RawHttp.get(port, "/api/view").body())
        .contains("\"step\":\"NO_SCALE\"", "\"scales\":[]");
    assertThat(RawHttp.get(port, "/api/ports").body()).startsWith("{\"ports\":[");
    assertThat(RawHttp.post(
                port,
                "/api/say",
                "{\"id\":\"a\",\"command\":\"go-on\"}",
                "Content-Type: application/json")
            .status())
        .isEqualTo(409);
  }

  @Test
  void practice_is_marked_and_kept_apart() throws Exception {
    int port = start("demo");
    assertThat(RawHttp.get(port, "/api/view").body()).contains("\"practice\":true");
    String begin =
        "{\"id\":\"b1\",\"command\":\"start-batch\",\"recipe\":\"harbour-lane-oil\",\"vessels\":\"1\"}";
    assertThat(RawHttp.post(port, "/api/say", begin, "Content-Type: application/json")
            .status())
        .isEqualTo(200);
    assertThat(RawHttp.post(
                port,
                "/api/practice",
                "{\"hand\":\"place\",\"down\":\"true\"}",
                "Content-Type: application/json")
            .status())
        .isEqualTo(200);
    assertThat(RawHttp.post(
                port, "/api/practice", "{\"hand\":\"plcae\"}", "Content-Type: application/json")
            .body())
        .contains("nearest is 'place'");
    try (Stream stream = RawHttp.stream(port)) {
      while (!stream.view().contains("\"step\":\"ADD_PART\"")) continue;
    }
    assertThat(data.resolve("practice/practice.db")).exists();
    assertThat(data.resolve("record.db")).doesNotExist();
    Outcome exported = Program.run("export", "--practice", "--data", data.toString());
    assertThat(exported.out())
        .contains(
            "\"kind\":\"batch-started\"", "\"kind\":\"pot-tared\"", "\"purpose\":\"practice\"");
  }

  @Test
  void a_real_bench_has_no_hands_but_the_makers() throws Exception {
    int port = serve("--scale", NOWHERE);
    assertThat(RawHttp.post(
                port,
                "/api/practice",
                "{\"hand\":\"place\",\"down\":\"true\"}",
                "Content-Type: application/json")
            .status())
        .isEqualTo(404);
    assertThat(RawHttp.get(port, "/api/setup").body()).contains("\"hands\":false");
  }

  @Test
  void a_command_that_is_replayed_two_hundred_times_at_once_is_done_once() throws Exception {
    int port = serve("--scale", NOWHERE);
    String body =
        "{\"id\":\"replayed\",\"command\":\"start-batch\",\"recipe\":\"harbour-lane-oil\",\"vessels\":\"1\"}";
    ExecutorService many = Executors.newFixedThreadPool(50);
    List<Callable<RawHttp.Answer>> posts = Collections.nCopies(
        200, () -> RawHttp.post(port, "/api/say", body, "Content-Type: application/json"));
    Set<String> bodies = new HashSet<>();
    for (Future<RawHttp.Answer> each : many.invokeAll(posts, 50, TimeUnit.SECONDS)) {
      assertThat(each.get().status()).isEqualTo(200);
      bodies.add(each.get().body());
    }
    many.shutdown();
    assertThat(bodies).hasSize(1);
    assertThat(
            Program.run("export", "--data", data.toString()).out().split("\"batch-started\"", -1))
        .hasSize(2);
  }

  @Test
  void it_ends_when_told_and_goes_on_where_it_was() throws Exception {
    int port = serve("--scale", NOWHERE);
    String begin =
        "{\"id\":\"b1\",\"command\":\"start-batch\",\"recipe\":\"harbour-lane-oil\",\"vessels\":\"1\"}";
    assertThat(RawHttp.post(port, "/api/say", begin, "Content-Type: application/json")
            .status())
        .isEqualTo(200);
    Process first = started.get(0);
    first.destroy();
    assertThat(first.waitFor(30, TimeUnit.SECONDS)).isTrue();
    int again = serve("--scale", NOWHERE);
    assertThat(RawHttp.get(again, "/api/view").body()).contains("\"step\":\"PLACE_POT\"");
  }

  @Test
  void the_makers_own_recipe_is_started_in_turns_of_its_pots_and_one_that_does_not_fit_is_refused()
      throws Exception {
    Path recipes = Files.createDirectory(data.resolve("recipes"));
    Files.writeString(
        recipes.resolve("quay.json"), Program.run("plan", "--example").out());
    int port = serve("--scale", NOWHERE);
    assertThat(RawHttp.get(port, "/api/setup").body())
        .contains(
            "\"id\":\"harbour-lane-quay\"", "(invented), version 3\"", "\"Lane Amber (invented)\"")
        .doesNotContain("harbour-lane-quick");
    String begin =
        "{\"id\":\"b%s\",\"command\":\"start-batch\",\"recipe\":\"harbour-lane-quay\",\"vessels\":\"%s\"}";
    RawHttp.Answer refused =
        RawHttp.post(port, "/api/say", begin.formatted(1, 1), "Content-Type: application/json");
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.body()).contains("refused.plan", "Harbour Blue", "too coarse");
    assertThat(
            RawHttp.post(port, "/api/say", begin.formatted(2, 40), "Content-Type: application/json")
                .status())
        .isEqualTo(200);
    assertThat(RawHttp.get(port, "/api/view").body())
        .contains("version 3", "\"pots\":[{\"pot\":\"Pot A\"", "\"state\":\"to-come\"");
  }

  @Test
  void recipes_that_cannot_be_used_are_refused_by_file_and_fix() throws Exception {
    Path example = Files.writeString(
        data.resolve("quay.json"), Program.run("plan", "--example").out());
    Path broken = Files.writeString(data.resolve("broken.json"), "{\"recipe\": 8}");
    String[][] wrong = {
      {broken.toString(), "broken.json"},
      {data.resolve("none.json").toString(), "none.json"},
      {example.toString(), "--recipe", example.toString(), "harbour-lane-quay"}
    };
    for (String[] each : wrong) {
      List<String> words = new ArrayList<>(
          List.of("serve", "--data", data.toString(), "--scale", NOWHERE, "--recipe"));
      words.addAll(List.of(each).subList(0, each.length - 1));
      Outcome outcome = Program.run(words.toArray(String[]::new));
      assertThat(outcome.code()).isEqualTo(2);
      assertThat(outcome.err())
          .startsWith("candlebench: ")
          .contains(each[each.length - 1])
          .hasLineCount(1);
    }
  }

  @Test
  void a_second_station_on_the_same_data_or_port_is_refused_in_one_line() throws Exception {
    int port = serve("--scale", NOWHERE);
    Outcome data =
        Program.run("serve", "--port", "0", "--data", this.data.toString(), "--scale", NOWHERE);
    assertThat(data.code()).isEqualTo(2);
    assertThat(data.err()).startsWith("candlebench: ").hasLineCount(1);
    Path other = Files.createDirectory(this.data.resolve("other"));
    Outcome taken = Program.run(
        "serve", "--port", Integer.toString(port), "--data", other.toString(), "--scale", NOWHERE);
    assertThat(taken.code()).isEqualTo(2);
    assertThat(taken.err()).contains("port " + port, "--port").hasLineCount(1);
  }

  @Test
  void settings_that_cannot_work_are_refused_in_one_line() throws Exception {
    for (String[] wrong : new String[][] {
      {"--scale", "serial:/dev/ttyS9?format=amd"},
      {"--scale", "usb:1"},
      {"--prot", "80"},
      {"--port", "http"},
      {"--port", "70000", "--scale", NOWHERE},
      {"--listen", "0.0.0.0", "--scale", NOWHERE},
      {"--listen", "candles.example", "--scale", NOWHERE},
      {"--data", "/proc/none", "--scale", NOWHERE}
    }) {
      List<String> words = new ArrayList<>(List.of("serve", "--data", data.toString()));
      if (wrong[0].equals("--data")) words = new ArrayList<>(List.of("serve"));
      words.addAll(List.of(wrong));
      Outcome outcome = Program.run(words.toArray(String[]::new));
      assertThat(outcome.code()).as(String.join(" ", wrong)).isEqualTo(2);
      assertThat(outcome.err())
          .as(String.join(" ", wrong))
          .startsWith("candlebench: ")
          .hasLineCount(1);
    }
  }

  private int serve(String... more) throws IOException {
    return start("serve", more);
  }

  private int start(String command, String... more) throws IOException {
    List<String> words =
        new ArrayList<>(List.of(command, "--port", "0", "--data", data.toString()));
    words.addAll(List.of(more));
    Process process = Program.command(words.toArray(String[]::new))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
    started.add(process);
    BufferedReader out = process.inputReader();
    String line = out.readLine();
    Matcher address = ADDRESS.matcher(String.valueOf(line));
    assertThat(address.matches()).as(line).isTrue();
    return Integer.parseInt(address.group(1));
  }
}
