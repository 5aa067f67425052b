package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.protocol.Refusal;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Stamp;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class ScaleLinkTest {
  private static final String FRAME = "ST,+00012.34  g\r\n";
  private static final Instant MORNING = Instant.parse("2026-11-25T08:00:00Z");

  private final ScriptedLine wire = new ScriptedLine();
  private final BlockingQueue<String> heard = new LinkedBlockingQueue<>();
  private final AtomicLong millis = new AtomicLong();
  private ScaleLink link;

  @AfterEach
  void close() {
    link.close();
  }

  @Test
  void frames_are_heard_in_order_however_they_are_cut() throws Exception {
    start(Optional.empty());
    wire.plugIn();
    wire.send("ST,+0001");
    wire.send("2.34  g\r\nUS,-00000.10  g\r\nST");
    wire.send(",+00000.00  g\r\n");
    assertHeard("LIVE", "12.34 STABLE", "-0.10 UNSTABLE", "0.00 STABLE");
    assertThat(link.counters().frames()).isEqualTo(3);
    assertThat(link.counters().bytes()).isEqualTo(ScriptedLine.TAIL.length() + 3 * FRAME.length());
  }

  @Test
  void the_tail_of_a_frame_is_never_taken_for_a_weight() throws Exception {
    start("ohaus", Optional.empty());
    wire.plugInBetweenFrames();
    wire.send("   50.5 g\r\n");
    wire.send("   250.5 g\r\n");
    assertHeard("LIVE", "250.5 STABLE");
    assertThat(link.counters().passedOver()).isEqualTo(1);
    wire.unplug();
    assertHeard("LOST");
    wire.plugInBetweenFrames();
    wire.send("   50.5 g\r\n");
    wire.send("   251.5 g\r\n");
    assertHeard("LIVE", "251.5 STABLE");
  }

  @Test
  void what_comes_after_a_silence_begins_with_a_frame() throws Exception {
    start("ohaus", Optional.empty());
    wire.plugInBetweenFrames();
    wire.silence();
    at(300);
    wire.silence();
    wire.send("   250.5 g\r\n");
    assertHeard("LIVE", "250.5 STABLE");
  }

  @Test
  void a_silence_within_a_frame_makes_no_weight_of_its_tail() throws Exception {
    start("ohaus", Optional.empty());
    wire.plugIn();
    wire.send("   250.5 g\r\n   2");
    assertHeard("LIVE", "250.5 STABLE");
    at(400);
    wire.silence();
    assertHeard("refused CUT_SHORT");
    at(800);
    wire.silence();
    wire.send("50.7 g\r\n   250.9 g\r\n");
    assertHeard("250.9 STABLE");
    assertThat(heard).isEmpty();
  }

  @Test
  void an_answer_that_ends_in_cr_alone_is_heard_after_a_pause_and_then_at_once() throws Exception {
    start(Optional.of(Duration.ofMillis(200)));
    wire.plugInBetweenFrames();
    wire.silence();
    assertThat(wire.written.poll(10, TimeUnit.SECONDS)).isEqualTo("Q\r\n");
    at(300);
    wire.silence();
    wire.send("ST,+00012.34  g\r");
    at(600);
    wire.silence();
    assertHeard("LIVE", "12.34 STABLE @600");
    assertThat(wire.written.poll(10, TimeUnit.SECONDS)).isEqualTo("Q\r\n");
    at(620);
    wire.send("ST,+00012.36  g\r");
    assertHeard("12.36 STABLE @620");
  }

  @Test
  void a_frame_bears_the_time_of_its_last_byte() throws Exception {
    start(Optional.empty());
    wire.plugIn();
    wire.send("ST,+0001");
    wire.silence();
    at(70);
    wire.send("2.34  g\r\n");
    heard.poll(10, TimeUnit.SECONDS);
    assertThat(heard.poll(10, TimeUnit.SECONDS)).endsWith("@70");
  }

  @Test
  void an_unplugged_scale_is_said_lost_and_is_live_again_by_itself() throws Exception {
    start(Optional.empty());
    wire.plugIn();
    wire.send(FRAME);
    assertHeard("LIVE", "12.34 STABLE");
    wire.unplug();
    assertHeard("LOST");
    wire.refuse(LinkReport.of(LinkState.LOST));
    wire.refuse(LinkReport.of(LinkState.LOST));
    wire.plugIn();
    wire.send(FRAME);
    assertHeard("LIVE", "12.34 STABLE");
    assertThat(link.counters().openings()).isEqualTo(2);
    assertThat(wire.events).containsExactly("open", "close", "open", "open", "open");
  }

  @Test
  void pauses_between_attempts_grow_and_never_pass_a_second() {
    link = link("and", Optional.empty());
    Duration pause = Duration.ofMillis(100);
    Duration sum = Duration.ZERO;
    for (int attempt = 0; attempt < 20; attempt++) {
      sum = sum.plus(pause);
      pause = ScaleLink.longer(pause);
      assertThat(pause).isBetween(Duration.ofMillis(200), Duration.ofSeconds(1));
    }
    assertThat(sum).isGreaterThan(Duration.ofSeconds(15));
  }

  @Test
  void an_attempt_that_fails_at_once_is_not_followed_at_once_by_the_next() throws Exception {
    for (int i = 0; i < 5; i++) wire.refuse(LinkReport.of(LinkState.LOST));
    long before = System.nanoTime();
    start(Optional.empty());
    for (int i = 0; i < 5; i++)
      assertThat(wire.events.poll(10, TimeUnit.SECONDS)).isEqualTo("open");
    assertThat(System.nanoTime() - before)
        .isGreaterThan(TimeUnit.MILLISECONDS.toNanos(100 + 200 + 400 + 800));
    wire.plugIn();
  }

  @Test
  void a_scale_that_keeps_hanging_up_is_not_called_at_once_again_and_again() throws Exception {
    for (int i = 0; i < 4; i++) {
      wire.plugIn();
      wire.unplug();
    }
    long before = System.nanoTime();
    start(Optional.empty());
    for (int i = 0; i < 7; i++)
      assertThat(wire.events.poll(10, TimeUnit.SECONDS)).isEqualTo(i % 2 == 0 ? "open" : "close");
    assertThat(System.nanoTime() - before)
        .isGreaterThan(TimeUnit.MILLISECONDS.toNanos(100 + 200 + 400));
  }

  @Test
  void held_denied_and_telnet_are_told_apart_with_their_words() throws Exception {
    LinkReport denied =
        new LinkReport(LinkState.DENIED, Map.of("device", "/dev/ttyUSB0", "group", "dialout"));
    wire.refuse(LinkReport.of(LinkState.HELD));
    wire.refuse(denied);
    wire.refuse(LinkReport.of(LinkState.TELNET));
    start(Optional.empty());
    assertHeard("HELD", "DENIED dialout", "TELNET");
    wire.plugIn();
    wire.send(FRAME);
    assertHeard("LIVE", "12.34 STABLE");
  }

  @Test
  void silence_is_said_once_and_a_silent_scale_is_asked() throws Exception {
    start(Optional.empty());
    wire.plugIn();
    wire.silence();
    at(1_300);
    wire.silence();
    assertHeard("SILENT");
    assertThat(wire.written.poll(10, TimeUnit.SECONDS)).isEqualTo("Q\r\n");
    at(2_000);
    wire.silence();
    at(2_310);
    wire.silence();
    assertThat(wire.written.poll(10, TimeUnit.SECONDS)).isEqualTo("Q\r\n");
    at(2_350);
    wire.send(FRAME);
    assertHeard("LIVE", "12.34 STABLE");
    assertThat(wire.written).isEmpty();
  }

  @Test
  void a_scale_whose_settings_say_so_is_asked_from_the_start() throws Exception {
    start(Optional.of(Duration.ofMillis(200)));
    wire.plugIn();
    wire.silence();
    assertThat(wire.written.poll(10, TimeUnit.SECONDS)).isEqualTo("Q\r\n");
  }

  @Test
  void rubbish_is_said_to_be_garbled_and_counted_by_its_reason() throws Exception {
    start(Optional.empty());
    wire.plugIn();
    for (int ms = 0; ms <= 1_300; ms += 100) {
      at(ms);
      wire.send("XX,+0001A.34  g\r\n");
      assertThat(next()).startsWith("refused");
    }
    assertHeard("GARBLED");
    assertThat(link.counters().refused()).isEqualTo(14);
    assertThat(link.counters().refusedByReason().values().stream()
            .mapToLong(Long::longValue)
            .sum())
        .isEqualTo(14);
    assertThat(link.counters().frames()).isZero();
    wire.send(FRAME);
    assertHeard("LIVE", "12.34 STABLE");
  }

  @Test
  void what_was_left_of_a_frame_when_the_wire_went_is_counted_not_dropped() throws Exception {
    start(Optional.empty());
    wire.plugIn();
    wire.send(FRAME + "ST,+000");
    wire.unplug();
    assertHeard("LIVE", "12.34 STABLE");
    assertThat(next()).startsWith("refused");
    assertHeard("LOST");
    wire.plugIn();
    wire.send(FRAME);
    assertHeard("LIVE", "12.34 STABLE");
  }

  @Test
  void an_error_of_ours_is_a_scale_lost_and_looked_for_again() throws Exception {
    AtomicBoolean failed = new AtomicBoolean();
    link = link("and", Optional.empty(), () -> {
      if (!failed.getAndSet(true)) throw new IllegalStateException("made for this test");
      return wire.open();
    });
    link.start();
    assertHeard("LOST");
    wire.plugIn();
    wire.send(FRAME);
    assertHeard("LIVE", "12.34 STABLE");
  }

  @Test
  void closing_frees_the_wire_and_ends_the_thread() throws Exception {
    start(Optional.empty());
    wire.plugIn();
    wire.send(FRAME);
    assertHeard("LIVE", "12.34 STABLE");
    link.close();
    assertThat(wire.events).contains("open", "close");
    assertThat(heard).isEmpty();
    assertThat(Thread.getAllStackTraces().keySet())
        .noneMatch(thread -> thread.getName().equals("scale-7"));
  }

  private void start(Optional<Duration> ask) {
    start("and", ask);
  }

  private void start(String format, Optional<Duration> ask) {
    link = link(format, ask);
    link.start();
  }

  private ScaleLink link(String format, Optional<Duration> ask) {
    return link(format, ask, wire);
  }

  private ScaleLink link(String format, Optional<Duration> ask, Line line) {
    return new ScaleLink(
        7,
        new ScaleSettings(
            line,
            ScaleFormats.of(format),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            ask),
        new Ear(),
        this::stamp);
  }

  private Stamp stamp() {
    return new Stamp(MORNING, TimeUnit.MILLISECONDS.toNanos(millis.get()));
  }

  /** Moves the clock; pieces already sent must have been read, so that they bear the time before. */
  private void at(long ms) throws InterruptedException {
    wire.awaitAllRead();
    millis.set(ms);
  }

  private String next() throws InterruptedException {
    String next = heard.poll(10, TimeUnit.SECONDS);
    assertThat(next).isNotNull();
    return next;
  }

  private void assertHeard(String... expected) throws InterruptedException {
    for (String each : expected) assertThat(next()).startsWith(each);
  }

  private final class Ear implements LinkListener {
    @Override
    public void heard(int scale, Frame frame, Decoded decoded) {
      assertThat(scale).isEqualTo(7);
      heard.add(
          words(decoded) + " @" + TimeUnit.NANOSECONDS.toMillis(frame.stamp().nanos()));
    }

    @Override
    public void printKeyPressed(int scale, Stamp stamp) {}

    @Override
    public void changed(int scale, LinkReport report, Stamp stamp) {
      heard.add(report.state() + " " + report.with().getOrDefault("group", ""));
    }

    private String words(Decoded decoded) {
      if (decoded instanceof Decoded.Weighed weighed)
        return weighed.indication().number() + " " + weighed.stability();
      if (decoded instanceof Decoded.Refused refused) return "refused " + reason(refused.refusal());
      return decoded.toString();
    }

    private Refusal.Reason reason(Refusal refusal) {
      return refusal.reason();
    }
  }
}
