package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.web.RawHttp.Stream;
import java.io.IOException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class ViewStreamTest {
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
  void pages_that_stop_reading_slow_nobody_down() throws IOException {
    List<Stream> stalled = new ArrayList<>();
    try (Stream awake = RawHttp.stream(server.port())) {
      awake.view();
      for (int at = 0; at < 20; at++) stalled.add(RawHttp.stream(server.port()));
      for (int round = 0; round < 2000; round++) {
        String shown = round + ".5";
        bench.show(Scenes.showing(shown));
        String view = awake.view();
        while (!view.contains("\"shown\":\"" + shown + "\"")) view = awake.view();
      }
      assertThat(server.pages()).isEqualTo(21);
    } finally {
      for (Stream each : stalled) each.close();
    }
  }

  @Test
  void a_page_that_reads_again_finds_the_newest_view_soon_not_all_it_missed() throws IOException {
    try (Stream sleeper = RawHttp.stream(server.port());
        Stream awake = RawHttp.stream(server.port())) {
      sleeper.view();
      int rounds = 6000;
      for (int round = 0; round < rounds; round++) {
        String shown = round + ".25";
        bench.show(Scenes.showing(shown));
        String view = awake.view();
        while (!view.contains("\"shown\":\"" + shown + "\"")) view = awake.view();
      }
      int heard = 0;
      while (!sleeper.view().contains("\"shown\":\"" + (rounds - 1) + ".25\"")) heard++;
      assertThat(heard).isLessThan(rounds);
    }
  }

  @Test
  void one_page_too_many_is_told_so_and_the_others_go_on() throws IOException {
    List<Stream> open = new ArrayList<>();
    try {
      for (int at = 0; at < ViewStream.PAGES_MOST; at++) {
        Stream stream = RawHttp.stream(server.port());
        open.add(stream);
        stream.view();
      }
      RawHttp.Answer answer = RawHttp.get(server.port(), "/api/stream");
      assertThat(answer.status()).isEqualTo(503);
      assertThat(answer.body()).contains("too many pages are open");
      bench.show(Scenes.showing("5.5"));
      for (Stream each : open) {
        String view = each.view();
        while (!view.contains("\"shown\":\"5.5\"")) view = each.view();
      }
    } finally {
      for (Stream each : open) each.close();
    }
    try (Stream next = whenThereIsRoom()) {
      assertThat(next.view()).contains("\"shown\":\"5.5\"");
    }
  }

  @Test
  void pages_that_left_are_forgotten() throws IOException {
    for (int at = 0; at < 5; at++)
      try (Stream stream = RawHttp.stream(server.port())) {
        stream.view();
      }
    try (Stream witness = RawHttp.stream(server.port())) {
      while (server.pages() > 1) witness.view();
      assertThat(server.pages()).isEqualTo(1);
    }
  }

  @Test
  void a_server_that_stops_ends_its_streams_and_lets_the_bench_go() throws IOException {
    try (Stream stream = RawHttp.stream(server.port())) {
      stream.view();
      assertThat(bench.watchers()).isEqualTo(1);
      server.close();
      assertThat(bench.watchers()).isZero();
      assertThatThrownBy(() -> {
            while (true) stream.view();
          })
          .isInstanceOf(IOException.class)
          .hasMessageContaining("ended");
    }
  }

  /** The places of pages that left are free once a view could not be sent to them. */
  private Stream whenThereIsRoom() throws IOException {
    while (true) {
      Stream stream = RawHttp.stream(server.port());
      if (stream.line().contains(" 200 ")) return stream;
      stream.close();
    }
  }
}
