package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.view.StationView;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each state of the bench on each size of screen: legible, whole, and as a picture in {@code target/screens} to be looked at. */
@Tag("browser")
class ScreensTest {

  /** Twenty millimetres on a 10.1-inch screen of 1280 by 800, to be read at two metres. */
  private static final double FIGURE_HEIGHT = 118;

  private static ScriptedBench bench;
  private static WebServer server;
  private static PageBrowser browser;

  @BeforeAll
  static void start() {
    bench = new ScriptedBench(Scenes.pouring());
    server = new WebServer(bench.site(), InetAddress.getLoopbackAddress(), 0);
    browser = new PageBrowser();
  }

  @AfterAll
  static void stop() {
    browser.close();
    server.close();
  }

  @ParameterizedTest
  @EnumSource
  void every_state_is_legible_and_whole(Screen screen) {
    browser.errors().clear();
    Page page = open(screen);
    for (String scene : Scenes.all().keySet()) {
      StationView view = Scenes.all().get(scene);
      bench.show(view);
      page.locator("body[data-revision='" + view.revision() + "']").waitFor();
      page.screenshot(new Page.ScreenshotOptions()
          .setPath(Path.of("target/screens/" + screen.name().toLowerCase(java.util.Locale.ROOT)
              + "-" + scene + ".png")));
      for (ColourVision eye : ColourVision.values())
        assertThat(Legible.faint(page, eye))
            .as("text too faint in " + scene + ", " + eye)
            .isEmpty();
      assertThat(cut(page)).as("text cut off in " + scene).isEmpty();
      if (view.bench().weighing().isPresent() && view.bench().choices().isEmpty())
        assertThat(page.evaluate(UNDER_THE_FOOT))
            .as("the picture is covered in " + scene)
            .isEqualTo(false);
      if (!screen.lies()) continue;
      assertThat(page.evaluate("document.documentElement.scrollHeight - innerHeight"))
          .as("scrolls in " + scene)
          .isEqualTo(0);
      Object figure = page.evaluate(FIGURE);
      if (figure != null)
        assertThat(((Number) figure).doubleValue()).as(scene).isGreaterThanOrEqualTo(FIGURE_HEIGHT);
    }
    page.context().close();
    assertThat(browser.errors()).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(names = {"TABLET", "LARGE"})
  void the_longest_weights_keep_their_height_and_their_place(Screen screen) {
    Page page = open(screen);
    StationView view = Scenes.longWeight();
    bench.show(view);
    page.locator("body[data-revision='" + view.revision() + "']").waitFor();
    picture(page, screen, "long");
    assertThat(((Number) page.evaluate(FIGURE)).doubleValue())
        .isGreaterThanOrEqualTo(FIGURE_HEIGHT);
    assertThat(cut(page)).isEmpty();
    page.context().close();
  }

  @ParameterizedTest
  @EnumSource(names = {"TABLET", "PHONE"})
  void the_practice_bench_has_room_for_its_hands(Screen screen) {
    StationView view = Scenes.practising();
    ScriptedBench practice = new ScriptedBench(view);
    Site withHands = practice.site(Optional.of((hand, down) -> {}));
    try (WebServer served = new WebServer(withHands, InetAddress.getLoopbackAddress(), 0)) {
      Page page = browser.open(served.port(), screen.width(), screen.height(), screen.dim());
      page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Hold to pour"))
          .waitFor();
      picture(page, screen, "practice");
      assertThat(cut(page)).isEmpty();
      assertThat(Legible.faint(page, ColourVision.USUAL)).isEmpty();
      assertThat(page.evaluate(UNDER_THE_FOOT)).isEqualTo(false);
      if (screen.lies())
        assertThat(page.evaluate("document.documentElement.scrollHeight - innerHeight"))
            .isEqualTo(0);
      page.context().close();
    }
  }

  private static Page open(Screen screen) {
    return browser.open(server.port(), screen.width(), screen.height(), screen.dim());
  }

  private static void picture(Page page, Screen screen, String name) {
    page.screenshot(new Page.ScreenshotOptions()
        .setPath(Path.of(
            "target/screens/" + screen.name().toLowerCase(Locale.ROOT) + "-" + name + ".png")));
  }

  private static final String UNDER_THE_FOOT =
      "document.getElementById('vessel').getBoundingClientRect().bottom > document.querySelector('.foot').getBoundingClientRect().top + 1";

  /** The height of the digits as drawn, or null where no number is shown. */
  private static final String FIGURE = """
      () => {
        const number = document.getElementById("number");
        if (!number.checkVisibility()) return null;
        const style = getComputedStyle(number);
        const pen = document.createElement("canvas").getContext("2d");
        pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
        return pen.measureText("7").actualBoundingBoxAscent;
      }
      """;

  /** Each text that does not fit into its box, or stands outside the screen. */
  @SuppressWarnings("unchecked")
  private static List<String> cut(Page page) {
    return (List<String>) page.evaluate("""
        () => {
          const cut = [];
          for (const element of document.querySelectorAll("h2, p, button, small, .part b, .scales li, .figure-number, .batch span")) {
            if (!element.checkVisibility() || element.closest(".spoken, dialog") || !element.textContent.trim()) continue;
            const box = element.getBoundingClientRect();
            if (box.width <= 1) continue;
            const parts = element.closest(".parts, .practice-hands");   // rows that can be moved sideways
            if (element.scrollWidth > element.clientWidth + 1 && getComputedStyle(element).display !== "inline") cut.push(`${element.textContent.trim()}: wider than its box`);
            if (!parts && (box.right > innerWidth + 1 || box.left < -1)) cut.push(`${element.textContent.trim()}: off the screen`);
          }
          return cut;
        }
        """);
  }
}
