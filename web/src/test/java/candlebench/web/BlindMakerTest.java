package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.shared.Stamp;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.simulator.VirtualScale;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceInput;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.view.StationView.BenchView;
import candlebench.station.view.Views;
import candlebench.web.Ear.Sound;
import com.microsoft.playwright.Page;
import java.net.InetAddress;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A maker who only hears. In virtual time a virtual scale speaks, guidance answers, the page's own sound code beats, the browser
 * renders what it beats, and the maker acts on what is heard in the samples of the last second and a bit. Nothing is seen.
 */
@Tag("browser")
class BlindMakerTest {
  private static final Instant START = Instant.parse("2026-11-25T08:00:00Z");
  private static final long STEP_NANOS = 100_000_000L;
  private static final int PATIENCE_STEPS = 1500;
  private static final int WINDOW_MILLIS = 400;
  private static final int NOT_FORESEEN = 5000;

  /** What the maker has learnt of the bench's sounds: their pitches in hertz, their beats in milliseconds. */
  private static final double TICK = 660;

  private static final double SLOW = 880;
  private static final double DROPS = 1100;
  private static final double STOP = 1320;
  private static final double FAR_BEAT = 1200;
  private static final double SLOWEST = 260;
  private static final double UNFORESEEN = 205;

  /** A shorter piece of a sound is not judged yet. */
  private static final double WHOLE_MILLIS = 30;

  /** Two sounds begin at least this far apart. */
  private static final double SAME_MILLIS = 60;

  private static final Mass POT = Mass.ofGrams("412.3");
  private static final Mass TARGET = Mass.ofGrams("56");
  private static final Mass TWICE_THE_TOLERANCE = Mass.ofGrams("1");

  private static WebServer server;
  private static PageBrowser browser;
  private static Page page;

  private final Pan pan = new Pan();
  private final ScaleFormat format = ScaleFormats.of("and");
  private final Framer framer = format.newFramer();
  private final VirtualScale scale = new VirtualScale(
      ScaleTraits.benchThreeKilograms(),
      ScaleQuirks.none(),
      format,
      format.layouts().get(0),
      pan,
      1);
  private GuidanceState state = GuidanceState.begin(BenchSetup.of(List.of(HarbourLane.OIL_ONLY)));
  private final List<Sound> sounds = new ArrayList<>();
  private long nanos;

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

  @ParameterizedTest
  @ValueSource(longs = {3, 11, 20})
  void oil_is_poured_by_ear_within_twice_the_tolerance(long seed) {
    page.evaluate(BEGIN);
    VirtualMaker maker = VirtualMaker.drawn(Slips.none(), seed);
    maker.hand("pot", POT, false);
    give(new GuidanceInput.MakerSaid(
        "c1", new MakerCommand.StartBatch(HarbourLane.OIL_ONLY.id(), 1, "Robin", Map.of()), now()));
    for (int step = 0; !bench().step().equals("DONE"); step++) {
      Perceived perceived = heard(bench());
      if (step == PATIENCE_STEPS)
        throw new AssertionError(
            "not done: hears " + perceived + " at " + bench().now());
      advance(maker, perceived);
    }
    Mass poured = pan.of("pot").minus(POT);
    assertThat(poured.minus(TARGET).abs())
        .as("poured by ear: %s", poured)
        .isLessThanOrEqualTo(TWICE_THE_TOLERANCE);
  }

  /** A tenth of a second goes by. */
  private void advance(VirtualMaker maker, Perceived perceived) {
    for (long end = nanos + STEP_NANOS; nanos < end; ) {
      nanos += STEP_NANOS / 5;
      maker.advanceTo(nanos, perceived, pan);
      pan.advanceTo(nanos);
      scale.advanceTo(nanos, this::hear);
    }
    give(new GuidanceInput.ClockTicked(now()));
  }

  private void hear(long at, byte[] sent) {
    framer.feed(sent, sent.length, new Stamp(START.plusNanos(at), at), frame -> {
      if (format.decode(frame) instanceof Decoded.Weighed weighed)
        give(new GuidanceInput.ReadingArrived(
            0,
            new Reading(
                weighed.indication(),
                weighed.indication().mass(MassUnit.GRAM),
                weighed.basis(),
                weighed.stability(),
                false,
                frame.stamp())));
    });
  }

