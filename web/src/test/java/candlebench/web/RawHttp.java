package candlebench.web;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Requests as bytes on a socket, so that a test may send what no well-behaved client would. */
final class RawHttp {
  private static final int PATIENCE_MILLIS = 10_000;

  /** How long a stream is read in all: a view that is awaited comes before, or never. */
  private static final Duration STREAM_PATIENCE = Duration.ofSeconds(60);

  private RawHttp() {}

  /** Sends the text and reads the whole answer, which the request must have asked to be the last. */
  static Answer ask(int port, String request) throws IOException {
    try (Socket socket = connect(port)) {
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.getOutputStream().flush();
      return Answer.of(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
    }
  }

  /** A request with the headers given as lines, and the usual ones. */
  static Answer get(int port, String path, String... headers) throws IOException {
    return ask(port, "GET " + path + " HTTP/1.1\r\n" + lines(port, headers) + "\r\n");
  }

  static Answer post(int port, String path, String body, String... headers) throws IOException {
    return ask(
        port,
        "POST " + path + " HTTP/1.1\r\n" + lines(port, headers) + "Content-Length: "
            + body.getBytes(StandardCharsets.UTF_8).length + "\r\n\r\n" + body);
  }

  /** A stream that is being read line by line. */
  static Stream stream(int port, String... headers) throws IOException {
    Socket socket = connect(port);
    socket
        .getOutputStream()
        .write(("GET /api/stream HTTP/1.1\r\nHost: localhost:" + port + "\r\n"
                + String.join("", List.of(headers).stream().map(h -> h + "\r\n").toList()) + "\r\n")
            .getBytes(StandardCharsets.ISO_8859_1));
    return new Stream(socket);
  }

  private static String lines(int port, String... headers) {
    List<String> lines = new ArrayList<>(List.of(headers));
    if (lines.stream().noneMatch(line -> line.startsWith("Host:")))
      lines.add(0, "Host: localhost:" + port);
    lines.add("Connection: close");
    return String.join("", lines.stream().map(line -> line + "\r\n").toList());
  }

  private static Socket connect(int port) throws IOException {
    Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setSoTimeout(PATIENCE_MILLIS);
    return socket;
  }

  /** An answer taken apart. */
  record Answer(int status, String head, String body) {
    static Answer of(String text) {
      int gap = text.indexOf("\r\n\r\n");
      String head = gap < 0 ? text : text.substring(0, gap);
      String body = gap < 0 ? "" : text.substring(gap + 4);
      String[] words = head.split(" ", 3);
      if (words.length < 2) throw new AssertionError("no answer: '" + text + "'");
      return new Answer(Integer.parseInt(words[1]), head, body);
    }
  }

  /** Server-sent events as they come. */
  static final class Stream implements AutoCloseable {
    private final Socket socket;
    private final InputStream in;
    private final StringBuilder line = new StringBuilder();
    private final Instant end = Instant.now().plus(STREAM_PATIENCE);

    private Stream(Socket socket) throws IOException {
      this.socket = socket;
      in = new java.io.BufferedInputStream(socket.getInputStream());
    }

    /** The next line with something in it; throws where none comes in time or the stream ended. */
    String line() throws IOException {
      while (true) {
        int b = in.read();
        if (b < 0) throw new IOException("the stream ended");
        if (b != '\n') {
          line.append((char) b);
          continue;
        }
        String whole = line.toString().strip();
        line.setLength(0);
        if (Instant.now().isAfter(end))
          throw new AssertionError("not what was awaited, for a minute: " + whole);
        if (!whole.isEmpty()) return whole;
      }
    }

    /** The next view. */
    String view() throws IOException {
      return lineWith("data: {").substring("data: ".length());
    }

    /** The next line that begins so. */
    String lineWith(String start) throws IOException {
      for (String next = line(); ; next = line()) if (next.startsWith(start)) return next;
    }

    @Override
    public void close() throws IOException {
      socket.close();
    }
  }
}
