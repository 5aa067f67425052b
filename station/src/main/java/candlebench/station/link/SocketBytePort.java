package candlebench.station.link;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketOption;
import java.net.SocketTimeoutException;
import java.net.StandardSocketOptions;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * A scale, or a serial port server with a scale behind it, over raw TCP.
 *
 * <p>A pulled network cable gives neither bytes nor an end: the silence is seen at once, and the system's keep-alive ends the
 * connection some ten seconds later where it can be set so. A server that speaks telnet begins with a negotiation (RFC 854: IAC, 255,
 * then WILL, WONT, DO or DONT, 251 to 254) and doubles bytes; reading it as raw bytes would give rubbish, so it is named. A server
 * that has its port in use says so in text and hangs up.
 */
final class SocketBytePort implements BytePort {
  private static final int CONNECT_MILLIS = 2_000;
  private static final int GREETING = 64;
  private static final Map<String, Integer> KEEP_ALIVE_SECONDS =
      Map.of("TCP_KEEPIDLE", 5, "TCP_KEEPINTERVAL", 2, "TCP_KEEPCOUNT", 3);

  private final Socket socket;
  private final InputStream in;
  private final Map<String, String> place;
  private final byte[] greeting = new byte[GREETING];
  private long received;
  private LinkState why = LinkState.LOST;

  private SocketBytePort(Socket socket, Map<String, String> place) throws IOException {
    this.socket = socket;
    this.place = place;
    this.in = socket.getInputStream();
  }

  static Line.Opening open(String host, int port) {
    Map<String, String> place = Map.of("host", host, "port", Integer.toString(port));
    Socket socket = new Socket();
    try {
      socket.connect(new InetSocketAddress(host, port), CONNECT_MILLIS);
      socket.setSoTimeout(READ_WAIT_MILLIS);
      socket.setTcpNoDelay(true);
      keepAlive(socket);
      return new Line.Opened(new SocketBytePort(socket, place));
    } catch (IOException refused) {
      close(socket);
      return new Line.NotOpened(new LinkReport(LinkState.LOST, place));
    }
  }

  @Override
  public int read(byte[] into) {
    int count;
    try {
      count = in.read(into);
    } catch (SocketTimeoutException silent) {
      return 0;
    } catch (IOException broken) {
      return GONE;
    }
    if (count > 0 && received < GREETING) keepGreeting(into, count);
    if (count > 0) received += count;
    if (received >= 2 && received - count < 2 && beginsWithTelnet()) {
      why = LinkState.TELNET;
      return GONE;
    }
    if (count < 0 && saysInUse()) why = LinkState.HELD;
    return count < 0 ? GONE : count;
  }

  @Override
  public boolean write(byte[] bytes) {
    try {
      socket.getOutputStream().write(bytes);
      return true;
    } catch (IOException broken) {
      return false;
    }
  }

  @Override
  public LinkReport whyGone() {
    return new LinkReport(why, place);
  }

  @Override
  public void close() {
    close(socket);
  }

  private void keepGreeting(byte[] bytes, int count) {
    int room = (int) (GREETING - received);
    System.arraycopy(bytes, 0, greeting, (int) received, Math.min(count, room));
  }

  private boolean beginsWithTelnet() {
    int verb = greeting[1] & 0xFF;
    return (greeting[0] & 0xFF) == 255 && verb >= 251 && verb <= 254;
  }

  private boolean saysInUse() {
    String text =
        new String(greeting, 0, (int) Math.min(received, GREETING), StandardCharsets.US_ASCII);
    return received <= GREETING && text.contains("in use");
  }

  /** The times of the keep-alive are the system's to offer: set where it does, else the system's own count. */
  @SuppressWarnings("unchecked")
  private static void keepAlive(Socket socket) throws IOException {
    socket.setOption(StandardSocketOptions.SO_KEEPALIVE, true);
    for (SocketOption<?> option : socket.supportedOptions()) {
      Integer wanted = KEEP_ALIVE_SECONDS.get(option.name());
      if (wanted != null && option.type() == Integer.class)
        socket.setOption((SocketOption<Integer>) option, wanted);
    }
  }

  private static void close(Socket socket) {
    try {
      socket.close();
    } catch (IOException closedAnyway) {
      // A socket that fails to close is closed.
    }
  }
}