  private void give(GuidanceInput input) {
    state = state.on(input).next();
  }

  private Stamp now() {
    return new Stamp(START.plusNanos(nanos), nanos);
  }

  private BenchView bench() {
    return Views.of(state, now());
  }

  /** What the maker makes of the sounds of the last moments; silence leaves a pot to be placed where it was asked for. */
  private Perceived heard(BenchView bench) {
    for (Sound sound : lately(bench))
      if (sounds.isEmpty() || sound.at() - sounds.get(sounds.size() - 1).at() > SAME_MILLIS)
        sounds.add(sound);
    double now = nanos / 1e6;
    if (sounds.isEmpty()) return Perceived.told(Told.PLACE);
    Sound last = sounds.get(sounds.size() - 1);
    double since = now - last.at();
    if (last.harsh()) return Perceived.told(Told.OVER);
    if (last.isAbout(TICK)) return Perceived.told(since < FAR_BEAT ? Told.POUR : Told.WAIT);
    if (last.isAbout(DROPS))
      return since < FAR_BEAT ? Perceived.drops(1) : Perceived.told(Told.WAIT);
    if (last.isAbout(STOP)) return Perceived.told(Told.STOP);
    double beat =
        sounds.size() < 2 ? since : last.at() - sounds.get(sounds.size() - 2).at();
    if (!last.isAbout(SLOW) || beat > SLOWEST || since > SLOWEST)
      return Perceived.told(Told.HOLD_STILL);
    if (beat > UNFORESEEN) return Perceived.told(Told.SLOW);
    return Perceived.stopIn(
        Told.SLOW, Duration.ofMillis(Math.round(Math.max(0, (beat - 90) / 0.06 - since))));
  }

  private List<Sound> lately(BenchView bench) {
    String samples = (String) page.evaluate(
        LISTEN,
        Map.of(
            "bench",
            Map.of(
                "cue",
                bench.cue().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                "permille",
                bench.weighing().map(weighing -> weighing.fillPermille()).orElse(0),
                "stopInMillis",
                bench.stopInMillis().map(Long::intValue).orElse(NOT_FORESEEN),
                "countInMillis",
                bench.countIn().map(running -> (int) running.remainingMillis()).orElse(0)),
            "now",
            nanos / 1e6,
            "window",
            WINDOW_MILLIS,
            "rate",
            Ear.RATE));
    double began = nanos / 1e6 - WINDOW_MILLIS;
    return Ear.hear(Ear.samples(samples)).stream()
        .filter(sound -> sound.millis() > WHOLE_MILLIS)
        .map(sound -> new Sound(
            sound.at() + began, sound.millis(), sound.pitch(), sound.peak(), sound.harsh()))
        .toList();
  }

  private static final String BEGIN =
      "async () => { const { makeBeats } = await import('/beats.js'); window.byEar = { beats: makeBeats(), given: [] }; }";

  /** Beats what is due, and renders what is to be heard of the last moments; nothing where nothing was given to be heard. */
  private static final String LISTEN = """
      async ({ bench, now, window, rate }) => {
        const { play } = await import("/beats.js");
        const { notes, changed } = byEar.beats.next(bench, now);
        const from = now - window;
        const start = ({ note, at }) => at + note.later * 1000;
        if (changed) byEar.given = byEar.given.filter(each => !each.note.beat || start(each) <= now);
        byEar.given.push(...notes.map(note => ({ note, at: now })));
        byEar.given = byEar.given.filter(each => start(each) >= from);
        if (!byEar.given.some(each => start(each) < now)) return "";
        const audio = new OfflineAudioContext(1, Math.round(window / 1000 * rate), rate);
        for (const each of byEar.given) play(audio, { ...each.note, later: 0 }, (start(each) - from) / 1000, { loudness: 60, pitch: 100 });
        const samples = (await audio.startRendering()).getChannelData(0);
        const bytes = new Uint8Array(Int16Array.from(samples, each => Math.round(each * 32767)).buffer);
        let text = "";
        for (const byte of bytes) text += String.fromCharCode(byte);
        return btoa(text);
      }
      """;
}
