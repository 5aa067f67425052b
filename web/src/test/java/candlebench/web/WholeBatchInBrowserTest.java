package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.AriaRole;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Four vessels from "start" to "done" through the packaged program, a real device node and a real browser. The maker knows what the
 * page shows, and touches nothing in between.
 */
@Tag("browser")
@Timeout(value = 12, unit = TimeUnit.MINUTES)
class WholeBatchInBrowserTest {
  private static final int VESSELS = 4;
  private static final long PATIENCE_NANOS = TimeUnit.MINUTES.toNanos(10);
  private static PageBrowser browser;

  @TempDir
  Path folder;

  private final BatchHands hands = BatchHands.slow();

  @BeforeAll
  static void open() {
    browser = new PageBrowser();
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  /** Five minutes each, so they are asked for: see how to test. */
  @Tag("long")
  @ParameterizedTest
  @ValueSource(strings = {"and", "sics", "sbi"})
  void four_vessels_are_filled_with_no_touch_between_start_and_done(String format)
      throws Exception {
    try (RealBench real = new RealBench(folder, format, 10, hands)) {
      PageEyes eyes = begin(real);
      work(real, eyes, () -> eyes.heading().startsWith("Done"));
      BatchTruth.check(real, hands, VESSELS);
      assertThat(Program.run("export", "--data", real.data().toString()).out())
          .contains("\"kind\":\"batch-done\"")
          .doesNotContain("over-poured", "\"kind\":\"asked\"");
      assertThat(browser.errors()).isEmpty();
    }
  }

  @Test
  void six_grams_of_oil_too_much_are_met_cured_with_wax_and_written_down() throws Exception {
    try (RealBench real = new RealBench(folder, "and", 10, hands)) {
      PageEyes eyes = begin(real);
      work(real, eyes, () -> eyes.heading().startsWith("Pour") && toGo(eyes) < 30);
      real.bench().act(() -> real.pan().add(Mass.ofGrams("36")));
      work(real, eyes, () -> eyes.heading().startsWith("Too much") && isChoosable(eyes));
      choice(eyes).click();
      work(real, eyes, () -> eyes.heading().startsWith("Add more"));
      work(real, eyes, () -> eyes.heading().startsWith("Done"));
      String out = Program.run("export", "--data", real.data().toString()).out();
      assertThat(out)
          .contains(
              "\"kind\":\"over-poured\"",
              "\"kind\":\"remedy-chosen\"",
              "\"kind\":\"cure-checked\"",
              "\"kind\":\"batch-done\"");
      BatchTruth.check(real, hands, VESSELS);
    }
  }

  private static PageEyes begin(RealBench real) throws Exception {
    real.startProgram();
    PageEyes eyes = real.open(browser);
    RealBench.start(eyes, "harbour-lane-quick", VESSELS);
    return eyes;
  }

  private void work(RealBench real, PageEyes eyes, BooleanSupplier until) {
    real.until(
        eyes,
        () -> {
          hands.read(eyes.heading());
          return until.getAsBoolean();
        },
        PATIENCE_NANOS);
  }

  private static double toGo(PageEyes eyes) {
    return eyes.look().toGo().orElse(Double.MAX_VALUE);
  }

  private static Locator choice(PageEyes eyes) {
    return eyes.region("Ways on")
        .getByRole(
            AriaRole.BUTTON,
            new Locator.GetByRoleOptions().setName(Pattern.compile("^Add the rest to match")));
  }

  private static boolean isChoosable(PageEyes eyes) {
    return choice(eyes).count() == 1 && choice(eyes).isEnabled();
  }
}
