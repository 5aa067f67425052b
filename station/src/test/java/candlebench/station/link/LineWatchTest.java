package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LineWatchTest {
  private static final long MS = 1_000_000;
  private final LineWatch watch = new LineWatch(0);

  @Test
  void a_line_on_which_nothing_arrives_is_silent_after_its_time() {
    assertThat(watch.at(1_200 * MS)).isEqualTo(LinkState.CONNECTING);
    assertThat(watch.at(1_201 * MS)).isEqualTo(LinkState.SILENT);
  }

  @Test
  void a_frame_understood_makes_it_live_until_its_time_is_up() {
    frame(300);
    assertThat(watch.at(300 * MS)).isEqualTo(LinkState.LIVE);
    assertThat(watch.at(1_500 * MS)).isEqualTo(LinkState.LIVE);
    assertThat(watch.at(1_501 * MS)).isEqualTo(LinkState.SILENT);
  }

  @Test
  void bytes_without_sense_are_garbled_once_they_had_their_time() {
    for (int ms = 0; ms <= 1_200; ms += 100) rubbish(ms);
    assertThat(watch.at(1_200 * MS)).isEqualTo(LinkState.CONNECTING);
    rubbish(1_300);
    assertThat(watch.at(1_300 * MS)).isEqualTo(LinkState.GARBLED);
    frame(1_400);
    assertThat(watch.at(1_400 * MS)).isEqualTo(LinkState.LIVE);
  }

  @Test
  void a_live_line_that_turns_to_rubbish_is_garbled() {
    frame(0);
    for (int ms = 100; ms <= 1_400; ms += 100) rubbish(ms);
    assertThat(watch.at(1_400 * MS)).isEqualTo(LinkState.GARBLED);
  }

  @Test
  void now_and_then_a_bad_frame_among_good_ones_is_live() {
    for (int ms = 0; ms <= 5_000; ms += 100) {
      if (ms % 300 == 0) rubbish(ms);
      else frame(ms);
      if (ms >= 100) assertThat(watch.at(ms * MS)).isEqualTo(LinkState.LIVE);
    }
  }

  @Test
  void a_lone_greeting_that_is_no_frame_is_silence_not_rubbish() {
    rubbish(100);
    assertThat(watch.at(2_000 * MS)).isEqualTo(LinkState.SILENT);
    rubbish(60_000);
    assertThat(watch.at(60_100 * MS)).isEqualTo(LinkState.SILENT);
  }

  @Test
  void a_weight_that_rubbish_makes_by_chance_is_not_believed() {
    frame(0);
    int believed = 0;
    for (int ms = 1; ms <= 5_000; ms++) {
      if (ms % 60 != 0) refused(ms);
      else if (watch.understood(ms * MS)) believed++;
    }
    assertThat(believed).isEqualTo(1);
    assertThat(watch.at(5_000 * MS)).isEqualTo(LinkState.GARBLED);
    assertThat(watch.understood(6_300 * MS)).isTrue();
    assertThat(watch.at(6_300 * MS)).isEqualTo(LinkState.LIVE);
  }

  @Test
  void a_ticket_of_many_lines_has_its_weight_believed_each_time() {
    for (int print = 0; print < 50; print++) {
      for (int line = 0; line < 25; line++) refused(print * 5_000 + line * 20);
      assertThat(watch.understood((print * 5_000 + 500) * MS)).isTrue();
    }
  }

  private void refused(long millis) {
    watch.bytes(millis * MS);
    watch.refused(millis * MS);
  }

  private void rubbish(long millis) {
    watch.bytes(millis * MS);
  }

  private void frame(long millis) {
    watch.bytes(millis * MS);
    assertThat(watch.understood(millis * MS)).isTrue();
  }
}
