package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class TcpOutletTest {
  private static final byte[] FRAME = "450.0 g\r\n".getBytes(StandardCharsets.US_ASCII);
  private static final int DEADLINE_MILLIS = 20_000;

  private final TcpOutlet outlet = new TcpOutlet(0);

  @AfterEach
  void close() {
    outlet.close();
  }

  @Test
  void frames_go_to_the_program_that_is_connected_and_its_commands_come_back() throws IOException {
    assertThat(outlet.offer(FRAME)).as("nobody there").isFalse();
    try (Socket program = connect()) {
      offerUntilTaken(FRAME);
      assertThat(program.getInputStream().readNBytes(FRAME.length)).isEqualTo(FRAME);
      program.getOutputStream().write("T\r\n".getBytes(StandardCharsets.US_ASCII));
      assertThat(takenUntil(3)).isEqualTo("T\r\n");
    }
  }

  @Test
  void a_second_program_waits_until_the_first_has_gone() throws IOException {
    try (Socket second = new Socket()) {
      try (Socket first = connect()) {
        offerUntilTaken(FRAME);
        second.connect(first.getRemoteSocketAddress(), DEADLINE_MILLIS);
        second.setSoTimeout(DEADLINE_MILLIS);
        outlet.offer(FRAME);
        assertThat(first.getInputStream().readNBytes(2 * FRAME.length)).hasSize(2 * FRAME.length);
      }
      byte[] other = "second ".getBytes(StandardCharsets.US_ASCII);
      long deadline = System.nanoTime() + DEADLINE_MILLIS * 1_000_000L;
      while (second.getInputStream().available() == 0) {
        assertThat(System.nanoTime()).isLessThan(deadline);
        outlet.taken();
        outlet.offer(other);
      }
      assertThat(second.getInputStream().readNBytes(other.length)).isEqualTo(other);
    }
  }

  @Test
  void a_program_that_does_not_read_loses_whole_frames_and_never_half_a_one() throws IOException {
    try (Socket program = connect()) {
      offerUntilTaken(FRAME);
      int sent = 1;
      int refused = 0;
      while (refused < 100) {
        if (outlet.offer(FRAME)) sent++;
        else refused++;
        assertThat(sent).isLessThan(10_000_000);
      }
      int read = 0;
      while (read < sent) {
        assertThat(program.getInputStream().readNBytes(FRAME.length)).isEqualTo(FRAME);
        read++;
        if (sent - read < 2) outlet.offer(new byte[0]);
      }
    }
  }

  @Test
  void pulling_the_plug_ends_the_connection_and_the_same_port_answers_again() throws IOException {
    try (Socket program = connect()) {
      offerUntilTaken(FRAME);
      program.getInputStream().readNBytes(FRAME.length);
      outlet.unplug();
      assertThat(program.getInputStream().read()).isEqualTo(-1);
    }
    assertThatThrownBy(this::connect).isInstanceOf(IOException.class);
    outlet.replug();
    try (Socket program = connect()) {
      offerUntilTaken(FRAME);
      assertThat(program.getInputStream().readNBytes(FRAME.length)).isEqualTo(FRAME);
    }
  }

  private Socket connect() throws IOException {
    Socket socket = new Socket(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), outlet.port());
    socket.setSoTimeout(DEADLINE_MILLIS);
    return socket;
  }

  private void offerUntilTaken(byte[] frame) {
    long deadline = System.nanoTime() + DEADLINE_MILLIS * 1_000_000L;
    while (!outlet.offer(frame)) assertThat(System.nanoTime()).isLessThan(deadline);
  }

  private String takenUntil(int length) {
    StringBuilder taken = new StringBuilder();
    long deadline = System.nanoTime() + DEADLINE_MILLIS * 1_000_000L;
    while (taken.length() < length) {
      taken.append(new String(outlet.taken(), StandardCharsets.US_ASCII));
      assertThat(System.nanoTime()).isLessThan(deadline);
    }
    return taken.toString();
  }
}
