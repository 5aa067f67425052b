package candlebench.web;

import candlebench.station.journal.JournalFailed;
import candlebench.station.link.FoundPort;
import candlebench.station.view.ShownUnit;
import candlebench.web.RequestGuard.TurnedAway;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The page's server. Owns nothing of the bench: it hands views out and the maker's words in. */
final class WebServer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WebServer.class);
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self';"
          + " connect-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

  /** The HTTP interface, written down; a test holds it against the routes and their answers. */
  private static final byte[] OPENAPI = resource("/openapi.json");

  private final Site site;
  private final ViewStream stream;
  private final RequestGuard guard;
  private final Javalin server;

  /** Listens from now on; port 0 takes any free one. Throws {@link io.javalin.util.JavalinBindException} where the port is taken. */
  WebServer(Site site, InetAddress listen, int port) {
    this.site = site;
    stream = new ViewStream(site);
    guard = new RequestGuard(listen);
    server = Javalin.start(config -> {
      JettySetup.apply(config, listen, port);
      routes(config);
    });
  }

  private void routes(JavalinConfig config) {
    config.routes.before(this::protect);
    for (PageFile file : PageFile.all())
      config.routes.get(file.path(), request -> send(file, request));
    config.routes.get("/api/view", this::view);
    config.routes.get("/api/stream", this::stream);
    config.routes.get("/api/inputs", this::inputs);
    config.routes.get("/api/setup", request -> answer(request, ReplyJson.setup(site)));
    config.routes.get("/api/ports", request -> answer(request, ReplyJson.ports(FoundPort.all())));
    config.routes.get(
        "/api/openapi.json", request -> request.contentType("application/json").result(OPENAPI));
    RecordPages.routes(config, site.book());
    PlanPage.routes(config);
    ScalesPage.routes(config, site);
    BundleRoute.routes(config, site);
    config.routes.post("/api/say", this::say);
    site.search().ifPresent(search -> findScales(search, config));
    site.hands()
        .ifPresent(
            hands -> config.routes.post("/api/practice", request -> practise(hands, request)));
    config.routes.exception(
        TurnedAway.class, (no, request) -> refuse(request, no.status(), no.getMessage()));
    config.routes.exception(
        JournalFailed.class, (no, request) -> refuse(request, 503, no.getMessage()));
    config.routes.exception(
        IllegalArgumentException.class, (no, request) -> refuse(request, 400, no.getMessage()));
    config.routes.exception(Exception.class, WebServer::failed);
    config.routes.exception(
        HttpResponseException.class, (no, request) -> refuse(request, no.getStatus(), words(no)));
  }

  private static void findScales(ScaleSearch search, JavalinConfig config) {
    config.routes.get("/api/find", request -> answer(request, SearchJson.of(search.on())));
    config.routes.post("/api/find", request -> {
      RequestJson asked = RequestJson.of(request.bodyAsBytes());
      search.begin(asked.texts().getOrDefault("device", ""));
      answer(request, ReplyJson.done());
    });
    config.routes.post("/api/use", request -> use(search, request));
  }

  private static void use(ScaleSearch search, Context request) throws IOException {
    RequestJson asked = RequestJson.of(request.bodyAsBytes());
    try {
      search.keep(asked.texts().getOrDefault("format", ""), asked.texts().getOrDefault("unit", ""));
    } catch (IOException full) {
      refuse(
          request,
          500,
          "the scale could not be kept: " + full.getMessage() + ". Make room, then use it again");
      return;
    }
    byte[] json = ReplyJson.done().json();
    request.contentType("application/json").res().setContentLength(json.length);
    request.outputStream().write(json);
    request.res().flushBuffer();
    search.openAnew();
  }

  /** Where the page is. */
  String address() {
    return "http://" + guard.listenHost() + ":" + port() + "/";
  }

  private static void failed(Exception ours, Context request) {
    LOG.error("{} {} failed. The bench goes on.", request.method(), request.path(), ours);
    refuse(request, 500, "the program made an error here; the bench goes on. Look into its log");
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

  /** The unit a page asks to be shown, or the bench's usual one. */
  private ShownUnit unit(Context request) {
    String asked = request.queryParam("unit");
    return asked == null ? site.bench().unit() : ShownUnit.named(asked);
  }

  private void view(Context request) {
    request
        .contentType("application/json")
        .result(ViewJson.bytes(site.bench().view(unit(request)), site.nanos().getAsLong()));
  }

  private void inputs(Context request) throws IOException {
    StringBuilder inputs = new StringBuilder();
    site.bench().writeInputs(inputs);
    request.contentType("text/plain; charset=utf-8").result(inputs.toString());
  }

  private void stream(Context request) {
    ShownUnit unit = unit(request);
    if (!stream.reserve())
      throw new TurnedAway(
          503, "too many pages are open: close one that nobody looks at, then load this one again");
    request.contentType("text/event-stream; charset=utf-8").header("Cache-Control", "no-store");
    request.future(() -> stream.add(request.req().getAsyncContext(), unit));
  }

  private void say(Context request) throws JournalFailed {
    ShownUnit unit = unit(request);
    CommandRequest asked = new CommandRequest(RequestJson.of(request.bodyAsBytes()));
    if (site.book().isPresent()) site.book().get().check(asked.command());
    answer(request, ReplyJson.answered(site.bench().say(asked.id(), asked.command()), unit));
  }

  private static void practise(Site.Hands hands, Context request) {
    RequestJson asked = RequestJson.of(request.bodyAsBytes());
    hands.move(
        asked.texts().getOrDefault("hand", ""),
        asked.texts().getOrDefault("down", "").equals("true"));
    answer(request, ReplyJson.done());
  }

  private static void send(PageFile file, Context request) {
    request.header("ETag", file.tag());
    if (file.tag().equals(request.header("If-None-Match"))) request.status(304);
    else request.contentType(file.type()).result(file.bytes());
  }

  private static void answer(Context request, ReplyJson reply) {
    request.status(reply.status()).contentType("application/json").result(reply.json());
  }

  private static void refuse(Context request, int status, String words) {
    answer(request, ReplyJson.refused(status, words));
  }

  private static byte[] resource(String name) {
    try (InputStream in = WebServer.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    } catch (IOException damaged) {
      throw new UncheckedIOException("the program lacks " + name, damaged);
    }
  }

  private static String words(HttpResponseException no) {
    return switch (no.getStatus()) {
      case 413 -> "the body is too large: a command fits in " + JettySetup.BODY_MOST + " bytes";
      case 404 -> "there is nothing here: the page is at /";
      case 405 -> "this cannot be done here: see what the page itself asks for";
      default -> no.getMessage();
    };
  }
}
