package candlebench.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every page and every state before an accessibility engine, in a bright and a dim room; and at a zoom of 400 per cent. */
@Tag("browser")
class AccessTest {

  /** 1280 pixels at 400 per cent: WCAG 2.2, 1.4.10 (reflow). */
  private static final int ZOOMED_WIDTH = 320;

  private static final int ZOOMED_HEIGHT = 256;

  private static final List<String> PAGES = List.of(
      "plan.html",
      "batches.html",
      "scales.html",
      "sheet.html?code=20261125-1&label=250%20g",
      "sheet.html?code=no-such-batch",
      "labels.html?code=20261125-1&label=8%20oz");

  @TempDir
  static Path folder;

  private static ServedRecord record;
  private static PageBrowser browser;

  @BeforeAll
  static void start() throws Exception {
    record = new ServedRecord(folder);
    browser = new PageBrowser();
  }

  @AfterAll
  static void stop() {
    browser.close();
    record.close();
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void nothing_speaks_against_any_state_of_the_bench(boolean dim) {
    Page page = open(1280, 800, dim);
    List<String> found = new ArrayList<>();
    for (Map.Entry<String, StationView> scene : Scenes.all().entrySet()) {
      show(page, scene.getValue());
      note(found, scene.getKey(), page);
    }
    show(page, Scenes.over());
    button(page, "Keep it at 8.71 % of wax").click();
    note(found, "a reason is asked for", page);
    show(page, Scenes.byHand());
    button(page, "Enter a weight by hand").click();
    note(found, "a weight by hand", page);
    for (String dialog : List.of("More", "Settings")) {
      button(page, dialog).click();
      assertThat(page.getByRole(AriaRole.DIALOG)).isVisible();
      note(found, dialog, page);
      page.keyboard().press("Escape");
    }
    assertThat(found).isEmpty();
    page.context().close();
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void nothing_speaks_against_the_pages_of_the_record(boolean dim) {
    Page page = open(1280, 900, dim);
    List<String> found = new ArrayList<>();
    for (String path : PAGES) {
      load(page, path);
      note(found, path, page);
    }
    assertThat(found).isEmpty();
    page.context().close();
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void nothing_speaks_against_the_practice_bench_and_the_way_to_a_scale(boolean dim) {
    Site.Hands hands = (hand, down) -> {};
    ScriptedBench practice = new ScriptedBench(Scenes.practising());
    List<String> found = new ArrayList<>();
    try (WebServer served = serve(practice.site(Optional.of(hands)))) {
      Page page = browser.open(served.port(), 1280, 800, dim);
      assertThat(button(page, "Hold to pour")).isVisible();
      note(found, "practice", page);
      page.context().close();
    }
    try (ScaleSearch search = new ScaleSearch(new NoChoice());
        WebServer served = serve(new Site(
            new BenchWithoutScale(ShownUnit.GRAM),
            System::nanoTime,
            List.of(),
            Optional.of(search),
            Optional.empty(),
            Optional.empty()))) {
      Page page = browser.open(served.port(), 1280, 800, dim);
      assertThat(page.getByLabel("Another port")).isVisible();
      note(found, "find a scale", page);
      page.context().close();
    }
    assertThat(found).isEmpty();
  }

  @Test
  void the_engine_sees_a_fault_that_is_put_there() {
    Page page = open(1280, 800, false);
    page.evaluate(
        "document.querySelector('main').append(Object.assign(document.createElement('input'), { type: 'text' }))");
    assertThat(AccessEngine.violations(page)).anyMatch(line -> line.startsWith("label"));
    page.context().close();
  }

  @Test
  void at_four_times_the_size_every_state_reflows_without_loss() {
    Page page = open(ZOOMED_WIDTH, ZOOMED_HEIGHT, false);
    List<String> lost = new ArrayList<>();
    for (Map.Entry<String, StationView> scene : Scenes.all().entrySet()) {
      show(page, scene.getValue());
      for (String each : lost(page)) lost.add(scene.getKey() + ": " + each);
    }
    for (String path : PAGES) {
      load(page, path);
      for (String each : lost(page)) lost.add(path + ": " + each);
      note(lost, path, page);
    }
    assertThat(lost).isEmpty();
    page.context().close();
  }

  @Test
  void a_stage_is_spoken_politely_trouble_too_and_an_over_pour_at_once() {
    Page page = open(1280, 800, false);
    Locator polite = page.locator("[aria-live=polite]#polite");
    Locator assertive = page.locator("[aria-live=assertive]");
    assertThat(polite).hasText("Pour Harbour Fig oil.");
    show(page, Scenes.all().get("count-in"));
    assertThat(polite).containsText("Taking 56.1 g");
    show(page, Scenes.stale());
    assertThat(polite).hasText("The scale has gone quiet. Wake it up; nothing is lost.");
    assertThat(assertive).isEmpty();
    show(page, Scenes.over());
    assertThat(assertive).hasText("Too much. Too much Harbour Fig oil.");
    page.evaluate(
        "new MutationObserver(() => { window.spokenAgain = true; }).observe(document.getElementById('assertive'), { childList: true, characterData: true, subtree: true })");
    show(page, Scenes.over());
    assertThat(page.evaluate("'spokenAgain' in window")).isEqualTo(false);
    show(page, Scenes.all().get("waiting"));
    assertThat(assertive).isEmpty();
    page.context().close();
  }

  private static Page open(int width, int height, boolean dim) {
    record.bench().show(Scenes.pouring());
    Page page = browser.open(record.server().port(), width, height, dim);
    assertThat(page.locator("#now")).containsText("Pour");
    return page;
  }

  private static void show(Page page, StationView view) {
    record.bench().show(view);
    page.locator("body[data-revision='" + view.revision() + "']").waitFor();
  }

  private static void load(Page page, String path) {
    page.navigate(record.server().address() + path);
    if (path.equals("plan.html")) PlanPageTest.planTheExample(page);
    page.locator(
            "#plan:visible, #batches:visible, #sheet:visible, #labels:visible, #scales section:visible, #failed:visible")
        .first()
        .waitFor();
  }

  private static void note(List<String> found, String state, Page page) {
    for (String each : AccessEngine.violations(page)) found.add(state + ": " + each);
  }

  private static Locator button(Page page, String name) {
    return page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name));
  }

  private static WebServer serve(Site site) {
    return new WebServer(site, InetAddress.getLoopbackAddress(), 0);
  }

  /**
   * What is lost at this size: words beside the screen that cannot be scrolled to, a page that must be moved sideways, a key under
   * something that stays on the screen.
   */
  @SuppressWarnings("unchecked")
  private static List<String> lost(Page page) {
    return (List<String>) page.evaluate("""
        () => {
          const lost = [];
          const root = document.documentElement;
          const ways = element => { for (let each = element.parentElement; each && each !== document.body; each = each.parentElement) if (/auto|scroll/.test(getComputedStyle(each).overflowX)) return true; return false; };
          if (root.scrollWidth > innerWidth) {
            const widest = [...document.querySelectorAll("body *")].filter(each => !ways(each) && each.getBoundingClientRect().right > innerWidth + 1).slice(0, 3);
            lost.push(`moves sideways, ${root.scrollWidth} wide, by ${widest.map(each => `${each.tagName}.${each.getAttribute("class")}#${each.id}`)}`);
          }
          const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          for (let node = walk.nextNode(); node; node = walk.nextNode()) {
            const element = node.parentElement;
            if (!node.data.trim() || !element.checkVisibility({ visibilityProperty: true }) || element.closest(".spoken, .skip, svg, option, dialog")) continue;
            const range = document.createRange();
            range.selectNodeContents(node);
            const box = range.getBoundingClientRect();
            if (element.clientWidth > 1 && !ways(element) && (box.right > innerWidth + 1 || box.left < -1)) lost.push(`off the screen: ${node.data.trim()}`);
          }
          for (const key of document.querySelectorAll("button, input, select, a[href]")) {
            if (!key.checkVisibility({ visibilityProperty: true }) || key.closest("dialog, .skip") || key.matches(".skip")) continue;
            key.scrollIntoView({ block: "center", inline: "center", behavior: "instant" });
            const box = key.getBoundingClientRect();
            const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
            if (!key.contains(top) && !top?.closest("label")?.contains(key)) lost.push(`covered: ${key.textContent.trim() || key.name} by ${top?.id || top?.className || top?.tagName}`);
          }
          scrollTo(0, 0);
          return lost;
        }
        """);
  }

  record NoChoice() implements ScaleSearch.Chosen {
    @Override
    public void keep(String uri) {
      throw new AssertionError("no scale was chosen");
    }

    @Override
    public void openAnew() {
      throw new AssertionError("no scale was chosen");
    }
  }
}
