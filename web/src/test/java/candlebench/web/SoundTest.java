package candlebench.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.web.Ear.Sound;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.net.InetAddress;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The bench by ear: the page's own sounds, rendered offline by the browser, and what is to be heard in their samples. */
@Tag("browser")
class SoundTest {
  private static final Map<String, Object> USUAL = Map.of("loudness", 60, "pitch", 100);

  private static WebServer server;
  private static PageBrowser browser;
  private static Page page;

  /** One stretch of time in which the bench stays as it is. */
  record Stretch(String cue, int permille, double seconds, int stopInMillis) {
    private static final int FAR = 5000;

    Stretch(String cue, int permille, double seconds) {
      this(cue, permille, seconds, FAR);
    }

    Map<String, Object> asked() {
      return Map.of(
          "cue", cue, "permille", permille, "seconds", seconds, "stopInMillis", stopInMillis);
    }
  }

  @BeforeAll
  static void start() {
    server = new WebServer(
        new ScriptedBench(Scenes.pouring()).site(), InetAddress.getLoopbackAddress(), 0);
    browser = new PageBrowser();
    page = browser.open(server.port(), 1280, 800, false);
  }

  @AfterAll
  static void stop() {
    browser.close();
    server.close();
  }

  @Test
  void the_nearer_the_line_the_quicker_the_beat() {
    double before = Double.MAX_VALUE;
    for (int permille : new int[] {0, 250, 500, 750, 950, 1000}) {
      List<Sound> ticks = heard(new Stretch("pour", permille, 4));
      assertThat(ticks).hasSizeGreaterThan(3).allMatch(tick -> tick.isAbout(660) && !tick.harsh());
      double beat = beat(ticks);
      assertThat(beat).as("at %d per mille", permille).isLessThan(before - 30);
      before = beat;
    }
    List<Sound> slow = heard(new Stretch("slow", 950, 4));
    assertThat(slow).allMatch(tick -> tick.isAbout(880) && !tick.harsh());
    assertThat(beat(slow)).as("slowing down is quicker than any pour").isLessThan(before);
    double unforeseen = beat(slow);
    for (int millis : new int[] {1500, 1000, 500, 0}) {
      double beat = beat(heard(new Stretch("slow", 950, 3, millis)));
      assertThat(beat).as("%d ms before the moment to stop", millis).isLessThan(unforeseen - 20);
      unforeseen = beat;
    }
  }

  @Test
  void beats_keep_their_time_though_the_page_looks_only_now_and_then() {
    List<Sound> ticks = heard(new Stretch("slow", 950, 6));
    for (int at = 1; at < ticks.size(); at++)
      assertThat(ticks.get(at).at() - ticks.get(at - 1).at()).isCloseTo(210, within(8.0));
  }

  @Test
  void on_the_line_there_is_silence() {
    for (String cue : List.of("hold-still", "waiting", "none"))
      assertThat(rendered(USUAL, new Stretch(cue, 1000, 3))).as(cue).containsOnly(0);
  }

  @Test
  void a_stream_is_stopped_by_one_sign_that_falls() {
    List<Sound> sounds = heard(
        new Stretch("slow", 950, 1),
        new Stretch("stop", 990, 2),
        new Stretch("hold-still", 1000, 1),
        new Stretch("stop", 1000, 2));
    List<Sound> sign = sounds.stream().filter(sound -> sound.at() > 1010).toList();
    assertThat(sign).hasSize(2);
    assertThat(sign.get(0).isAbout(1320)).isTrue();
    assertThat(sign.get(1).isAbout(880)).isTrue();
    assertThat(sign.get(0).millis()).isGreaterThan(150);
    assertThat(sign.get(0).at()).as("at once").isCloseTo(1020, within(10.0));
    List<Sound> again = heard(
        new Stretch("stop", 990, 1), new Stretch("pour", 900, 1), new Stretch("stop", 990, 1));
    assertThat(again.stream().filter(sound -> sound.isAbout(1320))).hasSize(2);
  }

  @Test
  void no_beat_is_heard_after_the_sign_to_stop() {
    for (int tenths = 10; tenths < 14; tenths++) {
      double began = tenths * 100;
      List<Sound> after =
          heard(new Stretch("slow", 950, tenths / 10.0), new Stretch("stop", 990, 2)).stream()
              .filter(sound -> sound.at() >= began)
              .toList();
      assertThat(after).as("stopped after %d tenths", tenths).hasSize(2);
      assertThat(after.get(0).isAbout(1320)).isTrue();
    }
  }

