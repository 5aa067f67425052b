package candlebench.web;

import candlebench.station.view.StationView;
import com.microsoft.playwright.Page;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Not a test: takes the pictures of the handbook anew, from the page itself with the states of a batch set before it. Run it from the root:
 * {@code mvn -q -Pbrowser -pl web -am test-compile exec:java -Dexec.classpathScope=test
 * -Dexec.mainClass=candlebench.web.HandbookPictures -Dexec.args=web/handbook}
 */
final class HandbookPictures {
  private static final int WIDTH = 1280;
  private static final int HEIGHT = 800;

  /** The states that the handbook shows. */
  static final List<String> STATES = List.of(
      "no-scale",
      "idle",
      "place-pot",
      "pour",
      "slow",
      "stop",
      "drops",
      "over",
      "stale",
      "waiting",
      "fill-vessel",
      "in-turns",
      "finished");

  private static final String SHEET = "sheet.html?code=20261125-1&label=250%20g";

  private HandbookPictures() {}

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    Files.createDirectories(folder);
    try (ServedRecord record = new ServedRecord(Files.createTempDirectory("handbook"));
        PageBrowser browser = new PageBrowser()) {
      Page page = browser.open(record.server().port(), WIDTH, HEIGHT, false);
      for (String state : STATES) {
        StationView view = Scenes.all().get(state);
        record.bench().show(view);
        page.locator("body[data-revision='" + view.revision() + "']").waitFor();
        take(page, folder.resolve(state + ".png"));
      }
      page.navigate(record.server().address() + SHEET);
      page.locator("#sheet:visible").waitFor();
      take(page, folder.resolve("sheet.png"));
    }
  }

  private static void take(Page page, Path file) {
    page.screenshot(new Page.ScreenshotOptions().setPath(file));
  }
}
