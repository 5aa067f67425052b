package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.web.RawHttp.Stream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What comes in numbers, without end, too slowly or out of shape: the server stays up, small, and answers the next one. */
@Timeout(60)
class HostileRequestsTest {
  private static final String JSON = "Content-Type: application/json";
  private static final int MANY = 200;
  private static final int SLOW = 40;
  private static final long MEGABYTE = 1024 * 1024;

  private ScriptedBench bench;
  private WebServer server;

  @BeforeEach
  void start() {
    bench = new ScriptedBench(Scenes.pouring());
    server = new WebServer(bench.site(), InetAddress.getLoopbackAddress(), 0);
  }

  @AfterEach
  void stop() {
    server.close();
  }

  @Test
  void ten_megabytes_are_refused_without_being_kept() throws IOException {
    long before = used();
    assertThat(flood("Content-Length: " + 10 * MEGABYTE)).isIn(413, 0);
    assertThat(flood("Transfer-Encoding: chunked")).isIn(413, 400, 0);
    assertThat(used() - before).isLessThan(5 * MEGABYTE);
    assertThat(bench.said()).isEmpty();
    assertAnswers();
  }

  @Test
  void two_hundred_posts_at_once_are_each_done_once() throws Exception {
    ExecutorService many = Executors.newFixedThreadPool(MANY);
    List<Callable<Integer>> posts = new ArrayList<>();
    for (int at = 0; at < MANY; at++) {
      String body = "{\"id\":\"p" + at + "\",\"command\":\"go-on\"}";
      posts.add(() -> RawHttp.post(server.port(), "/api/say", body, JSON).status());
    }
    List<Future<Integer>> answers = many.invokeAll(posts, 50, TimeUnit.SECONDS);
    many.shutdown();
    for (Future<Integer> each : answers) assertThat(each.get()).isEqualTo(200);
    Set<String> ids = new HashSet<>();
    bench.said().forEach(said -> ids.add(said.id()));
    assertThat(bench.said()).hasSize(MANY);
    assertThat(ids).hasSize(MANY);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GET /api/view HTTP/1.1\r\nHost: local",
        "POST /api/say HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 500\r\n\r\n{\"id\"",
        "POST /api/say HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n1f4\r\n{\"id\""
      })
  void requests_that_never_end_keep_nobody_waiting(String beginning) throws IOException {
    List<Socket> slow = new ArrayList<>();
    try {
      for (int at = 0; at < SLOW; at++) {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port());
        socket.getOutputStream().write(beginning.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
        slow.add(socket);
      }
      assertAnswers();
    } finally {
      for (Socket each : slow) each.close();
    }
    assertThat(bench.said()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Host: localhost\r\nHost: candles.example",
        "Host: localhost\r\nContent-Length: 5\r\nContent-Length: 6",
        "Host: localhost\r\nContent-Length: 5\r\nTransfer-Encoding: chunked",
        "Host: localhost\r\nTransfer-Encoding: gzip, chunked",
        "Host: localhost\r\nContent-Length: -1",
        "Host: localhost\r\nX: a\r\n folded",
        "Host: localhost\r\nX : a",
        "Host: local\u0000host",
        "Host : localhost"
      })
  void a_header_that_can_be_read_two_ways_is_refused(String headers) throws IOException {
    RawHttp.Answer answer = RawHttp.ask(
        server.port(),
        "POST /api/say HTTP/1.1\r\n" + headers + "\r\n" + JSON
            + "\r\nConnection: close\r\n\r\n{\"id\":\"a\",\"command\":\"go-on\"}");
    assertThat(answer.status()).isBetween(400, 501);
    assertThat(bench.said()).isEmpty();
  }

  @Test
  void heads_without_end_and_paths_without_end_are_refused() throws IOException {
    String much = "x".repeat(20_000);
    assertThat(RawHttp.get(server.port(), "/" + much).status()).isBetween(400, 431);
    assertThat(RawHttp.get(server.port(), "/api/view", "X: " + much).status()).isEqualTo(431);
    assertThat(RawHttp.get(server.port(), "/api/batches?before=" + much).status())
        .isBetween(400, 431);
    assertAnswers();
  }

  @Test
  void a_hundred_pages_that_never_read_cost_little_memory() throws IOException {
    List<Stream> deaf = new ArrayList<>();
    try (Stream awake = RawHttp.stream(server.port())) {
      awake.view();
      for (int at = 0; at < 100; at++) deaf.add(RawHttp.stream(server.port()));
      long before = used();
      for (int round = 0; round < 2000; round++) {
        String shown = round + ".5";
        bench.show(Scenes.showing(shown));
        String view = awake.view();
        while (!view.contains("\"shown\":\"" + shown + "\"")) view = awake.view();
      }
      assertThat(server.pages()).isEqualTo(101);
      assertThat(used() - before)
          .as("two thousand views of some kilobytes to each of a hundred pages would be %s MB", 400)
          .isLessThan(20 * MEGABYTE);
    } finally {
      for (Stream each : deaf) each.close();
    }
  }

  private void assertAnswers() throws IOException {
    assertThat(RawHttp.get(server.port(), "/api/view").status()).isEqualTo(200);
    assertThat(RawHttp.get(server.port(), "/").status()).isEqualTo(200);
  }

  /** Sends ten megabytes of a body; the status, or 0 where the line was cut before it could be read. */
  private int flood(String length) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      socket.setSoTimeout(10_000);
      OutputStream out = socket.getOutputStream();
      out.write(
          ("POST /api/say HTTP/1.1\r\nHost: localhost\r\n" + JSON + "\r\n" + length + "\r\n\r\n")
              .getBytes(StandardCharsets.US_ASCII));
      byte[] block = ("4000\r\n" + "x".repeat(0x4000) + "\r\n").getBytes(StandardCharsets.US_ASCII);
      try {
        for (long sent = 0; sent < 10 * MEGABYTE; sent += block.length) out.write(block);
      } catch (SocketException cut) {
        return 0;
      }
      byte[] head = socket.getInputStream().readNBytes("HTTP/1.1 413".length());
      String line = new String(head, StandardCharsets.US_ASCII);
      return line.startsWith("HTTP/1.1 ") ? Integer.parseInt(line.substring(9, 12)) : 0;
    }
  }

  /** The heap in use after a collection. */
  private static long used() {
    System.gc();
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
  }
}
