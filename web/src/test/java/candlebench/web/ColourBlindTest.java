package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.view.StationView;
import com.google.gson.JsonObject;
import com.microsoft.playwright.Page;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * States are told apart by an eye that lacks one kind of cone: with all figures and sentences covered, any two still differ in
 * lightness, so that shape, place and the signal's word carry the difference and no colour is needed.
 */
@Tag("browser")
class ColourBlindTest {
  private static final List<String> STATES = List.of(
      "place-pot",
      "pour",
      "slow",
      "stop",
      "drops",
      "hold-still",
      "count-in",
      "over",
      "stale",
      "lost",
      "assumed",
      "overload",
      "waiting",
      "finished");

  /** A step of lightness that nobody overlooks; common practice, no source. */
  private static final double LIGHTNESS_STEP = 30;

  /** A shape of thirty by thirty pixels on the tablet, seven millimetres in the square. */
  private static final int LEAST_PIXELS = 900;

  private static final String COVERED =
      "for (const id of ['now', 'detail', 'number', 'unit', 'amounts', 'trouble-word', 'trouble-last', 'choices', 'figure-name', 'start', 'batch', 'scales', 'parts', 'record']) document.getElementById(id).style.visibility = 'hidden'";

  private static ScriptedBench bench;
  private static WebServer server;
  private static PageBrowser browser;

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

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void any_two_states_differ_without_their_words_and_without_colour(boolean dim)
      throws IOException {
    Page page = browser.open(server.port(), 1280, 800, dim);
    Map<String, BufferedImage> pictures = new LinkedHashMap<>();
    for (String state : STATES) pictures.put(state, picture(page, Scenes.all().get(state)));
    List<String> alike = new ArrayList<>();
    for (ColourVision eye : ColourVision.values()) {
      Map<String, double[]> seen = new LinkedHashMap<>();
      pictures.forEach((state, picture) -> seen.put(state, lightness(picture, eye)));
      for (String one : STATES)
        for (String other : STATES)
          if (one.compareTo(other) < 0 && differing(seen.get(one), seen.get(other)) < LEAST_PIXELS)
            alike.add(eye + ": " + one + " and " + other + " differ in "
                + differing(seen.get(one), seen.get(other)) + " pixels");
    }
    assertThat(alike).isEmpty();
    BufferedImage again = picture(page, Scenes.all().get("stop"));
    assertThat(differing(
            lightness(again, ColourVision.USUAL),
            lightness(pictures.get("stop"), ColourVision.USUAL)))
        .as("one state is not told apart from itself")
        .isZero();
    page.context().close();
  }

  @Test
  void the_simulation_agrees_with_the_browsers_own() throws IOException {
    Page page = browser.open(server.port(), 400, 300, false);
    for (ColourVision eye : ColourVision.values())
      for (int colour : new int[] {0x8c1420, 0xffd98a, 0xf2bf5e, 0x0b3f5c, 0x1d4a2c, 0x808080}) {
        page.evaluate(
            "colour => { document.body.replaceChildren(); document.body.style.background = colour; }",
            String.format("#%06x", colour));
        JsonObject kind = new JsonObject();
        kind.addProperty(
            "type",
            eye == ColourVision.USUAL ? "none" : eye.name().toLowerCase(java.util.Locale.ROOT));
        page.context().newCDPSession(page).send("Emulation.setEmulatedVisionDeficiency", kind);
        int shown = read(page).getRGB(200, 150);
        for (int shift : new int[] {16, 8, 0})
          assertThat(eye.of(colour) >> shift & 255)
              .as("%s of %06x: the browser shows %06x", eye, colour, shown & 0xffffff)
              .isBetween((shown >> shift & 255) - 2, (shown >> shift & 255) + 2);
      }
    page.context().close();
    browser.errors().clear();
  }

  private static BufferedImage picture(Page page, StationView view) throws IOException {
    bench.show(view);
    page.locator("body[data-revision='" + view.revision() + "']").waitFor();
    page.evaluate(COVERED);
    return read(page);
  }

  private static BufferedImage read(Page page) throws IOException {
    return ImageIO.read(new ByteArrayInputStream(page.screenshot()));
  }

  private static double[] lightness(BufferedImage picture, ColourVision eye) {
    int[] colours =
        picture.getRGB(0, 0, picture.getWidth(), picture.getHeight(), null, 0, picture.getWidth());
    Map<Integer, Double> known = new java.util.HashMap<>();
    double[] seen = new double[colours.length];
    for (int at = 0; at < colours.length; at++)
      seen[at] = known.computeIfAbsent(colours[at], rgb -> ColourVision.lightness(eye.of(rgb)));
    return seen;
  }

  private static long differing(double[] one, double[] other) {
    long count = 0;
    for (int at = 0; at < one.length; at++)
      if (Math.abs(one[at] - other[at]) >= LIGHTNESS_STEP) count++;
    return count;
  }
}
