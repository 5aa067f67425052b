package candlebench.simulator;

import candlebench.protocol.LineSettings;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.Channel;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.util.Arrays;
import java.util.Optional;

/**
 * A virtual scale behind a serial device server: raw bytes over TCP, on the loopback address, one program at a time. A second program
 * waits until the first has gone.
 */
public final class TcpOutlet implements Outlet {
  private static final int ROOM = 4096;

  private final int port;
  private final ByteBuffer incoming = ByteBuffer.allocate(ROOM);
  private ByteBuffer unsent = ByteBuffer.allocate(0);
  private Optional<ServerSocketChannel> server = Optional.empty();
  private Optional<SocketChannel> program = Optional.empty();

  /** Listens on a port; zero is any free one, kept over an unplug. */
  public TcpOutlet(int port) {
    server = Optional.of(listen(port));
    this.port = server.get().socket().getLocalPort();
  }

  @Override
  public String address() {
    return "127.0.0.1:" + port;
  }

  public int port() {
    return port;
  }

  /** Drops the frame where the last one is not out yet, so that no frame is ever sent in part. */
  @Override
  public boolean offer(byte[] bytes) {
    Optional<SocketChannel> to = program();
    if (to.isEmpty()) return false;
    try {
      if (unsent.hasRemaining()) to.get().write(unsent);
      if (unsent.hasRemaining()) return false;
      ByteBuffer frame = ByteBuffer.wrap(bytes.clone());
      to.get().write(frame);
      unsent = frame;
      return true;
    } catch (IOException e) {
      hangUp();
      return false;
    }
  }

  @Override
  public byte[] taken() {
    Optional<SocketChannel> from = program();
    if (from.isEmpty()) return new byte[0];
    try {
      incoming.clear();
      int length = from.get().read(incoming);
      if (length < 0) hangUp();
      return Arrays.copyOf(incoming.array(), Math.max(0, length));
    } catch (IOException e) {
      hangUp();
      return new byte[0];
    }
  }

  /** Empty: the serial end of the line is set at the device server, not by the program. */
  @Override
  public Optional<LineSettings> heardAs() {
    return Optional.empty();
  }

  @Override
  public void unplug() {
    hangUp();
    server.ifPresent(TcpOutlet::closeQuietly);
    server = Optional.empty();
  }

  @Override
  public void replug() {
    if (server.isEmpty()) server = Optional.of(listen(port));
  }

  @Override
  public void close() {
    unplug();
  }

  private Optional<SocketChannel> program() {
    if (program.isEmpty() && server.isPresent()) program = accept(server.get());
    return program;
  }

  private static Optional<SocketChannel> accept(ServerSocketChannel server) {
    try {
      SocketChannel accepted = server.accept();
      if (accepted == null) return Optional.empty();
      accepted.configureBlocking(false);
      accepted.setOption(StandardSocketOptions.TCP_NODELAY, true);
      return Optional.of(accepted);
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private void hangUp() {
    program.ifPresent(TcpOutlet::closeQuietly);
    program = Optional.empty();
    unsent = ByteBuffer.allocate(0);
  }

  private static ServerSocketChannel listen(int port) {
    try {
      ServerSocketChannel server = ServerSocketChannel.open();
      server.setOption(StandardSocketOptions.SO_REUSEADDR, true);
      server.bind(new InetSocketAddress(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port));
      server.configureBlocking(false);
      return server;
    } catch (IOException e) {
      throw new UncheckedIOException(
          "cannot listen on port " + port + " for the virtual scale: choose another, or 0 for any",
          e);
    }
  }

  private static void closeQuietly(Channel channel) {
    try {
      channel.close();
    } catch (IOException e) {
      // A channel that fails to close counts as closed, and there is nobody left to tell.
    }
  }
}
