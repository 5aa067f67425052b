package candlebench.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.Bench.Answer;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Words;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import candlebench.web.ScriptedBench.Said;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the maker sees, hears said and can press, in a real browser. */
@Tag("browser")
class PageTest {
  private static final int PATIENCE_SECONDS = 10;

  private static ScriptedBench bench;
  private static WebServer server;
  private static PageBrowser browser;
  private Page page;

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

  @BeforeEach
  void open() {
    bench.said().clear();
    bench.answerWith(command -> new Answer(true, Words.of("answer.done")));
    bench.show(Scenes.pouring());
    browser.errors().clear();
    page = browser.open(server.port(), 1280, 800, false);
    assertThat(region("What to do now")).containsText("Pour Harbour Fig oil.");
  }

  @AfterEach
  void close() {
    page.context().close();
    assertThat(browser.errors()).isEmpty();
  }

  @Test
  void what_to_do_how_much_is_left_and_the_signal_are_found_by_name() {
    assertThat(region("Weight")).containsText("to go");
    assertThat(region("Weight")).containsText("43.7");
    assertThat(region("Weight")).containsText("moving");
    assertThat(region("Signal")).hasText("Pour");
    assertThat(region("Parts").getByRole(AriaRole.LISTITEM)).hasCount(3);
    assertThat(region("Scales")).containsText("Bench scale");
    assertThat(page.getByRole(
            AriaRole.IMG, new Page.GetByRoleOptions().setName("Filled to 20 per cent of the line")))
        .isVisible();
    assertThat(page).hasTitle("Candlebench");
  }

  @Test
  void a_newer_view_is_shown_without_being_asked_for() {
    bench.show(Scenes.all().get("slow"));
    assertThat(region("Weight")).containsText("4.2");
    assertThat(region("Signal")).containsText("Stop in");
    bench.show(Scenes.all().get("drops"));
    assertThat(region("Signal")).hasText("9 drops");
  }

  @Test
  void a_number_that_got_old_is_taken_away_though_the_stream_hangs() {
    Page hung = hangingPage(Scenes.all().get("count-in"));
    assertThat(hung.locator("#number")).hasText("0.1");
    hung.clock().runFor(900);
    assertThat(hung.locator("#number")).isVisible();
    hung.clock().runFor(200);
    assertThat(hung.locator("#number")).isHidden();
    assertThat(named(hung, "Weight")).containsText("s old");
    assertThat(named(hung, "Weight")).containsText("Last seen");
    hung.context().close();
    browser.errors().removeIf(error -> error.contains("ERR_FAILED"));
  }

  @Test
  void a_lost_station_is_told_and_the_number_hidden() {
    Page hung = hangingPage(Scenes.pouring());
    assertThat(hung.locator("#number")).hasText("43.7");
    hung.clock().runFor(1500);
    assertThat(named(hung, "Weight")).containsText("The page has lost the station.");
    assertThat(hung.locator("#number")).isHidden();
    assertThat(named(hung, "Signal")).isHidden();
    hung.context().close();
    browser.errors().removeIf(error -> error.contains("ERR_FAILED"));
  }

  @Test
  void a_number_that_may_not_be_trusted_is_never_shown_as_if_it_could() {
    for (String scene : List.of("stale", "lost", "overload")) {
      bench.show(Scenes.all().get(scene));
      assertThat(page.locator("#figure")).isHidden();
      assertThat(page.locator("#trouble")).isVisible();
      assertThat(region("Signal")).isHidden();
    }
    bench.show(Scenes.all().get("assumed"));
    assertThat(region("Weight")).containsText("unit assumed");
    assertThat(page.locator("#figure")).isVisible();
  }

  @Test
  void the_large_key_is_pressed_by_touch_by_keyboard_and_by_foot_switch()
      throws InterruptedException {
    bench.show(Scenes.all().get("waiting"));
    Locator key = region("Keys")
        .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Stirred"));
    key.click();
    assertThat(next().command()).isEqualTo(new MakerCommand.GoOn());
    for (String press : List.of(" ", "Enter")) {
      bench.show(Scenes.all().get("count-in"));
      assertThat(region("Keys").getByRole(AriaRole.BUTTON)).hasText("Take it now");
      page.locator("body").press(press);
      assertThat(next().command()).isEqualTo(new MakerCommand.GoOn());
      bench.show(Scenes.all().get("waiting"));
      assertThat(key).isVisible();
    }
  }

