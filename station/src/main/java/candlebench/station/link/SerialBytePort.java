package candlebench.station.link;

import candlebench.protocol.LineSettings;
import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.util.Map;

/**
 * A serial port, by jSerialComm.
 *
 * <p>Reading is semi-blocking: it costs no processor while all is silent and wakes with the first byte. After an unplug the library
 * still calls the port open, takes no bytes and answers every read with -1 at once: so the first -1 is final. A device's name is
 * resolved when the library first sees it, so every attempt asks for it anew. Tried on Linux; the codes of Windows are from its
 * documents (System Error Codes), not tried.
 */
final class SerialBytePort implements BytePort {
  private static final int EINVAL = 22;
  private static final LineSettings PLAIN = LineSettings.of("9600-8N1");

  private final SerialPort port;
  private final String device;
  private boolean gone;

  SerialBytePort(SerialPort port, String device) {
    this.port = port;
    this.device = device;
  }

  static Line.Opening open(String device, LineSettings settings) {
    SerialPort port;
    try {
      port = SerialPort.getCommPort(device);
    } catch (SerialPortInvalidPortException notThere) {
      return notOpened(LinkState.LOST, device, "");
    }
    set(port, settings);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_WAIT_MILLIS, 0);
    // The library's own code after an opening that succeeded may say that it failed: the answer
    // counts, not the code.
    if (!isOpened(port, settings)) return refusal(device, port.getLastErrorCode());
    // What lies in the buffers is from before we listened, and may be half a frame or an hour old.
    port.flushIOBuffers();
    return new Line.Opened(new SerialBytePort(port, device));
  }

  /**
   * A pseudo-terminal stays as the last program set it, even one that was killed, but it knows neither seven data bits nor parity. Asked
   * for these and for nothing else that would change, the system answers that nothing can be done as asked; so something is changed first.
   */
  private static boolean isOpened(SerialPort port, LineSettings settings) {
    if (port.openPort()) return true;
    if (port.getLastErrorCode() != EINVAL || settings.equals(PLAIN)) return false;
    set(port, PLAIN);
    if (!port.openPort()) return false;
    port.closePort();
    set(port, settings);
    return port.openPort();
  }

  private static void set(SerialPort port, LineSettings settings) {
    port.setComPortParameters(
        settings.baud(), settings.dataBits(), stopBits(settings), parity(settings));
  }

  @Override
  public int read(byte[] into) {
    if (gone) return GONE;
    int count = port.readBytes(into, into.length);
    gone = count < 0;
    return gone ? GONE : count;
  }

  @Override
  public boolean write(byte[] bytes) {
    return !gone && port.writeBytes(bytes, bytes.length) == bytes.length;
  }

  @Override
  public LinkReport whyGone() {
    return new LinkReport(LinkState.LOST, Map.of("device", device));
  }

  @Override
  public void close() {
    port.closePort();
  }

  private static Line.Opening refusal(String device, int code) {
    boolean windows = java.io.File.separatorChar == '\\';
    PortAccess access = PortAccess.of(device);
    LinkState state = windows ? onWindows(code) : onUnix(code, access);
    String group = state == LinkState.DENIED ? access.group().orElse("dialout") : "";
    return notOpened(state, device, group);
  }

  /** EPERM and EACCES say that this user may not; EIO, ENXIO and ENODEV that nothing is behind the name; any other that it is held. */
  private static LinkState onUnix(int code, PortAccess access) {
    if (!access.there()) return LinkState.LOST;
    if (code == 1 || code == 13 || !access.allowed()) return LinkState.DENIED;
    return code == 5 || code == 6 || code == 19 ? LinkState.LOST : LinkState.HELD;
  }

  /** ERROR_ACCESS_DENIED and ERROR_SHARING_VIOLATION are what a port gives that another program has open. */
  private static LinkState onWindows(int code) {
    return code == 5 || code == 32 ? LinkState.HELD : LinkState.LOST;
  }

  private static Line.NotOpened notOpened(LinkState state, String device, String group) {
    Map<String, String> with =
        group.isEmpty() ? Map.of("device", device) : Map.of("device", device, "group", group);
    return new Line.NotOpened(new LinkReport(state, with));
  }

  private static int stopBits(LineSettings settings) {
    return settings.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT;
  }

  private static int parity(LineSettings settings) {
    return switch (settings.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
      case MARK -> SerialPort.MARK_PARITY;
      case SPACE -> SerialPort.SPACE_PARITY;
    };
  }
}
