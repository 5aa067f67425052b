package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.view.StationView;
import com.microsoft.playwright.Page;
import java.net.InetAddress;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Each state of the bench on each size of screen, also as a picture in {@code target/screens}. */
@Tag("browser")
class ScreensTest {

  private record Size(String name, int width, int height, boolean dim) {}

  @Test
  void every_state_can_be_looked_at() {
    ScriptedBench bench = new ScriptedBench(Scenes.pouring());
    try (WebServer server = new WebServer(bench, InetAddress.getLoopbackAddress(), 0);
        PageBrowser browser = new PageBrowser()) {
      for (Size size : new Size[] {
        new Size("tablet", 1280, 800, false),
        new Size("tablet-dim", 1280, 800, true),
        new Size("large", 1920, 1080, false),
        new Size("phone", 390, 844, false)
      }) {
        Page page = browser.open(server.port(), size.width(), size.height(), size.dim());
        for (String scene : Scenes.all().keySet()) {
          StationView view = Scenes.all().get(scene);
          bench.show(view);
          page.locator("body[data-revision='" + view.revision() + "']").waitFor();
          page.screenshot(new Page.ScreenshotOptions()
              .setPath(Path.of("target/screens/" + size.name() + "-" + scene + ".png")));
        }
        page.context().close();
      }
      assertThat(browser.errors()).isEmpty();
    }
  }
}
