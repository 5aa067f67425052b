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

  /** WCAG 2.2, 1.4.6 (enhanced contrast). */
  private static final double CONTRAST = 7;

  private static ScriptedBench bench;
  private static WebServer server;
  private static PageBrowser browser;

  enum Screen {
    TABLET(1280, 800, false),
    TABLET_DIM(1280, 800, true),
    LARGE(1920, 1080, false),
    PHONE(390, 844, false);

    private final int width;
    private final int height;
    private final boolean dim;

    Screen(int width, int height, boolean dim) {
      this.width = width;
      this.height = height;
      this.dim = dim;
    }

    Page open() {
      return browser.open(server.port(), width, height, dim);
    }

    boolean lies() {
      return width > height;
    }
  }

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
    Page page = screen.open();
    for (String scene : Scenes.all().keySet()) {
      StationView view = Scenes.all().get(scene);
      bench.show(view);
      page.locator("body[data-revision='" + view.revision() + "']").waitFor();
      page.screenshot(new Page.ScreenshotOptions()
          .setPath(Path.of("target/screens/" + screen.name().toLowerCase(java.util.Locale.ROOT)
              + "-" + scene + ".png")));
      assertThat(faint(page)).as("text too faint in " + scene).isEmpty();
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
    Page page = screen.open();
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
      Page page = browser.open(served.port(), screen.width, screen.height, screen.dim);
      page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Hold to pour"))
          .waitFor();
      picture(page, screen, "practice");
      assertThat(cut(page)).isEmpty();
      assertThat(faint(page)).isEmpty();
      assertThat(page.evaluate(UNDER_THE_FOOT)).isEqualTo(false);
      if (screen.lies())
        assertThat(page.evaluate("document.documentElement.scrollHeight - innerHeight"))
            .isEqualTo(0);
      page.context().close();
    }
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

  /** Each text that is less legible than the limit on the ground it stands on. */
  @SuppressWarnings("unchecked")
  private static List<String> faint(Page page) {
    return (List<String>) page.evaluate("""
        limit => {
          const parts = colour => colour.match(/[\\d.]+/g).map(Number);
          const light = ([r, g, b]) => {
            const [x, y, z] = [r, g, b].map(c => c / 255).map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
            return 0.2126 * x + 0.7152 * y + 0.0722 * z;
          };
          const ground = element => {
            for (let each = element; each; each = each.parentElement) {
              const colour = parts(getComputedStyle(each).backgroundColor);
              if (colour.length < 4 || colour[3] > 0) return colour;
            }
            return [255, 255, 255];
          };
          const faint = [];
          const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          for (let node = walk.nextNode(); node; node = walk.nextNode()) {
            const element = node.parentElement;
            if (!node.data.trim() || !element.checkVisibility() || element.closest(".spoken, title")) continue;
            const style = getComputedStyle(element);
            const pair = [light(parts(element.closest("svg") ? style.fill : style.color)), light(ground(element))].sort((a, b) => b - a);
            const contrast = (pair[0] + 0.05) / (pair[1] + 0.05);
            if (contrast < limit) faint.push(`${node.data.trim()}: ${contrast.toFixed(2)}`);
          }
          return faint;
        }
        """, CONTRAST);
  }

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
