package candlebench.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.MakerCommand;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages of the record in a real browser, on the screen and on paper; pictures lie in {@code target/screens}. */
@Tag("browser")
class SheetInBrowserTest {
  private static final Path PICTURES = Path.of("target/screens");

  @TempDir
  static Path folder;

  private static ServedRecord record;
  private static ScriptedBench bench;
  private static WebServer server;
  private static PageBrowser browser;

  @BeforeAll
  static void start() throws Exception {
    record = new ServedRecord(folder);
    new RecordScenes(record.journal()).many("20261125-3", 24);
    bench = record.bench();
    server = record.server();
    browser = new PageBrowser();
  }

  @AfterAll
  static void stop() {
    browser.close();
    record.close();
  }

  private static Page open(String path) {
    Page page = browser.open(server.port(), 1280, 900, false);
    page.navigate(server.address() + path);
    return page;
  }

  /** How many sheets of paper a page prints on. */
  private static int papers(Page page, String name) {
    byte[] pdf = page.pdf(
        new Page.PdfOptions().setPreferCSSPageSize(true).setPath(PICTURES.resolve(name + ".pdf")));
    String text = new String(pdf, StandardCharsets.ISO_8859_1);
    return text.split("/Type\\s*/Page\\b(?!s)", -1).length - 1;
  }

  @Test
  void the_sheet_of_a_dozen_candles_prints_on_one_page() {
    Page page = open("sheet.html?code=20261125-1&label=250%20g");
    assertThat(page.locator("#code")).hasText("20261125-1");
    assertThat(page.locator("#vessels li")).hasCount(12);
    assertThat(page.locator("#loads")).containsText("8.20\u00a0% ± 0.02\u00a0% of the wax");
    assertThat(page.locator("#facts")).containsText("never checked");
    assertThat(page.locator("#deviations")).containsText("below the tested 10 % of the wax");
    assertThat(page.locator("#record")).containsText(record.journal().head());
    page.screenshot(
        new Page.ScreenshotOptions().setFullPage(true).setPath(PICTURES.resolve("sheet.png")));
    assertEquals(1, papers(page, "sheet"));
    assertEquals(List.of(), List.copyOf(browser.errors()));
  }

  @Test
  void a_sheet_says_when_its_scale_was_last_checked_and_what_it_showed() {
    Page page = open("sheet.html?code=20261125-2");
    assertThat(page.locator("#facts .check"))
        .containsText("by Robin: 200 g showed 200.1\u00a0g, +0.1\u00a0g (within ±0.2\u00a0g)");
    assertEquals(1, papers(page, "sheet-of-three"));
    assertEquals(List.of(), List.copyOf(browser.errors()));
  }

  @Test
  void the_sheet_of_two_dozen_candles_prints_on_one_page_too() {
    Page page = open("sheet.html?code=20261125-3");
    assertThat(page.locator("#vessels li")).hasCount(24);
    page.screenshot(new Page.ScreenshotOptions()
        .setFullPage(true)
        .setPath(PICTURES.resolve("sheet-of-many.png")));
    assertEquals(1, papers(page, "sheet-of-many"));
    assertEquals(List.of(), List.copyOf(browser.errors()));
  }

  @Test
  void a_scale_is_checked_on_the_page_of_the_scales() {
    bench.said().clear();
    Page page = open("scales.html");
    assertThat(page.getByRole(AriaRole.REGION, new Page.GetByRoleOptions().setName("Bench scale")))
        .containsText("never. Put a known mass on it");
    page.getByLabel("Known mass").fill("200");
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Check it"))
        .click();
    assertThat(page.locator("#checked")).hasText("Written down.");
    assertEquals(
        Mass.ofGrams("200"), ((MakerCommand.CheckScale) bench.said().remove().command()).known());
    assertEquals(List.of(), List.copyOf(browser.errors()));
  }

  @Test
  void each_candle_has_its_label_and_nothing_states_more_than_is_there() {
    Page page = open("labels.html?code=20261125-1&label=8%20oz");
    assertThat(page.locator(".card")).hasCount(12);
    assertThat(page.locator(".card .net").first()).hasText("Net weight 8 oz (226 g)");
    assertThat(page.locator(".card .warning li")).hasCount(36);
    assertThat(page.locator("#deference")).containsText("law where the candle is sold");
    page.screenshot(
        new Page.ScreenshotOptions().setFullPage(true).setPath(PICTURES.resolve("labels.png")));
    assertEquals(2, papers(page, "labels"));
    assertEquals(List.of(), List.copyOf(browser.errors()));
  }

  @Test
  void from_the_list_to_a_lot_and_its_sheet_by_keyboard() {
    Page page = open("batches.html");
    assertThat(page.locator("#batches tbody tr")).hasCount(3);
    page.getByLabel("Lot", new Page.GetByLabelOptions().setExact(true)).first().focus();
    page.keyboard().type("Q-32");
    page.keyboard().press("Enter");
    assertThat(page.locator("#found")).hasText("2 batches, 15 vessels.");
    page.screenshot(
        new Page.ScreenshotOptions().setFullPage(true).setPath(PICTURES.resolve("batches.png")));
    page.locator("#uses").getByRole(AriaRole.LINK).last().press("Enter");
    assertThat(page.locator("#code")).hasText("20261125-1");
    assertEquals(List.of(), List.copyOf(browser.errors()));
  }

  @Test
  void a_correction_is_sent_with_what_it_corrects_and_why() throws Exception {
    bench.said().clear();
    Page page = open("sheet.html?code=20261125-2");
    page.getByLabel("Entry").selectOption("weight " + lastWeight());
    page.getByLabel("Should read").fill("252.4");
    page.getByLabel("Reason").fill("digits swapped");
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Correct"))
        .click();
    assertThat(page.locator("#answer")).hasText("Written down.");
    assertEquals(
        new MakerCommand.Correct(
            "20261125-2",
            lastWeight(),
            Correctable.WEIGHT,
            "",
            "252.3",
            "252.4",
            "digits swapped",
            ""),
        bench.said().remove().command());
    assertEquals(List.of(), List.copyOf(browser.errors()));
  }

  @Test
  void a_script_in_what_a_person_typed_is_shown_as_text() {
    String script = "<img src=x onerror=window.ran=1>";
    Page page = open("");
    page.route("**/api/batch*", route -> {
      APIResponse own = route.fetch();
      route.fulfill(
          new Route.FulfillOptions().setResponse(own).setBody(own.text().replace("Robin", script)));
    });
    for (String path : List.of("batches.html", "sheet.html?code=20261125-1")) {
      page.navigate(server.address() + path);
      assertThat(page.locator("main")).containsText(script);
      assertThat(page.locator("img")).hasCount(0);
      assertEquals(false, page.evaluate("'ran' in window"));
    }
    assertEquals(List.of(), List.copyOf(browser.errors()));
  }

  private static long lastWeight() throws Exception {
    var vessels = record.lists().record("20261125-2").orElseThrow().vesselLines();
    return vessels.get(vessels.size() - 1).entry();
  }
}
