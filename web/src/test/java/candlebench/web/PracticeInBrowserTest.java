package candlebench.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.BufferedReader;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A person at the practice bench of the packaged program, by the keyboard alone. */
@Tag("browser")
class PracticeInBrowserTest {
  private static final Pattern PORT = Pattern.compile(":(\\d+)/");
  private static final long PATIENCE_NANOS = TimeUnit.MINUTES.toNanos(3);
  private static final long SPOON_NANOS = TimeUnit.SECONDS.toNanos(5);
  private static final double NEAR_GRAMS = 15;

  @TempDir
  Path data;

  @Test
  void oil_is_practised_with_the_keyboard_alone_until_the_batch_is_done() throws Exception {
    Process program = Program.command("demo", "--port", "0", "--data", data.toString())
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
    try (PageBrowser browser = new PageBrowser()) {
      Page page = browser.openProgram(port(program), 1280, 800);
      assertThat(page.getByText("Practice: nothing here is a record")).isVisible();
      start(page);
      PageEyes eyes = new PageEyes(page);
      press(page, "Put on");
      pourToTheEnd(page, eyes);
      assertThat(eyes.region("Parts").getByRole(AriaRole.LISTITEM)).hasCount(1);
      assertThat(Program.run("export", "--practice", "--data", data.toString()).out())
          .contains("\"kind\":\"weight-accepted\"", "\"kind\":\"batch-done\"");
      assertThat(browser.errors()).isEmpty();
    } finally {
      program.destroyForcibly();
    }
  }

  private static int port(Process program) throws Exception {
    BufferedReader out = program.inputReader();
    Matcher address = PORT.matcher(String.valueOf(out.readLine()));
    if (!address.find()) throw new AssertionError("the program did not say where its page is");
    return Integer.parseInt(address.group(1));
  }

  private static void start(Page page) {
    Locator form = new PageEyes(page).region("Start a batch");
    form.getByLabel("Recipe").selectOption("harbour-lane-oil");
    form.getByLabel("Vessels").focus();
    page.keyboard().type("1");
    page.keyboard().press("Enter");
    assertThat(new PageEyes(page).region("What to do now"))
        .containsText("Put the empty pot on the scale.");
  }

  /** Pours, trickles, drips and spoons as the page asks, holding a key for as long as it is to run. */
  private static void pourToTheEnd(Page page, PageEyes eyes) {
    long deadline = System.nanoTime() + PATIENCE_NANOS;
    String held = "";
    long spooned = System.nanoTime() - SPOON_NANOS;
    while (!eyes.heading().startsWith("Done")) {
      if (System.nanoTime() > deadline)
        throw new AssertionError("not done; the page says '" + eyes.heading() + "', '"
            + eyes.words("Weight") + "', '" + eyes.words("Signal") + "'");
      String hold = keyFor(eyes);
      if (!hold.equals(held)) {
        if (!held.isEmpty()) page.keyboard().up(" ");
        if (!hold.isEmpty()) {
          hand(page, hold).focus();
          page.keyboard().down(" ");
        }
        held = hold;
      }
      String signal = eyes.words("Signal");
      if (signal.contains("drop")) press(page, "A drop");
      // One spoonful, then time to see what it left: the scale and the page are behind the hand.
      boolean seen = System.nanoTime() - spooned > SPOON_NANOS;
      if (eyes.heading().startsWith("Too much") && seen) {
        press(page, "Spoon out");
        spooned = System.nanoTime();
      }
    }
  }

  private static String keyFor(PageEyes eyes) {
    String signal = eyes.words("Signal");
    double toGo = eyes.look().toGo().orElse(0);
    if (signal.equals("Slow down") || signal.startsWith("Stop in"))
      return toGo > NEAR_GRAMS ? "Hold to pour" : "Hold to trickle";
    if (signal.equals("Pour")) return toGo > NEAR_GRAMS ? "Hold to pour" : "Hold to trickle";
    return "";
  }

  private static void press(Page page, String name) {
    hand(page, name).focus();
    page.keyboard().press("Enter");
  }

  private static Locator hand(Page page, String name) {
    return new PageEyes(page)
        .region("Practice hands")
        .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName(name));
  }
}
