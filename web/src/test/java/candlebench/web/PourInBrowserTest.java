package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.simulator.MakerTraits;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One pour of oil through the packaged program, a real device node and a real browser; the maker acts on what the page shows alone.
 *
 * <p>Run by hand, in the group {@code pour}: with the first predictor three of five such pours went over on two busy cores, so that it
 * fails until the cues come early enough.
 */
@Tag("browser")
class PourInBrowserTest {
  private static final Mass STEP = Mass.ofGrams("0.1");
  private static PageBrowser browser;

  @TempDir
  Path folder;

  /** Pours at about half the usual flow, since the page and the machine under it may be slow here. */
  private final VirtualMaker maker = new VirtualMaker(
      new MakerTraits(0.35, 0, 0.07, 0.5, 1, 0.5, 0, 0.030, 1.3), Slips.none(), 11, 0);

  @BeforeAll
  static void open() {
    browser = new PageBrowser();
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  @ParameterizedTest
  @ValueSource(doubles = {5, 10})
  void oil_is_poured_to_its_target_and_its_true_weight_is_on_record(double sendsPerSecond)
      throws Exception {
    try (RealBench real = pouring(sendsPerSecond)) {
      PageEyes eyes = begin(real);
      real.until(eyes, () -> eyes.heading().startsWith("Done"));
      Mass truth = real.bench().ask(() -> real.pan().of("pot")).minus(POT);
      assertThat(recorded(real).minus(truth).abs()).isLessThanOrEqualTo(STEP);
      assertThat(truth.minus(Mass.ofGrams("56")).abs())
          .as("poured within the tolerance, and a step for what the scale cannot show")
          .isLessThanOrEqualTo(Mass.ofGrams("0.6"));
    }
  }

  @Test
  void six_grams_too_much_are_said_and_no_way_leads_past_them_but_a_choice() throws Exception {
    try (RealBench real = pouring(10)) {
      PageEyes eyes = begin(real);
      real.until(eyes, () -> toGo(eyes) < 20);
      real.bench().act(() -> real.pan().add(Mass.ofGrams("26")));
      real.until(eyes, () -> eyes.heading().startsWith("Too much"), TimeUnit.SECONDS.toNanos(15));
      assertThat(eyes.region("Ways on").isVisible()).isTrue();
      long after = System.nanoTime() + TimeUnit.SECONDS.toNanos(5);
      real.until(eyes, () -> System.nanoTime() > after);
      assertThat(eyes.heading()).startsWith("Too much");
      assertThat(Program.run("export", "--data", real.data().toString()).out())
          .doesNotContain("weight-accepted");
    }
  }

  @Test
  void an_unplugged_scale_is_said_and_comes_back_by_itself() throws Exception {
    try (RealBench real = pouring(10)) {
      PageEyes eyes = begin(real);
      real.until(eyes, () -> toGo(eyes) < 53);
      real.bench().unplug(0);
      real.until(
          eyes, () -> eyes.words("Scales").contains("unplugged"), TimeUnit.SECONDS.toNanos(15));
      assertThat(eyes.words("Weight")).contains("does not answer").doesNotContain("to go");
      real.bench().replug(0);
      real.until(eyes, () -> eyes.words("Scales").contains("live"), TimeUnit.SECONDS.toNanos(15));
      real.until(eyes, () -> eyes.heading().startsWith("Done"));
      Mass truth = real.bench().ask(() -> real.pan().of("pot")).minus(POT);
      assertThat(recorded(real).minus(truth).abs()).isLessThanOrEqualTo(STEP);
    }
  }

  @Test
  void a_program_killed_in_the_pour_comes_back_to_the_same_step() throws Exception {
    try (RealBench real = pouring(10)) {
      PageEyes eyes = begin(real);
      real.until(eyes, () -> toGo(eyes) < 50);
      real.killProgram();
      real.startProgram();
      PageEyes again = real.open(browser);
      real.until(again, () -> again.heading().contains("heavier than before"));
      again.region("Ways on").getByText("Count what is there").first().click();
      real.until(again, () -> again.heading().startsWith("Done"));
      Mass truth = real.bench().ask(() -> real.pan().of("pot")).minus(POT);
      assertThat(recorded(real).minus(truth).abs()).isLessThanOrEqualTo(STEP);
    }
  }

  private static final Mass POT = Mass.ofGrams("412.3");

  private RealBench pouring(double sendsPerSecond) {
    maker.hand("pot", POT, false);
    return new RealBench(folder, "and", sendsPerSecond, maker);
  }

  private static PageEyes begin(RealBench real) throws Exception {
    real.startProgram();
    PageEyes eyes = real.open(browser);
    RealBench.start(eyes, "harbour-lane-oil", 1);
    return eyes;
  }

  private static double toGo(PageEyes eyes) {
    return eyes.look().toGo().orElse(Double.MAX_VALUE);
  }

  /** The one accepted weight of the export. */
  private static Mass recorded(RealBench real) throws Exception {
    String out = Program.run("export", "--data", real.data().toString()).out();
    Matcher net = Pattern.compile("\"net\":\"(\\d+(?:\\.\\d+)?)\"").matcher(out);
    assertThat(net.find()).as(out).isTrue();
    Mass found = Mass.ofGrams(net.group(1));
    assertThat(net.find()).as("one weight only: " + out).isFalse();
    return found;
  }
}
