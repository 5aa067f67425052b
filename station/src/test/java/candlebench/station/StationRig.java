package candlebench.station;

import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Stamp;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.journal.CrashPoints;
import candlebench.station.journal.Journal;
import candlebench.station.journal.JournalFailed;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScriptedLine;
import candlebench.station.view.StationView;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** A whole station on scripted wires, in time that moves only when told: each frame is dealt with before the next is sent. */
final class StationRig implements AutoCloseable {
  private static final Instant MORNING = Instant.parse("2026-11-25T08:00:00Z");
  private static final Duration DEADLINE = Duration.ofSeconds(20);

  final List<ScriptedLine> wires = new ArrayList<>();
  final StationConfig config;
  private volatile Stamp now;
  private Runnable tick = () -> {};
  private Station station;
  private int commands;

  StationRig(Journal journal, int scales, CrashPoints crashPoints, Stamp start)
      throws JournalFailed {
    this(journal, scales, crashPoints, start, Optional.empty());
  }

  private StationRig(
      Journal journal, int scales, CrashPoints crashPoints, Stamp start, Optional<Duration> ask)
      throws JournalFailed {
    now = start;
    List<ScaleSettings> settings = new ArrayList<>();
    for (int i = 0; i < scales; i++) {
      wires.add(new ScriptedLine());
      settings.add(new ScaleSettings(
          wires.get(i),
          ScaleFormats.of("and"),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          ask));
    }
    config =
        StationConfig.of(journal.purpose(), settings, HarbourLane.all(), ZoneOffset.ofHours(1));
    station = Station.start(
        config,
        journal,
        () -> now,
        ticking -> {
          tick = ticking;
          return () -> {};
        },
        crashPoints);
    wires.forEach(ScriptedLine::plugIn);
  }

  static StationRig on(Journal journal) throws JournalFailed {
    return new StationRig(journal, 1, CrashPoints.NONE, new Stamp(MORNING, 1_000_000_000_000L));
  }

  /** A bench whose scale is asked ten times a second. */
  static StationRig asking(Journal journal) throws JournalFailed {
    return new StationRig(
        journal,
        1,
        CrashPoints.NONE,
        new Stamp(MORNING, 1_000_000_000_000L),
        Optional.of(Duration.ofMillis(100)));
  }

  static StationRig on(Journal journal, CrashPoints crashPoints) throws JournalFailed {
    return new StationRig(journal, 1, crashPoints, new Stamp(MORNING, 1_000_000_000_000L));
  }

  /** The bench restarted some time later on the same record. */
  static StationRig later(StationRig before, Journal journal) throws JournalFailed {
    return new StationRig(journal, 1, CrashPoints.NONE, before.now.plus(Duration.ofSeconds(5)));
  }

  Station station() {
    return station;
  }

  StationView view() {
    return station.view();
  }

  Stamp now() {
    return now;
  }

  Bench.Answer say(MakerCommand command) {
    return station.say("c" + now.nanos() + "-" + ++commands, command);
  }

  Bench.Answer startOil() {
    return say(new MakerCommand.StartBatch("harbour-lane-oil", 1, "Robin", Map.of()));
  }

  void pass(Duration time) {
    now = now.plus(time);
  }

  /** So many frames of a weight at rest, ten to the second, with a tick after each. */
  void show(String grams, int frames) {
    for (int i = 0; i < frames; i++) show("ST", grams);
  }

  /** A load that moves by so much with each frame, until it comes to rest. */
  void pour(double from, double to, double step) {
    for (double grams = from; grams < to; grams += step)
      show("US", String.format(Locale.ROOT, "%.1f", grams));
    show(String.format(Locale.ROOT, "%.1f", to), 1);
  }

  static String frame(String grams) {
    return frame("ST", grams);
  }

  private void show(String rest, String grams) {
    pass(Duration.ofMillis(100));
    send(frame(rest, grams));
    tick();
  }

  private static String frame(String rest, String grams) {
    return String.format(Locale.ROOT, "%s,%+09.2f  g\r\n", rest, Double.parseDouble(grams));
  }

  /** Sends a frame; whoever ticks afterwards knows that it was dealt with. */
  void send(String frame) {
    wires.get(0).send(frame);
    try {
      wires.get(0).awaitAllRead();
    } catch (InterruptedException ended) {
      throw new AssertionError(ended);
    }
  }

  /** Lets the bench know of the time and waits until that and all before it has been dealt with. */
  void tick() {
    long before = station.trace().ticks();
    tick.run();
    try {
      long end = System.nanoTime() + DEADLINE.toNanos();
      while (!station.trace().awaitTickAfter(before, 1_000)) {
        if (System.nanoTime() > end) throw new AssertionError("the bench does not answer a tick");
        // A tick that finds the mailbox full is left out, and the next one comes in a moment.
        tick.run();
      }
    } catch (InterruptedException ended) {
      throw new AssertionError(ended);
    }
  }

  void await(Predicate<StationView> condition) {
    Semaphore newer = new Semaphore(0);
    long end = System.nanoTime() + DEADLINE.toNanos();
    try (Bench.Watch watching = station.watch(newer::release)) {
      while (!condition.test(station.view())) {
        if (System.nanoTime() > end)
          throw new AssertionError(
              "waited in vain with " + watching + "; the view is " + station.view());
        newer.tryAcquire(100, TimeUnit.MILLISECONDS);
      }
    } catch (InterruptedException ended) {
      throw new AssertionError(ended);
    }
  }

  String trace() {
    StringBuilder dump = new StringBuilder();
    try {
      station.trace().dump(dump);
    } catch (IOException impossible) {
      throw new AssertionError(impossible);
    }
    return dump.toString();
  }

  @Override
  public void close() {
    station.close();
  }
}
