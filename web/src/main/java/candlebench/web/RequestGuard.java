package candlebench.web;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.net.InetAddress;
import java.util.Locale;
import java.util.Set;

/**
 * Who may ask, judged before any path is looked at. A page of another site that had its name point at this machine sends its own
 * {@code Host}; one that posts across sites sends its own {@code Origin}. Both are turned away, on every path.
 */
final class RequestGuard {
  private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "[::1]");

  private final String listenHost;

  /** @param listen the address the server listens on, which is a name it answers to beside those of loopback */
  RequestGuard(InetAddress listen) {
    String text = listen.getHostAddress();
    listenHost = text.indexOf(':') < 0 ? text : "[" + text + "]";
  }

  /** The address listened on, as it stands in an URL. */
  String listenHost() {
    return listenHost;
  }

  /** Lets a request pass, or throws the answer that turns it away. */
  void judge(Context request) {
    String host = header(request, "Host").toLowerCase(Locale.ROOT);
    if (!isOurs(host))
      throw new TurnedAway(
          421, "this station answers to its own address only: open http://localhost");
    String origin = header(request, "Origin");
    if (!origin.isEmpty() && !origin.toLowerCase(Locale.ROOT).equals("http://" + host))
      throw new TurnedAway(403, "a page of another site may not talk to the station");
    String site = header(request, "Sec-Fetch-Site");
    if (request.path().startsWith("/api/") && !Set.of("", "same-origin", "none").contains(site))
      throw new TurnedAway(403, "a page of another site may not talk to the station");
    if (request.method() == HandlerType.POST && !isJson(header(request, "Content-Type")))
      throw new TurnedAway(415, "send the body as application/json");
  }

  private boolean isOurs(String host) {
    String name = host.replaceFirst(":\\d{1,5}$", "");
    return LOOPBACK.contains(name) || name.equals(listenHost);
  }

  private static boolean isJson(String type) {
    return type.toLowerCase(Locale.ROOT).matches("application/json( *; *charset *= *\"?utf-8\"?)?");
  }

  private static String header(Context request, String name) {
    String value = request.header(name);
    return value == null ? "" : value;
  }

  /** The answer to a request that may not pass. */
  static final class TurnedAway extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int status;

    TurnedAway(int status, String words) {
      super(words, null, false, false);
      this.status = status;
    }

    int status() {
      return status;
    }
  }
}
