package candlebench.web;

import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import java.net.InetAddress;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.server.handler.EagerContentHandler.RetainedContentLoaderFactory;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** How the web server is set for one bench and a few pages: small, quiet, and bounded. */
final class JettySetup {

  /** The largest body that is read: a command is far smaller. */
  static final int BODY_MOST = 16 * 1024;

  private static final int THREADS_MOST = 24;
  private static final int THREADS_LEAST = 2;
  private static final int STOP_MILLIS = 500;
  private static final int LAST_WORDS_MILLIS = 100;

  /** Little is kept in the line to a page, so that one which reads slowly sees a new view soon. */
  private static final int LINE_BYTES = 32 * 1024;

  /** What a piece of a body costs beside its bytes. */
  private static final int FRAMING_BYTES = 32;

  private JettySetup() {}

  static void apply(JavalinConfig config, InetAddress listen, int port) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.router.ignoreTrailingSlashes = false;
    config.http.maxRequestSize = BODY_MOST;
    config.http.compressionStrategy = CompressionStrategy.NONE;
    config.jetty.threadPool = new QueuedThreadPool(THREADS_MOST, THREADS_LEAST);
    config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
    config.jetty.modifyServer(jetty -> {
      jetty.setStopTimeout(STOP_MILLIS);
      jetty.setHandler(wholeBodiesOnly());
    });
    config.jetty.addConnector((jetty, http) -> connector(jetty, http, listen, port));
  }

  /**
   * A body is gathered without a thread that waits for it: however many are sent slowly or never ended, there are threads for the next
   * request. One that is too large is let through at its limit, to be refused in our words.
   */
  private static Handler.Wrapper wholeBodiesOnly() {
    return new EagerContentHandler(
        new RetainedContentLoaderFactory(BODY_MOST, FRAMING_BYTES, false));
  }

  private static ServerConnector connector(
      Server jetty, HttpConfiguration http, InetAddress listen, int port) {
    ServerConnector connector = new ServerConnector(jetty, 1, 1, new HttpConnectionFactory(http));
    connector.setHost(listen.getHostAddress());
    connector.setPort(port);
    connector.setShutdownIdleTimeout(LAST_WORDS_MILLIS);
    connector.setAcceptedSendBufferSize(LINE_BYTES);
    return connector;
  }
}
