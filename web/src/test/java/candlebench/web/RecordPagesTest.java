package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.journal.Projections;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordPagesTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final HttpClient HTTP = HttpClient.newHttpClient();

  @TempDir
  static Path folder;

  private static SqliteJournal journal;
  private static Projections lists;
  private static ScriptedBench bench;
  private static WebServer server;

  @BeforeAll
  static void start() throws Exception {
    Path file = Purpose.RECORD.under(folder);
    journal = SqliteJournal.open(file, Purpose.RECORD);
    new RecordScenes(journal).twelveWithTroubles("20261125-1").three("20261125-2");
    lists = Projections.open(Projections.beside(file), journal);
    bench = new ScriptedBench(Scenes.pouring());
    Site bare = bench.site();
    server = new WebServer(
        new Site(
            bare.bench(),
            bare.nanos(),
            bare.products(),
            Optional.empty(),
            Optional.of(new RecordBook(journal, lists)),
            Optional.empty()),
        InetAddress.getLoopbackAddress(),
        0);
  }

  @AfterAll
  static void stop() {
    server.close();
    lists.close();
    journal.close();
  }

  private static HttpResponse<String> get(String path, Map<String, String> query) throws Exception {
    String asked = query.entrySet().stream()
        .map(each ->
            each.getKey() + "=" + URLEncoder.encode(each.getValue(), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&"));
    return HTTP.send(
        HttpRequest.newBuilder(URI.create(server.address() + path + "?" + asked))
            .build(),
        BodyHandlers.ofString());
  }

  private static JsonNode json(String path, Map<String, String> query) throws Exception {
    HttpResponse<String> answer = get(path, query);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    return JSON.readTree(answer.body());
  }

  private static JsonNode sheet(String label) throws Exception {
    return json("api/batch", Map.of("code", "20261125-1", "label", label));
  }

  private static HttpResponse<String> say(String body) throws IOException, InterruptedException {
    return HTTP.send(
        HttpRequest.newBuilder(URI.create(server.address() + "api/say"))
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(body))
            .build(),
        BodyHandlers.ofString());
  }

  private static List<String> texts(JsonNode rows, String field) {
    return rows.findValuesAsText(field);
  }

  @Test
  void batches_are_listed_with_the_head_of_the_record() throws Exception {
    JsonNode found = json("api/batches", Map.of());
    assertThat(texts(found.get("batches"), "code")).containsExactly("20261125-2", "20261125-1");
    assertThat(found.get("more").asBoolean()).isFalse();
    assertThat(found.get("practice").asBoolean()).isFalse();
    assertThat(found.get("head").asText()).isEqualTo(journal.head());
    String first = found.get("batches").get(0).get("first").asText();
    assertThat(texts(json("api/batches", Map.of("before", first)).get("batches"), "code"))
        .containsExactly("20261125-1");
  }

  @Test
  void a_sheet_tells_target_actual_difference_load_both_ways_and_why_it_deviates()
      throws Exception {
    JsonNode sheet = sheet("");
    JsonNode oil = sheet.get("parts").get(1);
    assertThat(oil.get("share").asText()).isEqualTo("8\u00a0%");
    assertThat(oil.get("otherShare").asText()).isEqualTo("7.41\u00a0%");
    JsonNode line = oil.get("lines").get(0);
    assertThat(line.get("target").asText()).isEqualTo("224.3\u00a0g");
    assertThat(line.get("exactTarget").asText()).isEqualTo("224.256\u00a0g");
    assertThat(line.get("net").asText()).isEqualTo("229.8\u00a0g");
    assertThat(line.get("difference").asText()).isEqualTo("+5.5\u00a0g");
    assertThat(line.get("lots").asText()).contains("Q-31 (180.3\u00a0g)", "Q-32 (49.5\u00a0g)");
    assertThat(line.get("curve").get(0).get("path").asText()).startsWith("M0 600L");
    JsonNode load = sheet.get("loads").get(0);
    assertThat(load.get("ofWax").asText()).isEqualTo("8.20\u00a0%");
    assertThat(load.get("ofTotal").asText()).isEqualTo("7.58\u00a0%");
    assertThat(texts(sheet.get("deviations"), "reason"))
        .contains("below the tested 10 % of the wax");
    assertThat(texts(sheet.get("deviations"), "kind"))
        .contains("lot-unknown", "over-poured", "remedy", "lot-changed", "taken-back");
    assertThat(sheet.get("struck")).hasSize(1);
    assertThat(sheet.get("vessels")).hasSize(12);
    assertThat(sheet.get("head").asText()).isEqualTo(journal.head());
  }

  @Test
  void net_content_is_held_against_the_label_that_is_asked_for() throws Exception {
    JsonNode kept = sheet("250 g").get("content").get(0);
    assertThat(kept.get("keepsTheRules").asBoolean()).isTrue();
    assertThat(kept.get("meanShort").asText()).isEmpty();
    assertThat(kept.get("t1").asText()).isEqualTo("241.00\u00a0g");
    JsonNode broken = sheet("9 oz").get("content").get(0);
    assertThat(broken.get("keepsTheRules").asBoolean()).isFalse();
    assertThat(broken.get("meanShort").asText()).isNotEmpty();
    assertThat(broken.get("aim").asText()).isNotEmpty();
  }

  @Test
  void a_label_of_eight_ounces_prints_226_g_and_its_code_as_a_qr_code() throws Exception {
    JsonNode label = sheet("8 oz").get("label");
    assertThat(label.get("ounces").asText()).isEqualTo("8 oz");
    assertThat(label.get("metric").asText()).isEqualTo("226 g");
    assertThat(label.get("safety")).hasSize(3);
    assertThat(label.get("trim").asText()).contains("3/16 in");
    assertThat(label.get("deference").asText()).contains("law where the candle is sold");
    assertThat(QrReader.read(
            label.get("qr").get("size").asInt(), label.get("qr").get("path").asText()))
        .isEqualTo("20261125-1");
  }

  @Test
  void from_a_lot_to_its_batches_and_vessels_and_unknown_lots_too() throws Exception {
    JsonNode uses = json("api/lots", Map.of("lot", "Q-32")).get("uses");
    assertThat(texts(uses, "code")).containsExactly("20261125-2", "20261125-1");
    assertThat(uses.get(1).get("lot").get("vessels")).hasSize(12);
    JsonNode unknown = json("api/lots", Map.of("unknown", "true")).get("uses");
    assertThat(unknown.get(0).get("lot").get("material").asText()).isEqualTo("wick");
    assertThat(json("api/lots", Map.of("lot", "Q-99")).get("uses")).isEmpty();
    JsonNode stock = json("api/lots", Map.of()).get("stock");
    assertThat(texts(stock, "left")).contains("319.7 g");
  }

  @Test
  void the_whole_record_comes_as_a_file_in_each_form() throws Exception {
    HttpResponse<String> csv = get("api/export", Map.of("as", "csv"));
    assertThat(csv.headers().firstValue("Content-Disposition"))
        .contains("attachment; filename=\"candlebench-record.csv\"");
    assertThat(csv.body()).startsWith("\uFEFFrow,batch,").contains(journal.head());
    assertThat(get("api/export", Map.of("as", "csv-comma")).body()).contains(";229,8;");
    HttpResponse<String> lines = get("api/export", Map.of("as", "json"));
    assertThat(lines.body().lines()).hasSize((int) journal.length() + 1);
  }

  @ParameterizedTest
  @CsvSource({
    "api/batch, code, 20261125-9, 404, list of batches",
    "api/batch, code, ../../etc/passwd, 404, no batch",
    "api/batch, code, '', 404, no batch",
    "api/batches, before, x', 400, number of an entry",
    "api/export, as, xml, 400, csv-comma"
  })
  void what_is_not_there_is_refused_in_words(
      String path, String name, String value, int status, String words) throws Exception {
    HttpResponse<String> answer = get(path, Map.of(name, value));
    assertThat(answer.statusCode()).isEqualTo(status);
    assertThat(answer.body()).contains(words);
  }

  @Test
  void a_label_that_could_be_a_capacity_is_refused() throws Exception {
    HttpResponse<String> answer =
        get("api/batch", Map.of("code", "20261125-1", "label", "8 fl oz"));
    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(answer.body()).contains("227 g or 8 oz");
  }

  @Test
  void a_correction_of_what_is_not_there_never_reaches_the_bench() throws Exception {
    bench.said().clear();
    String correct = "{\"id\":\"c1\",\"command\":\"correct\",\"batch\":\"20261125-1\","
        + "\"entry\":\"%s\",\"what\":\"%s\",\"now\":\"5\",\"reason\":\"misread\"}";
    assertThat(say(String.format(correct, "999", "weight")).body()).contains("is not of batch");
    assertThat(say(String.format(correct, "3", "weight")).body())
        .contains("has no weight to correct");
    assertThat(say("{\"id\":\"c2\",\"command\":\"note\",\"batch\":\"none\",\"text\":\"x\"}")
            .statusCode())
        .isEqualTo(404);
    assertThat(bench.said()).isEmpty();
    assertThat(say(String.format(correct, "5", "weight")).statusCode()).isEqualTo(200);
    assertThat(bench.said()).hasSize(1);
  }

  @Test
  void a_station_without_a_record_says_so() throws Exception {
    try (WebServer without = new WebServer(
        new ScriptedBench(Scenes.pouring()).site(), InetAddress.getLoopbackAddress(), 0)) {
      RawHttp.Answer answer = RawHttp.get(without.port(), "/api/batches");
      assertThat(answer.status()).isEqualTo(404);
      assertThat(answer.body()).contains("no record is open here");
    }
  }
}
