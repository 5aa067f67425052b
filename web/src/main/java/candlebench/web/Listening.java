package candlebench.web;

import candlebench.web.Main.WrongUse;
import io.javalin.util.JavalinBindException;
import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Option;

/** The options that say where a bench keeps its data and where its page is served: on this computer alone unless told otherwise. */
final class Listening {

  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "7373",
      description = "the page's port; 0 takes any free one (default: ${DEFAULT-VALUE})")
  private int port;

  @Option(
      names = "--listen",
      paramLabel = "ADDRESS",
      defaultValue = "127.0.0.1",
      description =
          "the address the page is served on (default: ${DEFAULT-VALUE}). On any other than loopback, whoever reaches it can use the bench")
  private String listen;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      defaultValue = DataFolder.UNLESS_SAID,
      description = "the bench's data folder (default: ${DEFAULT-VALUE})")
  private Path data;

  Path data() {
    return data;
  }

  /** Serves a page; throws {@link JavalinBindException} where the port is taken. */
  WebServer serve(Site site) throws WrongUse {
    return new WebServer(site, address(), port());
  }

  private int port() throws WrongUse {
    if (port < 0 || port > 65_535) throw new WrongUse("a port is 0 to 65535, not " + port);
    return port;
  }

  WrongUse taken() {
    return new WrongUse(
        "port " + port + " on " + listen
            + " cannot be had: another program has it, or this one runs already. Choose another with --port");
  }

  /** Only an address as such: a name could be made to mean another one. */
  private InetAddress address() throws WrongUse {
    if (!listen.matches("[0-9.]+|[0-9A-Fa-f:.]*:[0-9A-Fa-f:.]*"))
      throw new WrongUse("--listen takes an address such as 192.168.1.20, not '" + listen + "'");
    try {
      InetAddress address = InetAddress.getByName(listen);
      if (address.isAnyLocalAddress())
        throw new WrongUse(
            "--listen takes the one address that tablets are to use, not all of them");
      return address;
    } catch (UnknownHostException malformed) {
      throw new WrongUse("--listen takes an address such as 192.168.1.20, not '" + listen + "'");
    }
  }

  /** Where something is found on the bench that listens so. */
  URI place(String path) throws WrongUse {
    String host = listen.contains(":") ? "[" + listen + "]" : listen;
    address();
    return URI.create("http://" + host + ":" + port() + path);
  }

  /** Serves on this port from now on, whichever was asked for. */
  void keep(int served) {
    port = served;
  }

  /** Says in one line where the page is, once it answers, and waits until the program is told to end; then closes. */
  static void announceAndStay(String what, WebServer server, Runnable closing) {
    Runtime.getRuntime().addShutdownHook(new Thread(closing, "closing"));
    announce(what, server);
    stayUntil(new CountDownLatch(1));
  }

  /** Says in one line where the page is. */
  static void announce(String what, WebServer server) {
    System.out.println(what + ": " + server.address());
    System.out.flush();
  }

  static void stayUntil(CountDownLatch told) {
    try {
      told.await();
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }
}
