package candlebench.web;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.station.Bench.Answer;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Words;
import candlebench.web.RawHttp.Stream;
import java.io.IOException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WebServerTest {
  private static final String JSON = "Content-Type: application/json";
  private static final String GO_ON = "{\"id\":\"a1\",\"command\":\"go-on\"}";

  private static ScriptedBench bench;
  private static WebServer server;
  private static int port;

  @BeforeAll
  static void start() {
    bench = new ScriptedBench(Scenes.pouring());
    server = new WebServer(bench.site(), InetAddress.getLoopbackAddress(), 0);
    port = server.port();
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  @BeforeEach
  void nothing_said_yet() {
    bench.said().clear();
    bench.answerWith(command -> new Answer(true, Words.of("answer.done")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/", "/main.js", "/api/view", "/api/stream", "/api/inputs", "/no-such-thing"})
  void a_foreign_host_is_misdirected_on_every_path(String path) throws IOException {
    for (String host : List.of(
        "candles.example",
        "127.0.0.1.candles.example",
        "localhost.",
        "",
        "[::2]",
        "localhost@candles.example"))
      assertThat(RawHttp.get(port, path, "Host: " + host).status()).as(host).isIn(421, 400);
    assertThat(RawHttp.get(port, path, "Host: candles.example:" + port).status())
        .isEqualTo(421);
    assertThat(RawHttp.ask(port, "GET " + path + " HTTP/1.0\r\n\r\n").status()).isEqualTo(421);
  }

  @ParameterizedTest
  @ValueSource(strings = {"/api/view", "/api/stream"})
  void a_unit_that_no_page_can_be_read_in_is_refused_with_those_that_can(String path)
      throws IOException {
    RawHttp.Answer answer = RawHttp.get(port, path + "?unit=stone");
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.body()).contains("g, kg, oz or lb:oz, not 'stone'");
    assertThat(RawHttp.get(port, "/api/view?unit=lb:oz").status()).isEqualTo(200);
  }

  @ParameterizedTest
  @ValueSource(strings = {"127.0.0.1", "localhost", "LOCALHOST", "[::1]", "localhost:9999"})
  void the_machines_own_names_are_answered(String host) throws IOException {
    assertThat(RawHttp.get(port, "/", "Host: " + host).status()).isEqualTo(200);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/", "/main.js", "/api/view", "/api/stream", "/api/inputs", "/no-such-thing"})
  void a_foreign_origin_is_refused_on_every_path(String path) throws IOException {
    for (String origin : List.of(
        "http://candles.example", "null", "https://localhost:" + port, "http://localhost:1"))
      assertThat(RawHttp.get(port, path, "Origin: " + origin).status())
          .as(origin)
          .isEqualTo(403);
  }

  @Test
  void a_foreign_page_cannot_post() throws IOException {
    assertThat(RawHttp.post(port, "/api/say", GO_ON, JSON, "Origin: http://candles.example")
            .status())
        .isEqualTo(403);
    assertThat(RawHttp.post(port, "/api/say", GO_ON, JSON, "Sec-Fetch-Site: cross-site")
            .status())
        .isEqualTo(403);
    assertThat(bench.said()).isEmpty();
  }

  @Test
  void the_page_itself_may_post() throws IOException {
    String own = "Origin: http://localhost:" + port;
    assertThat(RawHttp.post(port, "/api/say", GO_ON, JSON, own, "Sec-Fetch-Site: same-origin")
            .status())
        .isEqualTo(200);
    assertThat(bench.said().poll())
        .isEqualTo(new ScriptedBench.Said("a1", new MakerCommand.GoOn()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "text/plain",
        "application/x-www-form-urlencoded",
        "application/jsonp",
        "application/json; charset=utf-16"
      })
  void a_body_that_is_not_json_is_refused(String type) throws IOException {
    RawHttp.Answer answer = RawHttp.post(port, "/api/say", GO_ON, "Content-Type: " + type);
    assertThat(answer.status()).isEqualTo(415);
    assertThat(answer.body()).contains("application/json");
  }

  @Test
  void a_big_body_is_refused_with_and_without_a_stated_length() throws IOException {
    String big = "{\"id\":\"" + "a".repeat(20_000) + "\"}";
    RawHttp.Answer refused = RawHttp.post(port, "/api/say", big, JSON);
    assertThat(refused.status()).isEqualTo(413);
    assertThat(refused.body()).contains("a command fits in");
    String chunked = "POST /api/say HTTP/1.1\r\nHost: localhost\r\n" + JSON
        + "\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n"
        + Integer.toHexString(big.length()) + "\r\n" + big + "\r\n0\r\n\r\n";
    assertThat(RawHttp.ask(port, chunked).status()).isEqualTo(413);
    assertThat(bench.said()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "                                                              | a command is a JSON object",
        "[]                                                            | a command is a JSON object",
        "{                                                             | not the JSON of one command",
        "{\"id\":\"a\",\"command\":\"go-on\"                           | not the JSON of one command",
        "{\"id\":\"a\",\"command\":\"go-on\"} x                        | not the JSON of one command",
        "{\"id\":\"a\",\"command\":\"go-on\"}{}                        | send one at a time",
        "{\"id\":\"a\",\"id\":\"b\",\"command\":\"go-on\"}             | Duplicate field 'id'",
        "{\"id\":7,\"command\":\"go-on\"}                              | 'id' is text",
        "{\"command\":\"go-on\"}                                       | needs an id",
        "{\"id\":\"../x\",\"command\":\"go-on\"}                       | needs an id",
        "{\"id\":\"a\",\"command\":\"go-om\"}                          | nearest is 'go-on'",
        "{\"id\":\"a\",\"command\":\"q\"}                              | Commands: abandon, change-lot",
        "{\"id\":\"a\",\"command\":\"go-on\",\"choice\":\"x\"}         | 'go-on' knows no 'choice'",
        "{\"id\":\"a\",\"command\":\"choose\"}                         | 'choose' needs 'choice'",
        "{\"id\":\"a\",\"command\":\"abandon\",\"reason\":\"  \"}      | 'abandon' needs 'reason'",
        "{\"id\":\"a\",\"command\":\"start-batch\",\"recipe\":\"Fig\",\"vessels\":\"0\"} | whole number from 1",
        "{\"id\":\"a\",\"command\":\"start-batch\",\"recipe\":\"Fig\",\"vessels\":\"2\",\"lots\":[]} | object of lot numbers",
        "{\"id\":\"a\",\"command\":\"enter-by-hand\",\"net\":\"1e3\",\"unit\":\"g\",\"reason\":\"r\"} | written like 56.1",
        "{\"id\":\"a\",\"command\":\"enter-by-hand\",\"net\":\"1\",\"unit\":\"fl oz\",\"reason\":\"r\"} | no unit 'fl oz'",
        "{\"id\":\"a\",\"command\":\"note-temperature\",\"celsius\":\"68.55\"} | to a tenth",
        "{\"id\":\"a\",\"command\":\"note-temperature\",\"celsius\":\"900\"} | to a tenth",
      })
  void a_bad_command_is_refused_in_words_that_say_what_to_send(String body, String words)
      throws IOException {
    RawHttp.Answer answer = RawHttp.post(port, "/api/say", body == null ? "" : body, JSON);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.body()).contains(words);
    assertThat(bench.said()).isEmpty();
  }

  @Test
  void a_text_without_end_is_refused() throws IOException {
    String body = "{\"id\":\"a\",\"command\":\"abandon\",\"reason\":\"" + "x".repeat(501) + "\"}";
    assertThat(RawHttp.post(port, "/api/say", body, JSON).body()).contains("keep it under 500");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"command\":\"abandon\",\"reason\":\"spilt \\ud83d\"",
        "\"command\":\"start-batch\",\"recipe\":\"c\",\"vessels\":\"3\",\"lots\":{\"wax\":\"L1\\udc00\"}",
      })
  void half_a_character_is_refused_before_the_bench_would_write_it_down(String command)
      throws IOException {
    RawHttp.Answer answer = RawHttp.post(port, "/api/say", "{\"id\":\"a\"," + command + "}", JSON);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.body()).contains("half a character: type it anew");
    assertThat(bench.said()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"999999999,kg", "1000.1,kg", "-1000001,g"})
  void more_than_a_tonne_is_a_slip_and_refused_in_words(String amount, String unit)
      throws IOException {
    String body =
        "{\"id\":\"a\",\"command\":\"receive-lot\",\"material\":\"m\",\"lot\":\"l\",\"amount\":\"%s\",\"unit\":\"%s\"}"
            .formatted(amount, unit);
    RawHttp.Answer answer = RawHttp.post(port, "/api/say", body, JSON);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.body())
        .contains("at most a tonne, not " + amount + " " + unit + ": look at number and unit");
    assertThat(bench.said()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"id\":\"a\",\"command\":\"choose\",\"choice\":\"keep\",\"reason\":\"still under the limit\"}",
        "{\"reason\":\"still under the limit\",\"choice\":\"keep\",\"command\":\"choose\",\"id\":\"a\"}",
      })
  void a_choice_reaches_the_bench_with_its_reason(String body) throws IOException {
    assertThat(RawHttp.post(port, "/api/say", body, JSON).status()).isEqualTo(200);
    assertThat(bench.said().poll().command())
        .isEqualTo(new MakerCommand.Choose("keep", "still under the limit"));
  }

  @Test
  void every_command_has_its_words() throws IOException {
    Map<String, MakerCommand> words = Map.ofEntries(
        entry("\"command\":\"go-on\"", new MakerCommand.GoOn()),
        entry("\"command\":\"undo\"", new MakerCommand.Undo()),
        entry(
            "\"command\":\"choose\",\"choice\":\"scrap\",\"reason\":\"fell\"",
            new MakerCommand.Choose("scrap", "fell")),
        entry("\"command\":\"abandon\",\"reason\":\"spilt\"", new MakerCommand.Abandon("spilt")),
        entry(
            "\"command\":\"note-temperature\",\"celsius\":\"68.5\"",
            new MakerCommand.NoteTemperature(685)),
        entry(
            "\"command\":\"enter-by-hand\",\"net\":\"1.976\",\"unit\":\"oz\",\"reason\":\"cable\"",
            new MakerCommand.EnterByHand(new Mass(56_018_657_695_000L), "cable")),
        entry(
            "\"command\":\"start-batch\",\"recipe\":\"Harbour Fig\",\"vessels\":\"12\",\"person\":\"M\",\"lots\":{\"Soya wax A\":\"L-7\"}",
            new MakerCommand.StartBatch("Harbour Fig", 12, "M", Map.of("Soya wax A", "L-7"))),
        entry(
            "\"command\":\"receive-lot\",\"material\":\"Soya wax A\",\"lot\":\"L-8\",\"amount\":\"20\",\"unit\":\"kg\",\"person\":\"M\"",
            new MakerCommand.ReceiveLot("Soya wax A", "L-8", Mass.ofGrams("20000"), "", "M")),
        entry(
            "\"command\":\"change-lot\",\"material\":\"Soya wax A\",\"lot\":\"L-8\"",
            new MakerCommand.ChangeLot("Soya wax A", "L-8")),
        entry(
            "\"command\":\"check-scale\",\"scale\":\"bench scale\",\"known\":\"200\",\"unit\":\"g\",\"person\":\"M\"",
            new MakerCommand.CheckScale("bench scale", Mass.ofGrams("200"), "M")),
        entry(
            "\"command\":\"note-spill\",\"amount\":\"40\",\"unit\":\"g\"",
            new MakerCommand.NoteSpill(Mass.ofGrams("40"))),
        entry(
            "\"command\":\"teach-pot\",\"pot\":\"Pot A\",\"scale\":\"bench scale\",\"person\":\"M\"",
            new MakerCommand.TeachPot("Pot A", "bench scale", "M")),
        entry(
            "\"command\":\"note\",\"batch\":\"B-1\",\"text\":\"burns even\"",
            new MakerCommand.Note("B-1", "burns even", "")),
        entry(
            "\"command\":\"correct\",\"batch\":\"B-1\",\"entry\":\"7\",\"what\":\"lot\",\"was\":\"L-7\",\"now\":\"L-8\",\"reason\":\"misread\",\"person\":\"M\"",
            new MakerCommand.Correct("B-1", 7, Correctable.LOT, "", "L-7", "L-8", "misread", "M")));
    List<Class<?>> said = new ArrayList<>();
    for (Map.Entry<String, MakerCommand> each : words.entrySet()) {
      assertThat(RawHttp.post(port, "/api/say", "{\"id\":\"a\"," + each.getKey() + "}", JSON)
              .status())
          .isEqualTo(200);
      assertThat(bench.said().poll().command()).isEqualTo(each.getValue());
      said.add(each.getValue().getClass());
    }
    assertThat(said).containsExactlyInAnyOrder(MakerCommand.class.getPermittedSubclasses());
  }

  @Test
  void what_the_bench_refuses_comes_back_with_its_words() throws IOException {
    bench.answerWith(
        command -> new Answer(false, Words.of("refused.nothing-to-undo").and("since", "10 s")));
    RawHttp.Answer answer =
        RawHttp.post(port, "/api/say", "{\"id\":\"a\",\"command\":\"undo\"}", JSON);
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.body())
        .isEqualTo(
            "{\"done\":false,\"words\":{\"key\":\"refused.nothing-to-undo\",\"with\":{\"since\":\"10 s\"}}}");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../pom.xml",
        "/..%2fpom.xml",
        "/%2e%2e/pom.xml",
        "/page/main.js",
        "/.hidden",
        "//main.js",
        "/main.js/",
        "/MAIN.JS",
        "/main.js%00",
        "/main.js;x=1/../..",
        "/api",
        "/api/",
        "/api/view/x",
        "/WEB-INF/web.xml",
        "/candlebench/web/Main.class",
        "http://candles.example/",
        "*"
      })
  void only_the_pages_own_files_are_given_out(String path) throws IOException {
    assertThat(RawHttp.get(port, path).status()).isBetween(400, 421);
  }

  @ParameterizedTest
  @ValueSource(strings = {"PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "CONNECT", "BREW"})
  void no_other_method_does_anything(String method) throws IOException {
    RawHttp.Answer answer = RawHttp.ask(
        port,
        method + " /api/say HTTP/1.1\r\nHost: localhost\r\n" + JSON
            + "\r\nConnection: close\r\nContent-Length: " + GO_ON.length() + "\r\n\r\n" + GO_ON);
    assertThat(answer.status()).isBetween(400, 501);
    assertThat(bench.said()).isEmpty();
  }

  @Test
  void nothing_runs_but_the_pages_own_scripts() throws IOException {
    for (String path : List.of("/", "/main.js", "/api/view", "/nope"))
      assertThat(RawHttp.get(port, path).head())
          .contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'", "nosniff")
          .doesNotContain("unsafe-inline", "unsafe-eval", "Server:", "jetty");
    assertThat(RawHttp.get(port, "/").body())
        .doesNotContain("<style", "onclick", "style=", "<script>");
  }

  @Test
  void what_reached_the_bench_can_be_saved_after_trouble() throws IOException {
    assertThat(RawHttp.get(port, "/api/inputs").body()).isEqualTo(ScriptedBench.INPUTS);
  }

  @Test
  void an_unchanged_file_is_not_sent_twice() throws IOException {
    String head = RawHttp.get(port, "/main.js").head();
    String tag = head.lines()
        .filter(line -> line.startsWith("ETag: "))
        .findFirst()
        .orElseThrow()
        .substring(6);
    assertThat(RawHttp.get(port, "/main.js", "If-None-Match: " + tag).status()).isEqualTo(304);
    assertThat(RawHttp.get(port, "/main.js", "If-None-Match: \"old\"").status()).isEqualTo(200);
  }

  @Test
  void the_stream_answers_without_being_asked_for_events_by_name() throws IOException {
    try (Stream stream = RawHttp.stream(port)) {
      assertThat(stream.lineWith("Content-Type")).contains("text/event-stream");
      assertThat(stream.line()).isNotEmpty();
      bench.show(Scenes.showing("77.7"));
      String view = stream.view();
      while (!view.contains("\"shown\":\"77.7\"")) view = stream.view();
      assertThat(view).startsWith("{\"revision\":").endsWith("}");
    }
  }

  @Test
  void an_error_of_ours_is_told_without_its_inside() throws IOException {
    bench.answerWith(command -> {
      throw new IllegalStateException("the inside");
    });
    RawHttp.Answer answer = RawHttp.post(port, "/api/say", GO_ON, JSON);
    assertThat(answer.status()).isEqualTo(500);
    assertThat(answer.body()).contains("the bench goes on").doesNotContain("inside");
  }

  @Test
  void the_view_is_the_same_by_either_way() throws IOException {
    bench.show(Scenes.showing("77.8"));
    try (Stream stream = RawHttp.stream(port)) {
      String streamed = stream.view();
      String asked = RawHttp.get(port, "/api/view").body();
      assertThat(streamed.replaceAll("\"ageMillis\":\\d+", ""))
          .isEqualTo(asked.replaceAll("\"ageMillis\":\\d+", ""));
    }
  }

  @Test
  void a_quiet_bench_is_still_heard_with_its_number_ageing() throws IOException {
    bench.show(Scenes.ageing(Scenes.showing("77.9")));
    try (Stream stream = RawHttp.stream(port)) {
      long first = age(stream.view());
      assertThat(age(stream.view())).isGreaterThan(first);
    }
  }

  private static long age(String view) {
    return Long.parseLong(view.replaceFirst(".*\"ageMillis\":(\\d+).*", "$1"));
  }
}