  @Test
  void a_double_tap_counts_once() throws InterruptedException {
    bench.show(Scenes.all().get("waiting"));
    region("Keys")
        .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Stirred"))
        .dblclick();
    Said first = next();
    bench.show(Scenes.all().get("fill-vessel"));
    region("Keys")
        .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Undo"))
        .click();
    Said second = next();
    assertThat(first.command()).isEqualTo(new MakerCommand.GoOn());
    assertThat(second.command()).isEqualTo(new MakerCommand.Undo());
    assertThat(first.id()).isNotEqualTo(second.id());
  }

  @Test
  void a_press_that_did_not_arrive_is_sent_again_as_the_same_press() throws InterruptedException {
    List<String> bodies = new ArrayList<>();
    page.route("**/api/say", route -> {
      bodies.add(route.request().postData());
      if (bodies.size() == 1) route.abort();
      else route.resume();
    });
    bench.show(Scenes.all().get("waiting"));
    region("Keys").getByRole(AriaRole.BUTTON).click();
    page.waitForCondition(() -> !bench.said().isEmpty());
    assertThat(bodies).hasSize(2);
    assertThat(bodies.get(0)).isEqualTo(bodies.get(1));
    assertThat(next().command()).isEqualTo(new MakerCommand.GoOn());
    browser.errors().removeIf(error -> error.contains("ERR_FAILED"));
  }

  @Test
  void what_the_bench_refuses_is_told_in_words() {
    bench.answerWith(command -> new Answer(false, Words.of("refused.not-now")));
    bench.show(Scenes.all().get("waiting"));
    region("Keys").getByRole(AriaRole.BUTTON).click();
    assertThat(page.locator("#answer")).hasText("That key does nothing just now.");
    browser.errors().removeIf(error -> error.contains("409"));
  }

  @Test
  void an_over_pour_is_said_at_once_and_offers_its_ways() throws InterruptedException {
    bench.show(Scenes.over());
    assertThat(page.locator("#assertive")).containsText("Too much");
    assertThat(region("Weight")).containsText("5.0");
    assertThat(region("Weight")).containsText("over the target");
    Locator ways = region("Ways on");
    assertThat(ways.getByRole(AriaRole.LISTITEM)).hasCount(4);
    Locator impossible =
        ways.getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Take oil back"));
    assertThat(impossible).containsText("it is in the wax already");
    impossible.click(new Locator.ClickOptions().setForce(true));
    ways.getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Add 62.5 g of wax"))
        .click();
    assertThat(next().command()).isEqualTo(new MakerCommand.Choose("add-wax", ""));
  }

