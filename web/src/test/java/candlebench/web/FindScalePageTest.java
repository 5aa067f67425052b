package candlebench.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.simulator.Pan;
import candlebench.simulator.PseudoTerminal;
import candlebench.simulator.RunningBench;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.SendMode;
import candlebench.simulator.VirtualScale;
import candlebench.station.view.ShownUnit;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The way to a scale as a new maker goes it, in a real browser, with a virtual scale behind a real device node. */
@Tag("browser")
class FindScalePageTest {
  private static final int PATIENCE_MILLIS = 60_000;

  @TempDir
  Path folder;

  @Test
  void a_scale_that_only_answers_is_found_named_and_used_by_keyboard() throws Exception {
    BlockingQueue<String> kept = new LinkedBlockingQueue<>();
    try (PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"));
        RunningBench bench =
            RunningBench.start(List.of(new RunningBench.Station(scale(), terminal)), nanos -> {});
        ScaleSearch search = new ScaleSearch(new Keeping(kept));
        WebServer server = serve(search);
        PageBrowser browser = new PageBrowser()) {
      Page page = browser.open(server.port(), 1280, 800, false);
      Locator way =
          page.getByRole(AriaRole.REGION, new Page.GetByRoleOptions().setName("Find a scale"));
      assertThat(way).isVisible();
      assertThat(page.getByRole(AriaRole.HEADING).last()).hasText("Find the scale, or practise.");

      way.getByLabel("Another port").fill(folder.resolve("nothing").toString());
      page.keyboard().press("Enter");
      assertThat(way.getByRole(AriaRole.STATUS)).containsText("is no serial port");
      // The browser itself reports what was refused.
      assertThat(browser.errors()).allMatch(error -> error.contains("400"));
      browser.errors().clear();

      way.getByLabel("Another port").fill(terminal.address());
      page.keyboard().press("Enter");
      Locator use =
          way.getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Use it as SICS"));
      assertThat(use)
          .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(PATIENCE_MILLIS));
      assertThat(way.getByRole(AriaRole.STATUS))
          .hasText("Found, at 9600 baud, 8N1: " + ScaleFormats.of("sics").title()
              + ". It sends when it is asked, and will be asked all the time.");
      use.focus();
      page.keyboard().press("Enter");
      assertThat(way.getByRole(AriaRole.STATUS)).hasText("Kept. The scale is being opened.");
      assertThat(kept.poll(10, TimeUnit.SECONDS))
          .isEqualTo("serial:" + terminal.address() + "?format=sics&line=9600-8N1&ask=200ms");
      assertThat(kept.poll(10, TimeUnit.SECONDS)).isEqualTo("opened anew");
      assertThat(browser.errors()).isEmpty();
      assertThat(bench.<Boolean>ask(terminal::isOpened)).isFalse();
    }
  }

  private static WebServer serve(ScaleSearch search) {
    Site site = new Site(
        new BenchWithoutScale(ShownUnit.GRAM),
        System::nanoTime,
        List.of(),
        Optional.of(search),
        Optional.empty(),
        Optional.empty());
    return new WebServer(site, InetAddress.getLoopbackAddress(), 0);
  }

  private static VirtualScale scale() {
    ScaleFormat format = ScaleFormats.of("sics");
    ScaleTraits traits = ScaleTraits.benchThreeKilograms()
        .with(SendMode.ON_REQUEST)
        .with(LineSettings.of("9600-8N1"));
    return new VirtualScale(
        traits, ScaleQuirks.none(), format, format.layouts().get(0), new Pan(), 7);
  }

  private record Keeping(BlockingQueue<String> kept) implements ScaleSearch.Chosen {
    @Override
    public void keep(String uri) {
      kept.add(uri);
    }

    @Override
    public void openAnew() {
      kept.add("opened anew");
    }
  }
}
