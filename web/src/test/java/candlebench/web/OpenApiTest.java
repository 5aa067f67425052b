package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.view.StationView;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written down of the HTTP interface is what the server does. */
class OpenApiTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern ROUTE = Pattern.compile("\"(/api/[a-z.-]+)\"");
  private static final String JSON_BODY = "Content-Type: application/json";

  @TempDir
  static Path folder;

  private static ServedRecord record;
  private static ScaleSearch search;
  private static WebServer server;
  private static JsonNode document;

  @BeforeAll
  static void start() throws Exception {
    record = new ServedRecord(folder);
    search = new ScaleSearch(new AccessTest.NoChoice());
    Site.Hands hands = (hand, down) -> {};
    server = new WebServer(
        new Site(
            record.bench(),
            System::nanoTime,
            record.bench().site().products(),
            Optional.of(search),
            Optional.of(new RecordBook(record.journal(), record.lists())),
            Optional.of(hands)),
        InetAddress.getLoopbackAddress(),
        0);
    document = JSON.readTree(body("/api/openapi.json"));
  }

  @AfterAll
  static void stop() {
    server.close();
    search.close();
    record.close();
  }

  @Test
  void each_route_of_the_server_is_written_down_and_no_other() throws IOException {
    Set<String> routes = new TreeSet<>();
    try (Stream<Path> sources = Files.list(Path.of("src/main/java/candlebench/web"))) {
      for (Path source : sources.toList()) {
        Matcher route = ROUTE.matcher(Files.readString(source));
        while (route.find()) routes.add(route.group(1));
      }
    }
    Set<String> written = new TreeSet<>();
    document.get("paths").fieldNames().forEachRemaining(written::add);
    assertThat(written).isEqualTo(routes).hasSizeGreaterThan(12);
  }

  @Test
  void each_route_answers_by_the_methods_that_are_written_down_and_by_no_other()
      throws IOException {
    for (Map.Entry<String, JsonNode> path : document.get("paths").properties()) {
      if (path.getKey().equals("/api/stream")) continue;
      int get = RawHttp.get(server.port(), path.getKey()).status();
      int post = RawHttp.post(server.port(), path.getKey(), "{", JSON_BODY).status();
      if (path.getValue().has("get"))
        assertThat(get).as("GET " + path.getKey()).isIn(200, 400, 404);
      else assertThat(get).as("GET " + path.getKey()).isIn(404, 405);
      assertThat(post)
          .as("POST " + path.getKey())
          .isIn(path.getValue().has("post") ? Set.of(400) : Set.of(404, 405));
    }
  }

  @Test
  void views_of_every_scene_are_as_written_down() throws IOException {
    for (Map.Entry<String, StationView> scene : Scenes.all().entrySet()) {
      record.bench().show(scene.getValue());
      assertFits("View", body("/api/view"), scene.getKey());
    }
  }

  @Test
  void answers_are_as_written_down() throws IOException {
    Map<String, String> answers = Map.of(
        "Setup", "/api/setup",
        "Ports", "/api/ports",
        "Search", "/api/find",
        "Batches", "/api/batches",
        "Lots", "/api/lots",
        "Scales", "/api/scales",
        "Refusal", "/api/export?as=paper");
    for (Map.Entry<String, String> each : answers.entrySet())
      assertFits(each.getKey(), body(each.getValue()), each.getValue());
    String command = "{\"id\":\"a\",\"command\":\"go-on\"}";
    assertFits("Command", command, "a command");
    assertFits(
        "Answer", RawHttp.post(server.port(), "/api/say", command, JSON_BODY).body(), "an answer");
    assertThat(faults("Command", "{\"id\":\"../a\",\"command\":\"dance\"}")).hasSize(2);
    assertThat(faults("View", body("/api/setup"))).isNotEmpty();
  }

  private static void assertFits(String schema, String json, String which) {
    assertThat(faults(schema, json)).as(which + ": " + json).isEmpty();
  }

  private static List<String> faults(String name, String json) {
    ObjectNode schema = JSON.createObjectNode();
    schema.set("components", document.get("components"));
    schema.put("$ref", "#/components/schemas/" + name);
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(schema.toString(), InputFormat.JSON)
        .validate(json, InputFormat.JSON)
        .stream()
        .map(Object::toString)
        .toList();
  }

  private static String body(String path) throws IOException {
    return RawHttp.get(server.port(), path).body();
  }
}
