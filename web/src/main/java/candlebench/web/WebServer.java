package candlebench.web;

import candlebench.station.Bench;
import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.net.InetAddress;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The page's server. Owns nothing of the bench: it hands views out and the maker's words in. */
final class WebServer implements AutoCloseable {
  private static final int BODY_MOST = 16 * 1024;
  private static final int THREADS_MOST = 24;

  /** Little is kept in the line to a page, so that one which reads slowly sees a new view soon. */
  private static final int LINE_BYTES = 32 * 1024;

  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
          + " font-src 'self'; connect-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

  private final Bench bench;
  private final Commands commands;
  private final ViewStream stream;
  private final RequestGuard guard;
  private final Javalin server;

  /** Listens from now on; port 0 takes any free one. Throws {@link io.javalin.util.JavalinBindException} where the port is taken. */
  WebServer(Bench bench, InetAddress listen, int port) {
    this.bench = bench;
    commands = new Commands(bench);
    stream = new ViewStream(bench);
    guard = new RequestGuard(listen);
    server = Javalin.start(config -> {
      tune(config);
      config.jetty.addConnector((jetty, http) -> connector(jetty, http, listen, port));
      routes(config);
    });
  }

  private void routes(JavalinConfig config) {
    config.routes.before(this::protect);
    for (PageFile file : PageFile.all())
      config.routes.get(file.path(), request -> send(file, request));
    config.routes.get("/api/view", this::view);
    config.routes.get("/api/stream", this::stream);
    config.routes.post("/api/say", request -> answer(request, commands.say(request.bodyAsBytes())));
    config.routes.exception(
        RequestGuard.TurnedAway.class,
        (no, request) -> answer(request, Commands.refused(no.status(), no.getMessage())));
    config.routes.exception(
        HttpResponseException.class,
        (no, request) -> answer(request, Commands.refused(no.getStatus(), words(no))));
  }

  int port() {
    return server.port();
  }

  int pages() {
    return stream.pages();
  }

  @Override
  public void close() {
    stream.close();
    server.stop();
  }

  private void protect(Context request) {
    request
        .header("Content-Security-Policy", POLICY)
        .header("X-Content-Type-Options", "nosniff")
        .header("Referrer-Policy", "no-referrer")
        .header("Cross-Origin-Resource-Policy", "same-origin")
        .header("Cache-Control", "no-cache");
    guard.judge(request);
  }

  private void view(Context request) {
    request.contentType("application/json").result(ViewJson.bytes(bench.view(), System.nanoTime()));
  }

  private void stream(Context request) {
    if (!stream.reserve())
      throw new RequestGuard.TurnedAway(
          503, "too many pages are open: close one that nobody looks at, then load this one again");
    request.contentType("text/event-stream; charset=utf-8").header("Cache-Control", "no-store");
    request.future(() -> stream.add(request.req().getAsyncContext()));
  }

  private static void send(PageFile file, Context request) {
    request.header("ETag", file.tag());
    if (file.tag().equals(request.header("If-None-Match"))) request.status(304);
    else request.contentType(file.type()).result(file.bytes());
  }

  private static void answer(Context request, Commands.Reply reply) {
    request.status(reply.status()).contentType("application/json").result(reply.json());
  }

  private static String words(HttpResponseException no) {
    if (no instanceof ContentTooLargeResponse)
      return "the body is too large: a command fits in " + BODY_MOST + " bytes";
    return switch (no.getStatus()) {
      case 404 -> "there is nothing here: the page is at /";
      case 405 -> "this cannot be done here: see what the page itself asks for";
      default -> no.getMessage();
    };
  }

  private static void tune(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.router.ignoreTrailingSlashes = false;
    config.http.maxRequestSize = BODY_MOST;
    config.http.compressionStrategy = CompressionStrategy.NONE;
    config.jetty.threadPool = new QueuedThreadPool(THREADS_MOST, 2);
    config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
    config.jetty.modifyServer(jetty -> jetty.setStopTimeout(500));
  }

  private static ServerConnector connector(
      Server jetty, HttpConfiguration http, InetAddress listen, int port) {
    ServerConnector connector = new ServerConnector(jetty, 1, 1, new HttpConnectionFactory(http));
    connector.setHost(listen.getHostAddress());
    connector.setPort(port);
    connector.setShutdownIdleTimeout(100);
    connector.setAcceptedSendBufferSize(LINE_BYTES);
    return connector;
  }
}