  @Test
  void drop_by_drop_is_a_pair_of_ticks() {
    List<Sound> ticks = heard(new Stretch("drops", 990, 4));
    assertThat(ticks).allMatch(tick -> tick.isAbout(1100) && !tick.harsh());
    assertThat(ticks.get(1).at() - ticks.get(0).at()).isCloseTo(120, within(8.0));
    assertThat(ticks.get(2).at() - ticks.get(0).at()).isCloseTo(900, within(8.0));
  }

  @Test
  void the_alarm_is_unlike_all_else() {
    List<Sound> alarm = heard(new Stretch("over", 1080, 4));
    assertThat(alarm).hasSizeGreaterThanOrEqualTo(6).allMatch(each -> each.harsh());
    assertThat(alarm).allMatch(each -> each.pitch() < 600 && each.millis() > 130);
    for (String cue : List.of("pour", "slow", "stop", "drops", "pieces"))
      assertThat(heard(new Stretch(cue, 900, 3)))
          .as(cue)
          .isNotEmpty()
          .allMatch(each -> !each.harsh() && each.pitch() > 600);
  }

  @Test
  void loudness_and_pitch_are_the_makers_own() {
    Stretch pour = new Stretch("pour", 500, 2);
    assertThat(rendered(Map.of("loudness", 0, "pitch", 100), pour)).containsOnly(0);
    double half =
        Ear.hear(rendered(Map.of("loudness", 50, "pitch", 100), pour)).get(0).peak();
    double whole =
        Ear.hear(rendered(Map.of("loudness", 100, "pitch", 100), pour)).get(0).peak();
    assertThat(whole / half).isCloseTo(4, within(0.1));
    assertThat(Ear.hear(rendered(Map.of("loudness", 60, "pitch", 200), pour)))
        .allMatch(tick -> tick.isAbout(1320));
    assertThat(Ear.hear(rendered(Map.of("loudness", 60, "pitch", 50), pour)))
        .allMatch(tick -> tick.isAbout(330));
  }

  @Test
  void without_a_touch_the_browser_is_silent_and_the_page_says_so() {
    Page untouched =
        browser.open(server.port(), 1280, 800, false, fresh -> fresh.addInitScript("""
            const probe = new AudioContext();
            const started = () => probe.resume().then(() => { document.documentElement.dataset.audio = "running"; });
            addEventListener("click", started);
            started();
            """));
    Locator key =
        untouched.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sound"));
    assertThat(untouched.locator("#number")).hasText("43.7");
    assertThat(key).hasText("Sound is off: turn on");
    assertThat(untouched.locator("html")).not().hasAttribute("data-audio", "running");
    key.click();
    assertThat(key).hasText("Sound is on");
    assertThat(untouched.locator("html")).hasAttribute("data-audio", "running");
    untouched.context().close();
  }

  private static double beat(List<Sound> ticks) {
    return IntStream.range(1, ticks.size())
        .mapToDouble(at -> ticks.get(at).at() - ticks.get(at - 1).at())
        .average()
        .orElseThrow();
  }

  private static List<Sound> heard(Stretch... stretches) {
    return Ear.hear(rendered(USUAL, stretches));
  }

  /** Renders what the page would sound while the bench goes through these stretches, looked at every tenth of a second. */
  private static double[] rendered(Map<String, Object> settings, Stretch... stretches) {
    Object samples = page.evaluate(
        """
        async ({ settings, stretches, rate }) => {
          const { hush, makeBeats, play } = await import("/beats.js");
          const seconds = stretches.reduce((sum, each) => sum + each.seconds, 0);
          const audio = new OfflineAudioContext(1, Math.round(seconds * rate), rate);
          const beats = makeBeats();
          let played = [];
          let began = 0;
          for (const { seconds: length, ...bench } of stretches) {
            for (let at = began; at < began + length - 0.001; at += 0.1) {
              const { notes, changed } = beats.next({ ...bench, countInMillis: 0 }, at * 1000);
              if (changed) played = hush(played, at);
              played.push(...notes.map(note => play(audio, note, at, settings)));
            }
            began += length;
          }
          const samples = (await audio.startRendering()).getChannelData(0);
          const bytes = new Uint8Array(Int16Array.from(samples, each => Math.round(each * 32767)).buffer);
          let text = "";
          for (const byte of bytes) text += String.fromCharCode(byte);
          return btoa(text);
        }
        """,
        Map.of(
            "settings",
            settings,
            "stretches",
            List.of(stretches).stream().map(Stretch::asked).toList(),
            "rate",
            Ear.RATE));
    return Ear.samples((String) samples);
  }
}
