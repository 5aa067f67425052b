package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.protocol.LineSettings;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class VirtualLineTest {
  private static final byte[] FRAME = "ST,+00056.0  g\r\n".getBytes(StandardCharsets.US_ASCII);
  private static final int FRAMES = 2000;

  private record Arrived(long nanos, byte[] bytes) {}

  @Test
  void a_good_line_carries_every_frame_as_it_is_and_when_it_is_sent() {
    List<Arrived> arrived = through(new VirtualLine(LineFaults.none(), 1));
    assertThat(arrived).hasSize(FRAMES);
    for (int i = 0; i < FRAMES; i++) {
      assertThat(arrived.get(i).bytes()).isEqualTo(FRAME);
      assertThat(arrived.get(i).nanos()).isEqualTo(sentAt(i));
    }
  }

  @Test
  void cuts_lose_no_byte_and_keep_their_order() {
    List<Arrived> arrived = through(new VirtualLine(LineFaults.none().withCuts(1), 2));
    assertThat(arrived.size()).isGreaterThan(2 * FRAMES);
    assertThat(joined(arrived)).isEqualTo(allSent());
    assertThat(arrived).extracting(Arrived::nanos).isSorted();
  }

  @Test
  void delays_hold_frames_back_without_overtaking_or_loss() {
    List<Arrived> arrived =
        through(new VirtualLine(LineFaults.none().withDelays(0.1, Duration.ofMillis(900)), 3));
    assertThat(joined(arrived)).isEqualTo(allSent());
    assertThat(arrived).extracting(Arrived::nanos).isSorted();
    long late = 0;
    for (int i = 0; i < FRAMES; i++) if (arrived.get(i).nanos() > sentAt(i)) late++;
    assertThat(late).isGreaterThan(FRAMES / 10);
  }

  @Test
  void losses_drops_and_flips_come_as_often_as_asked() {
    assertThat(
            through(new VirtualLine(LineFaults.none().withLosses(0.2), 4)).size() / (double) FRAMES)
        .isCloseTo(0.8, within(0.04));
    byte[] dropped = joined(through(new VirtualLine(LineFaults.none().withDroppedBytes(0.05), 5)));
    assertThat(dropped.length / (double) (FRAMES * FRAME.length)).isCloseTo(0.95, within(0.01));
    byte[] flipped = joined(through(new VirtualLine(LineFaults.none().withFlippedBits(0.05), 6)));
    byte[] sent = allSent();
    int bits = 0;
    for (int i = 0; i < sent.length; i++) bits += Integer.bitCount((flipped[i] ^ sent[i]) & 0xFF);
    assertThat(bits / (double) sent.length).isCloseTo(0.05, within(0.01));
  }

  @Test
  void rubbish_comes_before_frames_and_leaves_them_whole() {
    List<Arrived> arrived = through(new VirtualLine(LineFaults.none().withRubbish(0.5), 7));
    assertThat(arrived).allSatisfy(each -> assertThat(each.bytes()).endsWith(FRAME));
    assertThat(
            arrived.stream().filter(each -> each.bytes().length > FRAME.length).count()
                / (double) FRAMES)
        .isCloseTo(0.5, within(0.05));
  }

  @Test
  void a_pulled_plug_loses_what_is_under_way_and_what_is_sent_until_it_is_back() {
    VirtualLine line = new VirtualLine(LineFaults.none(), 8);
    List<Arrived> arrived = new ArrayList<>();
    line.bytes(10, FRAME);
    line.unplug();
    line.bytes(20, FRAME);
    line.replug();
    line.bytes(30, FRAME);
    line.deliver(100, (nanos, bytes) -> arrived.add(new Arrived(nanos, bytes)));
    assertThat(arrived).extracting(Arrived::nanos).containsExactly(30L);
  }

  @Test
  void a_receiver_set_otherwise_hears_something_else_until_it_listens_rightly() {
    LineSettings seven = LineSettings.of("2400-7E1");
    VirtualLine line = new VirtualLine(LineFaults.none(), seven, LineSettings.of("9600-8N1"), 9);
    List<Arrived> arrived = new ArrayList<>();
    line.bytes(10, FRAME);
    line.listenAs(seven);
    line.bytes(20, FRAME);
    line.deliver(100, (nanos, bytes) -> arrived.add(new Arrived(nanos, bytes)));
    assertThat(arrived.get(0).bytes()).isNotEqualTo(FRAME);
    assertThat(arrived.get(1).bytes()).isEqualTo(FRAME);
  }

  @Test
  void the_same_seed_damages_the_same_bytes() {
    LineFaults faults = new LineFaults(0.3, 0.05, 0.02, 0.02, 0.1, 0.1, Duration.ofMillis(400));
    byte[] first = joined(through(new VirtualLine(faults, 10)));
    assertThat(joined(through(new VirtualLine(faults, 10)))).isEqualTo(first);
    assertThat(joined(through(new VirtualLine(faults, 11)))).isNotEqualTo(first);
  }

  private static List<Arrived> through(VirtualLine line) {
    List<Arrived> arrived = new ArrayList<>();
    for (int i = 0; i < FRAMES; i++) {
      line.bytes(sentAt(i), FRAME);
      line.deliver(sentAt(i), (nanos, bytes) -> arrived.add(new Arrived(nanos, bytes)));
    }
    line.deliver(Long.MAX_VALUE, (nanos, bytes) -> arrived.add(new Arrived(nanos, bytes)));
    return arrived;
  }

  private static long sentAt(int frame) {
    return (frame + 1) * 100_000_000L;
  }

  private static byte[] allSent() {
    ByteArrayOutputStream sent = new ByteArrayOutputStream();
    for (int i = 0; i < FRAMES; i++) sent.writeBytes(FRAME);
    return sent.toByteArray();
  }

  private static byte[] joined(List<Arrived> arrived) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    arrived.forEach(each -> all.writeBytes(each.bytes()));
    return all.toByteArray();
  }
}