  @Test
  void a_way_that_needs_a_reason_asks_for_it_and_keeps_what_is_typed_while_views_arrive()
      throws InterruptedException {
    bench.show(Scenes.over());
    Locator ways = region("Ways on");
    ways.getByRole(
            AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Keep it at 8.71 % of wax"))
        .click();
    Locator reason = ways.getByRole(
        AriaRole.TEXTBOX, new Locator.GetByRoleOptions().setName("Why? It goes into the record."));
    assertThat(reason).isFocused();
    reason.press("Enter");
    reason.pressSequentially("under the ");
    bench.show(Scenes.over());
    reason.pressSequentially("limit");
    assertThat(reason).hasValue("under the limit");
    reason.press("Enter");
    assertThat(next().command()).isEqualTo(new MakerCommand.Choose("keep", "under the limit"));
  }

  @Test
  void stages_are_spoken_and_readings_are_not() {
    assertThat(page.locator("#polite")).hasText("Pour Harbour Fig oil.");
    bench.show(Scenes.showing("12.4"));
    assertThat(region("Scales")).containsText("12.4");
    assertThat(page.locator("#polite")).hasText("Pour Harbour Fig oil.");
    bench.show(Scenes.all().get("waiting"));
    assertThat(page.locator("#polite")).containsText("Stir.");
    assertThat(page.locator("#assertive")).isEmpty();
  }

  @Test
  void all_keys_are_reached_by_the_keyboard_alone() throws InterruptedException {
    bench.show(Scenes.over());
    assertThat(region("Ways on")).isVisible();
    page.keyboard().press("Tab");
    Locator skip =
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Skip to the weight"));
    assertThat(skip).isFocused();
    page.keyboard().press("Enter");
    assertThat(region("Weight")).isFocused();
    page.keyboard().press("Tab");
    page.keyboard().press("Space");
    assertThat(next().command()).isEqualTo(new MakerCommand.Choose("add-wax", ""));
  }

  @Test
  void keys_of_the_keyboard_can_be_switched_off() {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Settings"))
        .click();
    Locator dialog = page.getByRole(AriaRole.DIALOG);
    dialog.getByRole(AriaRole.CHECKBOX).uncheck();
    dialog
        .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Done"))
        .click();
    bench.show(Scenes.all().get("waiting"));
    assertThat(region("Keys").getByRole(AriaRole.BUTTON)).hasText("Stirred");
    page.keyboard().press("Enter");
    region("Keys").getByRole(AriaRole.BUTTON).click();
    page.waitForCondition(() -> !bench.said().isEmpty());
    assertThat(bench.said()).hasSize(1);
  }

  @Test
  void the_keys_are_the_makers_own_and_so_is_the_decimal_sign() throws InterruptedException {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Settings"))
        .click();
    Locator dialog = page.getByRole(AriaRole.DIALOG);
    dialog
        .getByRole(AriaRole.TEXTBOX, new Locator.GetByRoleOptions().setName("Large key"))
        .press("F8");
    assertThat(
            dialog.getByRole(AriaRole.TEXTBOX, new Locator.GetByRoleOptions().setName("Large key")))
        .hasValue("F8");
    dialog.getByLabel("56,1").check();
    page.keyboard().press("Escape");
    assertThat(page.locator("#number")).hasText("43,7");
    assertThat(region("Weight")).containsText("12,3 g in, of 56,0 g");
    bench.show(Scenes.all().get("waiting"));
    assertThat(region("Keys").getByRole(AriaRole.BUTTON)).hasText("Stirred");
    page.locator("body").press("Enter");
    page.locator("body").press("F8");
    assertThat(next().command()).isEqualTo(new MakerCommand.GoOn());
    assertThat(bench.said()).isEmpty();
    bench.show(Scenes.byHand());
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Enter a weight by hand"))
        .click();
    Locator form = region("By hand");
    form.getByLabel("Weight").fill("24,8");
    form.getByLabel("Why").fill("cable");
    form.getByLabel("Why").press("Enter");
    assertThat(next().command())
        .isEqualTo(new MakerCommand.EnterByHand(Mass.ofGrams("24.8"), "cable"));
  }

  @Test
  void a_screen_is_read_in_the_unit_chosen_on_it_and_says_to_what_it_is_rounded() {
    bench.showIn(ShownUnit.POUND_OUNCE, Scenes.inPoundsAndOunces());
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Settings"))
        .click();
    page.getByRole(AriaRole.DIALOG).getByLabel("lb:oz").check();
    page.keyboard().press("Escape");
    assertThat(page.locator("#number")).hasText("0:01.542");
    assertThat(region("Weight")).containsText("0:00.434 lb:oz in, of 0:01.976 lb:oz");
    assertThat(region("Weight")).containsText("shown to 0.002 oz");
    bench.answerWith(command -> new Answer(
        false,
        Words.of("refused.no-room")
            .and("total", Mass.of("32", MassUnit.OUNCE))
            .and("capacity", Mass.of("17.5", MassUnit.OUNCE))));
    bench.showIn(ShownUnit.POUND_OUNCE, Scenes.all().get("waiting"));
    bench.show(Scenes.all().get("waiting"));
    region("Keys").getByRole(AriaRole.BUTTON).click();
    assertThat(page.locator("#answer"))
        .hasText(
            "The batch comes to 2 lb 0.000 oz; the scale carries 1 lb 1.500 oz. Make fewer vessels.");
    browser.errors().removeIf(error -> error.contains("409"));
  }

  @Test
  void a_foot_switch_reaches_the_large_key_after_the_screens_own_switches_were_used()
      throws InterruptedException {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Settings"))
        .click();
    page.getByRole(AriaRole.DIALOG)
        .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Done"))
        .click();
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sound"))
        .click();
    bench.show(Scenes.all().get("waiting"));
    assertThat(region("Keys").getByRole(AriaRole.BUTTON)).hasText("Stirred");
    page.keyboard().press("Enter");
    assertThat(next().command()).isEqualTo(new MakerCommand.GoOn());
  }

  @Test
  void the_page_says_that_it_is_silent_until_it_is_not() {
    Locator sound = page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sound"));
    assertThat(sound).hasText("Sound is off: turn on");
    sound.click();
    assertThat(sound).hasText("Sound is on");
  }

  @Test
  void a_script_in_any_text_of_a_view_is_shown_as_text() {
    String script = "<img src=x onerror=window.ran=1><script>window.ran=1</script>";
    bench.show(Scenes.everyTextIs(script));
    assertThat(region("What to do now")).containsText(script);
    assertThat(region("Parts")).containsText(script);
    assertThat(region("Scales")).containsText(script);
    assertThat(region("Batch")).containsText(script);
    assertThat(region("Ways on")).containsText(script);
    assertThat(page.locator("#record")).containsText(script);
    assertThat(page.locator("img, body script").count()).isZero();
    assertThat(page.evaluate("'ran' in window")).isEqualTo(false);
  }

  @Test
  void nothing_is_fetched_from_anywhere_else() {
    List<String> asked = new ArrayList<>();
    page.onRequest(request -> asked.add(request.url()));
    page.reload();
    assertThat(region("What to do now")).containsText("Pour");
    assertThat(asked)
        .isNotEmpty()
        .allMatch(url -> url.startsWith("http://localhost:" + server.port() + "/"));
  }

  @Test
  void the_page_comes_back_by_itself_when_the_station_does() {
    WebServer first = new WebServer(bench.site(), InetAddress.getLoopbackAddress(), 0);
    int port = first.port();
    Page returning = browser.open(port, 1280, 800, false);
    assertThat(named(returning, "Weight")).containsText("43.7");
    first.close();
    assertThat(named(returning, "Weight")).containsText("lost the station");
    WebServer second = new WebServer(bench.site(), InetAddress.getLoopbackAddress(), port);
    bench.show(Scenes.all().get("drops"));
    assertThat(named(returning, "Signal")).hasText("9 drops");
    returning.context().close();
    second.close();
    browser.errors().removeIf(error -> error.contains("ERR_"));
  }

  /** A page whose stream brought one view and then nothing, and whose clock stands still. */
  private Page hangingPage(StationView view) {
    String events = "retry: 100\n\n"
        + new String(ViewJson.event(view, view.madeAtNanos()), StandardCharsets.UTF_8);
    boolean[] sent = {false};
    return browser.open(server.port(), 1280, 800, false, fresh -> {
      fresh.clock().install();
      fresh
          .clock()
          .pauseAt(java.time.LocalDateTime.now()
              .plusHours(1)
              .atZone(java.time.ZoneId.systemDefault())
              .toInstant()
              .toEpochMilli());
      fresh.route("**/api/stream", route -> {
        if (sent[0]) route.abort();
        else
          route.fulfill(
              new Route.FulfillOptions().setContentType("text/event-stream").setBody(events));
        sent[0] = true;
      });
    });
  }

  private Said next() throws InterruptedException {
    Said said = bench.said().poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
    if (said == null) throw new AssertionError("nothing was said to the bench");
    return said;
  }

  private Locator region(String name) {
    return named(page, name);
  }

  private static Locator named(Page page, String name) {
    return page.getByRole(
        AriaRole.REGION, new Page.GetByRoleOptions().setName(name).setExact(true));
  }
}
