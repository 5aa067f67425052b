package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyInt;
import static org.mockito.ArgumentMatchers.anyString;
import static org.mockito.Mockito.inOrder;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.mockStatic;
import static org.mockito.Mockito.times;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.when;

import candlebench.protocol.LineSettings;
import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mockito.InOrder;
import org.mockito.MockedStatic;

/** A port of the library that lies as measured: open after an unplug, no bytes written, -1 for ever. */
class SerialBytePortTest {
  private static final LineSettings SEVEN_EVEN = LineSettings.of("2400-7E2");

  @TempDir
  Path folder;

  @Test
  void an_unplugged_port_is_gone_at_the_first_minus_one_and_never_read_again() {
    SerialPort library = mock(SerialPort.class);
    when(library.isOpen()).thenReturn(true);
    when(library.readBytes(any(byte[].class), anyInt())).thenReturn(0, -1, -1, 5);
    when(library.writeBytes(any(byte[].class), anyInt())).thenReturn(0);
    SerialBytePort port = new SerialBytePort(library, "/dev/scale");
    byte[] bytes = new byte[16];
    assertThat(port.read(bytes)).isZero();
    assertThat(port.write(new byte[] {'Q'})).isFalse();
    for (int i = 0; i < 100; i++) assertThat(port.read(bytes)).isEqualTo(BytePort.GONE);
    assertThat(port.write(new byte[] {'Q'})).isFalse();
    assertThat(port.whyGone())
        .isEqualTo(new LinkReport(LinkState.LOST, Map.of("device", "/dev/scale")));
    verify(library, times(2)).readBytes(any(byte[].class), anyInt());
    verify(library, times(1)).writeBytes(any(byte[].class), anyInt());
  }

  @Test
  void it_is_set_before_it_is_opened_and_emptied_after() {
    SerialPort library = mock(SerialPort.class);
    when(library.openPort()).thenReturn(true);
    when(library.getLastErrorCode()).thenReturn(25);
    Line.Opening opening = opening(library, "/dev/scale", SEVEN_EVEN);
    assertThat(opening).isInstanceOf(Line.Opened.class);
    InOrder order = inOrder(library);
    order
        .verify(library)
        .setComPortParameters(2400, 7, SerialPort.TWO_STOP_BITS, SerialPort.EVEN_PARITY);
    order
        .verify(library)
        .setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, BytePort.READ_WAIT_MILLIS, 0);
    order.verify(library).openPort();
    order.verify(library).flushIOBuffers();
  }

  @ParameterizedTest
  @CsvSource({"1,DENIED", "13,DENIED", "2,HELD", "11,HELD", "16,HELD", "5,LOST", "6,LOST", "19,LOST"
  })
  void a_port_that_does_not_open_says_why(int code, LinkState state) throws Exception {
    Path device = Files.createFile(folder.resolve("device"));
    SerialPort library = mock(SerialPort.class);
    when(library.openPort()).thenReturn(false);
    when(library.getLastErrorCode()).thenReturn(code);
    Line.Opening opening = opening(library, device.toString(), SEVEN_EVEN);
    assertThat(opening).isInstanceOfSatisfying(Line.NotOpened.class, refused -> {
      assertThat(refused.why().state()).isEqualTo(state);
      assertThat(refused.why().with()).containsEntry("device", device.toString());
      if (state == LinkState.DENIED)
        assertThat(refused.why().with().get("group")).isEqualTo(group(device));
    });
  }

  @Test
  void a_device_that_vanished_before_it_was_opened_is_lost() {
    SerialPort library = mock(SerialPort.class);
    when(library.getLastErrorCode()).thenReturn(2);
    assertThat(opening(library, folder.resolve("gone").toString(), SEVEN_EVEN))
        .isInstanceOfSatisfying(
            Line.NotOpened.class,
            refused -> assertThat(refused.why().state()).isEqualTo(LinkState.LOST));
  }

  @Test
  void a_device_that_is_not_there_is_lost_and_looked_up_anew_at_every_attempt() {
    try (MockedStatic<SerialPort> library = mockStatic(SerialPort.class)) {
      library
          .when(() -> SerialPort.getCommPort(anyString()))
          .thenThrow(new SerialPortInvalidPortException("gone", new java.io.IOException("gone")));
      Line line = new SerialLine("/dev/serial/by-id/scale", SEVEN_EVEN);
      for (int attempt = 1; attempt <= 3; attempt++) {
        assertThat(line.open())
            .isEqualTo(new Line.NotOpened(
                new LinkReport(LinkState.LOST, Map.of("device", "/dev/serial/by-id/scale"))));
        library.verify(() -> SerialPort.getCommPort("/dev/serial/by-id/scale"), times(attempt));
      }
    }
  }

  private static Line.Opening opening(SerialPort port, String device, LineSettings settings) {
    try (MockedStatic<SerialPort> library = mockStatic(SerialPort.class)) {
      library.when(() -> SerialPort.getCommPort(device)).thenReturn(port);
      return new SerialLine(device, settings).open();
    }
  }

  private static String group(Path file) {
    try {
      return Files.getAttribute(file, "posix:group").toString();
    } catch (java.io.IOException unreadable) {
      throw new AssertionError(unreadable);
    }
  }
}
