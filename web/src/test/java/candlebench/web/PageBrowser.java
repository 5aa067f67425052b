package candlebench.web;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType.LaunchOptions;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** A real browser. Whatever a page's console calls an error is kept, and a test that ends with one has failed. */
final class PageBrowser implements AutoCloseable {
  private static final List<Path> PLACES = List.of(
      Path.of("/usr/bin/chromium"),
      Path.of("/usr/bin/chromium-browser"),
      Path.of("/usr/bin/google-chrome"));

  private final Playwright playwright = Playwright.create(
      new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
  private final Browser browser = playwright
      .chromium()
      .launch(new LaunchOptions()
          .setExecutablePath(chromium())
          .setArgs(List.of(
              "--no-sandbox",
              "--disable-gpu",
              "--disable-quic",
              "--no-first-run",
              "--disable-background-networking",
              "--disable-component-update",
              "--disable-sync",
              "--autoplay-policy=user-gesture-required")));
  private final Queue<String> errors = new ConcurrentLinkedQueue<>();

  /** A page of its own, with nothing kept from another. */
  Page open(int port, int width, int height, boolean dim) {
    return open(port, width, height, dim, page -> {});
  }

  /** The page of the program itself, with its own sentences and no others. */
  Page openProgram(int port, int width, int height) {
    return open(port, width, height, false, page -> page.unroute("**/messages.js"));
  }

  /** The same, prepared before it is loaded. */
  Page open(int port, int width, int height, boolean dim, Consumer<Page> prepare) {
    BrowserContext context = browser.newContext(new Browser.NewContextOptions()
        .setViewportSize(width, height)
        .setColorScheme(dim ? ColorScheme.DARK : ColorScheme.LIGHT)
        .setReducedMotion(com.microsoft.playwright.options.ReducedMotion.REDUCE));
    Page page = context.newPage();
    page.onConsoleMessage(message -> {
      if (message.type().equals("error")) errors.add(message.text());
    });
    page.onPageError(errors::add);
    page.route("**/messages.js", this::withScenes);
    prepare.accept(page);
    page.navigate("http://localhost:" + port + "/");
    return page;
  }

  /** The program's own sentences and those of the scenes. */
  private void withScenes(Route route) {
    APIResponse own = route.fetch();
    StringBuilder more = new StringBuilder(own.text()).append("\nfor (const [key, sentence] of [");
    Scenes.sentences()
        .forEach((key, sentence) ->
            more.append("[\"").append(key).append("\", \"").append(sentence).append("\"],"));
    route.fulfill(new Route.FulfillOptions()
        .setResponse(own)
        .setBody(more.append("]) messages[key] = sentence;\n").toString()));
  }

  Queue<String> errors() {
    return errors;
  }

  @Override
  public void close() {
    browser.close();
    playwright.close();
  }

  private static Path chromium() {
    String named = System.getenv().getOrDefault("CHROMIUM", "");
    return Stream.concat(named.isEmpty() ? Stream.of() : Stream.of(Path.of(named)), PLACES.stream())
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow(() -> new AssertionError(
            "no Chromium found: install it, or name it in the environment variable CHROMIUM"));
  }
}
