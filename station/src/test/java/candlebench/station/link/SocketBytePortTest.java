package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SocketBytePortTest {
  private ServerSocket server;
  private BytePort port;
  private Socket farEnd;

  @BeforeEach
  void connect() throws IOException {
    server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    Line.Opening opening = new TcpLine("127.0.0.1", server.getLocalPort()).open();
    assertThat(opening).isInstanceOf(Line.Opened.class);
    port = ((Line.Opened) opening).port();
    farEnd = server.accept();
  }

  @AfterEach
  void close() throws IOException {
    port.close();
    farEnd.close();
    server.close();
  }

  @Test
  void bytes_arrive_silence_is_zero_and_the_end_is_gone() throws IOException {
    assertThat(port.read(new byte[8])).isZero();
    send("ST,+00012.3  g\r\n");
    assertThat(read(16)).isEqualTo("ST,+00012.3  g\r\n");
    farEnd.close();
    assertThat(port.read(new byte[8])).isEqualTo(BytePort.GONE);
    assertThat(port.whyGone())
        .isEqualTo(new LinkReport(
            LinkState.LOST,
            Map.of("host", "127.0.0.1", "port", Integer.toString(server.getLocalPort()))));
  }

  @Test
  void what_is_written_arrives_at_the_far_end() throws IOException {
    assertThat(port.write("Q\r\n".getBytes(StandardCharsets.US_ASCII))).isTrue();
    assertThat(farEnd.getInputStream().readNBytes(3)).containsExactly('Q', '\r', '\n');
  }

  @Test
  void closing_it_ends_a_read_that_waits() {
    port.close();
    assertThat(port.read(new byte[8])).isEqualTo(BytePort.GONE);
    assertThat(port.write(new byte[] {1})).isFalse();
  }

  @ParameterizedTest
  @ValueSource(ints = {251, 252, 253, 254})
  void a_server_that_speaks_telnet_is_named(int verb) throws IOException {
    farEnd.getOutputStream().write(new byte[] {(byte) 255, (byte) verb, 3});
    assertThat(readToEnd()).isEmpty();
    assertThat(port.whyGone().state()).isEqualTo(LinkState.TELNET);
  }

  @Test
  void telnet_is_known_from_its_beginning_even_if_that_comes_byte_by_byte() throws IOException {
    farEnd.setTcpNoDelay(true);
    farEnd.getOutputStream().write(255);
    byte[] bytes = new byte[8];
    int count;
    do count = port.read(bytes);
    while (count == 0);
    farEnd.getOutputStream().write(253);
    readToEnd();
    assertThat(port.whyGone().state()).isEqualTo(LinkState.TELNET);
  }

  @Test
  void bytes_of_all_values_later_on_are_not_taken_for_telnet() throws IOException {
    farEnd.getOutputStream().write(new byte[] {'S', (byte) 255, (byte) 251, 3});
    farEnd.close();
    assertThat(readToEnd()).hasSize(4);
    assertThat(port.whyGone().state()).isEqualTo(LinkState.LOST);
  }

  @Test
  void a_server_that_hangs_up_because_its_port_is_in_use_is_named() throws IOException {
    send("Port's device already in use\r\n");
    farEnd.close();
    readToEnd();
    assertThat(port.whyGone().state()).isEqualTo(LinkState.HELD);
  }

  @Test
  void nobody_at_the_address_is_lost() throws IOException {
    int free;
    try (ServerSocket gone = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      free = gone.getLocalPort();
    }
    assertThat(new TcpLine("127.0.0.1", free).open())
        .isInstanceOfSatisfying(
            Line.NotOpened.class,
            refused -> assertThat(refused.why().state()).isEqualTo(LinkState.LOST));
    assertThat(new TcpLine("no-such-host.invalid", 4001).open())
        .isInstanceOfSatisfying(
            Line.NotOpened.class,
            refused ->
                assertThat(refused.why().with()).containsEntry("host", "no-such-host.invalid"));
  }

  private void send(String text) throws IOException {
    farEnd.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
  }

  private String read(int count) {
    StringBuilder text = new StringBuilder();
    byte[] bytes = new byte[64];
    while (text.length() < count) {
      int n = port.read(bytes);
      assertThat(n).isNotNegative();
      text.append(new String(bytes, 0, n, StandardCharsets.US_ASCII));
    }
    return text.toString();
  }

  private byte[] readToEnd() {
    byte[] all = new byte[0];
    byte[] bytes = new byte[64];
    for (int n = port.read(bytes); n >= 0; n = port.read(bytes)) {
      all = Arrays.copyOf(all, all.length + n);
      System.arraycopy(bytes, 0, all, all.length - n, n);
    }
    return all;
  }
}
