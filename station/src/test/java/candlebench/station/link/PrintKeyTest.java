package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import candlebench.shared.Stamp;
import candlebench.simulator.Pan;
import candlebench.simulator.ScaleKey;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.SendMode;
import candlebench.simulator.VirtualScale;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PrintKeyTest {
  private static final Decoded AT_REST =
      new Decoded.Weighed(Indication.of("350.0", MassUnit.GRAM), Basis.NET, Stability.STABLE);

  @ParameterizedTest
  @ValueSource(strings = {"and", "sics", "sbi", "radwag", "ohaus", "nci", "cas/22"})
  void a_press_on_a_scale_that_is_asked_is_told_from_its_answers(String format) {
    AskedScale bench = new AskedScale(format, SendMode.ON_REQUEST);
    bench.putOnAndPour();
    assertThat(bench.presses).isEmpty();
    bench.rest();
    bench.scale.press(ScaleKey.PRINT);
    bench.run(2);
    assertThat(bench.presses).hasSize(1);
    bench.putOnAndPour();
    bench.rest();
    bench.scale.press(ScaleKey.PRINT);
    bench.run(1);
    assertThat(bench.presses).hasSize(2);
  }

  @ParameterizedTest
  @EnumSource(
      value = SendMode.class,
      names = {"ONCE_STABLE", "WHILE_STABLE", "CONTINUOUS"})
  void a_scale_that_prints_by_itself_is_never_taken_for_a_hand(SendMode mode) {
    AskedScale bench = new AskedScale("sics", mode);
    for (int load = 0; load < 5; load++) {
      bench.putOnAndPour();
      bench.run(4);
    }
    assertThat(bench.presses).isEmpty();
  }

  @Test
  void a_scale_that_prints_every_so_often_is_found_out_while_something_moves() {
    AskedScale bench = new AskedScale("and", SendMode.ON_REQUEST);
    bench.pan.putOn("pot", Mass.ofGrams("350"));
    bench.pan.flow(5, 0);
    for (int print = 0; print < 3; print++) {
      bench.run(3);
      bench.scale.press(ScaleKey.PRINT);
    }
    bench.pan.flow(0, 0);
    bench.run(5);
    bench.scale.press(ScaleKey.PRINT);
    bench.run(3);
    assertThat(bench.presses).isEmpty();
  }

  @Test
  void a_line_that_is_never_asked_and_bears_no_mark_tells_of_no_press() {
    PrintKey key = new PrintKey();
    for (long tenth = 0; tenth < 100; tenth++)
      assertThat(key.isPressed(AT_REST, false, tenth * 100_000_000L)).isFalse();
  }

  @Test
  void a_mark_in_the_stream_is_a_press_once_however_long_it_stands() {
    PrintKey key = new PrintKey();
    int presses = 0;
    for (long tenth = 0; tenth < 100; tenth++)
      if (key.isPressed(AT_REST, tenth >= 50 && tenth < 70, tenth * 100_000_000L)) presses++;
    assertThat(presses).isEqualTo(1);
  }

  @Test
  void the_mark_of_the_toledo_output_is_bit_three_of_its_third_status_word() {
    ScaleFormat toledo = ScaleFormats.of("toledo");
    for (boolean marked : new boolean[] {false, true}) {
      byte[] bytes = ("\u0002+0" + (marked ? ')' : '!') + "001234000000\r")
          .getBytes(java.nio.charset.StandardCharsets.US_ASCII);
      List<Boolean> marks = new ArrayList<>();
      toledo.newFramer().feed(bytes, bytes.length, new Stamp(Instant.EPOCH, 0), frame -> {
        assertThat(toledo.decode(frame)).isInstanceOf(Decoded.Weighed.class);
        marks.add(toledo.marksPrint(frame));
      });
      assertThat(marks).containsExactly(marked);
    }
  }

  @Test
  void several_lines_of_one_print_are_one_press() {
    PrintKey key = answeredFor(5);
    long at = 6_000_000_000L;
    assertThat(key.isPressed(AT_REST, false, at)).isTrue();
    assertThat(key.isPressed(AT_REST, false, at + 20_000_000)).isFalse();
    assertThat(key.isPressed(AT_REST, false, at + 40_000_000)).isFalse();
  }

  @Test
  void an_answer_that_was_late_is_no_press_and_a_lost_question_hides_the_key_for_a_while_only() {
    PrintKey key = answeredFor(5);
    key.asked();
    key.asked();
    long at = 8_000_000_000L;
    assertThat(key.isPressed(AT_REST, false, at)).isFalse();
    assertThat(key.isPressed(AT_REST, false, at + 10_000_000)).isFalse();
    key.asked();
    for (int answer = 1; answer <= 25; answer++) {
      key.asked();
      assertThat(key.isPressed(AT_REST, false, at + answer * 200_000_000L)).isFalse();
    }
    assertThat(key.isPressed(AT_REST, false, at + 6_000_000_000L)).isTrue();
  }

  /** A line whose questions were answered for so many seconds by a load at rest. */
  private static PrintKey answeredFor(int seconds) {
    PrintKey key = new PrintKey();
    key.opened();
    for (long fifth = 0; fifth < 5L * seconds; fifth++) {
      key.asked();
      assertThat(key.isPressed(AT_REST, false, fifth * 200_000_000L)).isFalse();
    }
    return key;
  }

  /** A virtual scale that is asked five times a second over a line without faults, in virtual time. */
  private static final class AskedScale {
    private final Pan pan = new Pan();
    private final VirtualScale scale;
    private final ScaleFormat format;
    private final Framer framer;
    private final Asking asking = new Asking(Optional.of(Duration.ofMillis(200)));
    private final PrintKey key = new PrintKey();
    private final List<Long> presses = new ArrayList<>();
    private long nanos;

    AskedScale(String id, SendMode mode) {
      format = ScaleFormats.of(id);
      framer = format.newFramer();
      scale = new VirtualScale(
          ScaleTraits.benchThreeKilograms().with(mode),
          ScaleQuirks.none(),
          format,
          format.layouts().get(0),
          pan,
          7);
      asking.opened();
      key.opened();
      run(3);
    }

    void putOnAndPour() {
      String pot = "pot " + nanos;
      pan.putOn(pot, Mass.ofGrams("50"));
      run(4);
      pan.flow(8, 0);
      run(4);
      pan.flow(0, 0);
      run(0.8);
    }

    /** Until the scale itself has called the load at rest for two seconds. */
    void rest() {
      double rested = 0;
      while (rested < 2) {
        run(0.1);
        rested = scale.isAtRest() ? rested + 0.1 : 0;
      }
    }

    void run(double seconds) {
      long end = nanos + Math.round(seconds * 1e9);
      while (nanos < end) {
        nanos += 20_000_000L;
        pan.advanceTo(nanos);
        scale.advanceTo(nanos, this::hear);
        if (!asking.due(nanos)) continue;
        scale.receive(format.command(ScaleCommand.SEND).orElseThrow());
        key.asked();
      }
    }

    private void hear(long at, byte[] bytes) {
      framer.feed(bytes, bytes.length, new Stamp(Instant.EPOCH.plusNanos(at), at), frame -> {
        asking.frame();
        if (key.isPressed(format.decode(frame), format.marksPrint(frame), at)) presses.add(at);
      });
    }
  }
}
