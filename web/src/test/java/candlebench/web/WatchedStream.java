package candlebench.web;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;

/** A page's stream, read by a thread of its own for as long as it is open: each view is handed on as it arrives. */
final class WatchedStream implements AutoCloseable {
  private final Socket socket;
  private final Thread reader;

  WatchedStream(int port, Consumer<String> views) throws IOException {
    socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setTcpNoDelay(true);
    socket
        .getOutputStream()
        .write(("GET /api/stream HTTP/1.1\r\nHost: 127.0.0.1:" + port
                + "\r\nAccept: text/event-stream\r\n\r\n")
            .getBytes(StandardCharsets.US_ASCII));
    reader = new Thread(() -> read(views), "page");
    reader.setDaemon(true);
    reader.start();
  }

  private void read(Consumer<String> views) {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    try (InputStream in = new BufferedInputStream(socket.getInputStream(), 1 << 16)) {
      for (int b = in.read(); b >= 0; b = in.read()) {
        if (b != '\n') {
          line.write(b);
          continue;
        }
        String text = line.toString(StandardCharsets.UTF_8);
        line.reset();
        if (text.startsWith("data: ")) views.accept(text);
      }
    } catch (IOException closed) {
      // The page was closed, as pages are.
    }
  }

  /** Whether the program still sends; not so once it hung up. */
  boolean isOpen() {
    return reader.isAlive();
  }

  /** Closes it; whoever reads it hears no more of it soon after. */
  @Override
  public void close() throws IOException {
    socket.close();
  }
}
