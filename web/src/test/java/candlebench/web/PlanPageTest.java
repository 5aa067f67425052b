package candlebench.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The page that answers what goes into the pot, in a real browser. */
@Tag("browser")
class PlanPageTest {
  private static WebServer server;
  private static PageBrowser browser;
  private Page page;

  @BeforeAll
  static void start() {
    server = new WebServer(
        new ScriptedBench(Scenes.pouring()).site(), InetAddress.getLoopbackAddress(), 0);
    browser = new PageBrowser();
  }

  @AfterAll
  static void stop() {
    browser.close();
    server.close();
  }

  @BeforeEach
  void open() {
    browser.errors().clear();
    page = browser.open(server.port(), 1280, 900, false);
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Plan")).click();
    assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
        .hasText("What goes into the pot?");
    assertThat(page.locator("#example")).isEnabled();
  }

  /** By the keyboard alone. */
  static void planTheExample(Page page) {
    Locator example =
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Take the example"));
    assertThat(example).isEnabled();
    example.press("Enter");
    assertThat(page.getByRole(AriaRole.STATUS)).containsText("Say how many vessels");
    page.getByLabel("Vessels").press("Enter");
    assertThat(page.locator("#verdict")).containsText("planned");
  }

  @Test
  void the_sum_is_shown_step_by_step_with_both_meanings_of_the_load() {
    assertThat(page.locator("#empty")).containsText("A plan file holds a recipe");
    planTheExample(page);
    assertThat(page.locator("#verdict")).isFocused();
    assertThat(row("How much in all", "All vessels")).containsText("14 × 252.3 g");
    assertThat(row("How much in all", "In all")).containsText("3552.4 g");
    Locator cedar = row("How much of each part", "Quay Cedar (invented)");
    assertThat(cedar).containsText("4.8 % of wax = 4.4017 % of total");
    assertThat(cedar).containsText("156.3642 g");
    assertThat(cedar).containsText("as 4.8 % of total it would be 170.5152 g");
    assertThat(page.locator("#load")).hasText("All oils: 8 % of wax, which is 7.3361 % of total.");
    Locator pots = region("Into which pot");
    assertThat(pots.getByRole(AriaRole.HEADING, new Locator.GetByRoleOptions().setLevel(3)))
        .hasCount(2);
    assertThat(pots).containsText("Pot A: 7 vessels, 1776.2 g; 2196.2 g on the scale with the pot");
    assertThat(pots).containsText("into a cup, on Fine scale");
    assertThat(browser.errors()).isEmpty();
  }

  @Test
  void another_number_of_vessels_is_planned_anew() {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Take the example"))
        .click();
    assertThat(page.getByRole(AriaRole.STATUS)).containsText("Say how many vessels");
    page.getByLabel("Vessels").fill("20");
    page.getByLabel("Vessels").press("Enter");
    assertThat(page.locator("#verdict")).containsText("refused");
    assertThat(page.locator("#findings")).containsText("Refused:");
    assertThat(page.locator("#findings")).containsText("more than the pot's room");
    assertThat(browser.errors()).isEmpty();
  }

  @Test
  void a_file_that_is_no_plan_is_refused_in_words() {
    page.getByLabel("Plan file")
        .setInputFiles(new FilePayload("notes.json", "application/json", bytes("not json")));
    assertThat(page.getByRole(AriaRole.ALERT)).containsText("notes.json is no plan file");
    page.getByLabel("Plan file")
        .setInputFiles(
            new FilePayload("plan.json", "application/json", bytes("{\"recipe\":{\"id\":\"x\"}}")));
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Plan it"))
        .click();
    assertThat(page.getByRole(AriaRole.ALERT)).containsText("the plan file:");
    assertThat(browser.errors()).allMatch(error -> error.contains("400"));
  }

  private Locator row(String region, String first) {
    return region(region)
        .getByRole(AriaRole.ROW)
        .filter(new Locator.FilterOptions().setHasText(first));
  }

  private Locator region(String name) {
    return page.getByRole(AriaRole.REGION, new Page.GetByRoleOptions().setName(name));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
