package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.LineSettings;
import candlebench.shared.Basis;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.simulator.Rig.Heard;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class VirtualScaleTest {
  private static final ScaleTraits BENCH = ScaleTraits.benchThreeKilograms();
  private static final ScaleTraits QUIET =
      BENCH.with(BENCH.cell().withNoise(0.005).withBypass(0).withoutDrift());

  private final Rig rig = new Rig(QUIET, ScaleQuirks.none(), 1);

  @Test
  void an_empty_pan_reads_zero_at_rest_ten_times_a_second() {
    List<Heard> readings = rig.during("10");
    assertThat(readings).hasSize(99);
    assertThat(readings).allSatisfy(reading -> assertThat(reading.number()).isEqualTo("0.0"));
    assertThat(readings.subList(10, 99))
        .allSatisfy(reading -> assertThat(reading.isStable()).isTrue());
  }

  @Test
  void a_pot_put_on_is_followed_through_the_filter_and_called_at_rest_only_when_it_is() {
    rig.runFor("2");
    rig.pan.putOn("pot", Mass.ofGrams("450"));
    List<Heard> readings = rig.during("6");
    assertThat(readings.get(2).grams()).as("still rising").isBetween(100.0, 440.0);
    assertThat(readings.get(2).isStable()).isFalse();
    assertThat(readings.subList(1, readings.size()))
        .filteredOn(Heard::isStable)
        .isNotEmpty()
        .allSatisfy(reading -> assertThat(reading.grams()).isCloseTo(450, within(0.11)));
    assertThat(rig.last().number()).isEqualTo("450.0");
  }

  @Test
  void a_steady_pour_is_shown_late_by_the_time_constant_of_the_filter() {
    rig.pan.putOn("pot", Mass.ofGrams("450"));
    rig.runFor("6");
    rig.pan.flow(5, 0);
    rig.runFor("4");
    double late = (rig.pan.truth().roughGrams() - rig.last().grams()) / 5;
    assertThat(late)
        .as("seconds: the filter, and up to a tenth since the last frame")
        .isBetween(0.34, 0.50);
    assertThat(rig.last().isStable()).isFalse();
  }

  @Test
  void a_large_step_passes_the_filter_quickly_where_the_scale_lets_it() {
    Rig quick = new Rig(QUIET.with(QUIET.cell().withBypass(1.8)), ScaleQuirks.none(), 1);
    for (Rig each : List.of(rig, quick)) {
      each.runFor("1");
      each.pan.putOn("pot", Mass.ofGrams("450"));
      each.runFor("0.5");
    }
    assertThat(quick.last().grams()).isGreaterThan(447);
    assertThat(rig.last().grams()).isLessThan(400);
  }

  @Test
  void tare_by_command_and_by_key_leave_the_pot_out_whatever_line_end_the_host_uses() {
    for (String command : List.of("T\r\n", "T\r", "T\n")) {
      Rig other = new Rig(QUIET, ScaleQuirks.none(), 2);
      other.pan.putOn("pot", Mass.ofGrams("450"));
      other.runFor("6");
      other.send(command);
      other.runFor("1");
      assertThat(other.last().number())
          .as(command.replace("\r", "CR").replace("\n", "LF"))
          .isEqualTo("0.0");
    }
    rig.pan.putOn("pot", Mass.ofGrams("450"));
    rig.runFor("6");
    rig.scale.press(ScaleKey.TARE);
    rig.pan.add(Mass.ofGrams("56"));
    rig.runFor("6");
    assertThat(rig.last().number()).isEqualTo("56.0");
    rig.pan.liftOff("pot");
    rig.runFor("6");
    assertThat(rig.last().number()).isEqualTo("-450.0");
  }

  @Test
  void tare_waits_for_rest_unless_the_scale_tares_at_once() {
    Rig hasty = new Rig(QUIET, ScaleQuirks.of(ScaleQuirks.Quirk.TARES_AT_ONCE), 3);
    for (Rig each : List.of(rig, hasty)) {
      each.runFor("1");
      each.pan.putOn("pot", Mass.ofGrams("450"));
      each.runFor("0.3");
      each.scale.press(ScaleKey.TARE);
      each.runFor("8");
    }
    assertThat(rig.last().number()).isEqualTo("0.0");
    assertThat(hasty.last().grams()).as("tared on the way up").isGreaterThan(20);
  }

  @Test
  void the_zero_key_works_near_zero_and_beyond_it_only_where_it_tares() {
    rig.pan.putOn("crumb", Mass.ofGrams("20"));
    rig.runFor("5");
    rig.scale.press(ScaleKey.ZERO);
    rig.runFor("1");
    assertThat(rig.last().number()).isEqualTo("0.0");
    rig.pan.putOn("pot", Mass.ofGrams("450"));
    rig.runFor("5");
    rig.scale.press(ScaleKey.ZERO);
    rig.runFor("1");
    assertThat(rig.last().number()).isEqualTo("450.0");

    Rig taring = new Rig(QUIET, ScaleQuirks.of(ScaleQuirks.Quirk.ZERO_KEY_TARES), 4);
    taring.pan.putOn("pot", Mass.ofGrams("450"));
    taring.runFor("5");
    taring.scale.press(ScaleKey.ZERO);
    taring.runFor("1");
    assertThat(taring.last().number()).isEqualTo("0.0");
  }

  @Test
  void the_unit_key_changes_unit_and_digits_from_the_next_frame() {
    rig.pan.putOn("pot", Mass.ofGrams("450"));
    rig.runFor("5");
    rig.scale.press(ScaleKey.UNIT);
    rig.runFor("1");
    assertThat(rig.last().weighed().indication().toString()).isEqualTo("15.875 oz");
    assertThat(rig.last().weighed().indication().unit()).contains(MassUnit.OUNCE);
  }

  @Test
  void above_capacity_and_nine_steps_it_shows_no_weight_and_tare_adds_no_room() {
    rig.pan.putOn("pot", Mass.ofGrams("3000.7"));
    rig.runFor("8");
    assertThat(rig.last().grams()).isCloseTo(3000.7, within(0.15));
    rig.scale.press(ScaleKey.TARE);
    rig.runFor("1");
    rig.pan.add(Mass.ofGrams("1"));
    rig.runFor("5");
    assertThat(rig.last().decoded()).isEqualTo(new OutOfRange(Side.OVER, Basis.UNSTATED));
    assertThat(rig.scale.display()).isEmpty();
  }

  @Test
  void lifting_what_stood_there_at_power_on_is_below_the_range() {
    rig.pan.putOn("pot", Mass.ofGrams("450"));
    rig.scale.press(ScaleKey.ON_OFF);
    rig.runFor("3");
    rig.scale.press(ScaleKey.ON_OFF);
    rig.runFor("4");
    assertThat(rig.last().number()).as("the pot has become the zero").isEqualTo("0.0");
    rig.pan.liftOff("pot");
    rig.runFor("5");
    assertThat(rig.last().decoded()).isEqualTo(new OutOfRange(Side.UNDER, Basis.UNSTATED));
  }

  @Test
  void a_scale_that_switches_off_falls_silent_after_its_steady_minutes_and_forgets_tare_and_zero() {
    Rig sleepy = new Rig(
        QUIET.withSwitchingOffAfter(java.time.Duration.ofMinutes(2)),
        ScaleQuirks.of(ScaleQuirks.Quirk.SWITCHES_OFF),
        5);
    sleepy.pan.putOn("pot", Mass.ofGrams("450"));
    sleepy.runFor("5");
    sleepy.scale.press(ScaleKey.TARE);
    sleepy.runFor("110");
    assertThat(sleepy.scale.isOn()).isTrue();
    sleepy.runFor("20");
    assertThat(sleepy.scale.isOn()).isFalse();
    assertThat(sleepy.during("60")).isEmpty();
    sleepy.pan.add(Mass.ofGrams("56"));
    sleepy.scale.press(ScaleKey.ON_OFF);
    assertThat(sleepy.during("1.9")).isEmpty();
    sleepy.runFor("3");
    assertThat(sleepy.last().number()).as("pot and oil are the new zero").isEqualTo("0.0");
  }

  @Test
  void a_scale_that_keeps_its_zero_shows_the_load_when_switched_on_again() {
    Rig keeping = new Rig(QUIET, ScaleQuirks.of(ScaleQuirks.Quirk.KEEPS_ZERO_WHEN_OFF), 6);
    keeping.scale.press(ScaleKey.ON_OFF);
    keeping.pan.putOn("pot", Mass.ofGrams("450"));
    keeping.scale.press(ScaleKey.ON_OFF);
    keeping.runFor("6");
    assertThat(keeping.last().number()).isEqualTo("450.0");
  }

  @Test
  void on_request_it_answers_and_only_then_and_a_stable_request_waits_for_rest() {
    Rig asked = new Rig(QUIET.with(SendMode.ON_REQUEST), ScaleQuirks.none(), 7);
    assertThat(asked.during("5")).isEmpty();
    asked.send("Q\r\n");
    assertThat(asked.during("1")).hasSize(1);
    asked.pan.putOn("pot", Mass.ofGrams("450"));
    asked.runFor("0.2");
    asked.send("S\r\n");
    assertThat(asked.during("0.5")).isEmpty();
    List<Heard> answer = asked.during("6");
    assertThat(answer).hasSize(1);
    assertThat(answer.get(0).grams()).isCloseTo(450, within(0.11));
    asked.send("SIR\r\n");
    assertThat(asked.during("2")).hasSizeBetween(19, 20);
    asked.send("C\r\n");
    assertThat(asked.during("2")).hasSizeLessThan(2);
    asked.send("HELLO\r\n");
    assertThat(asked.scale.commandsNotUnderstood()).isEqualTo(1);
  }

  @Test
  void set_to_send_once_at_rest_it_sends_one_frame_for_each_load() {
    Rig printer = new Rig(QUIET.with(SendMode.ONCE_STABLE), ScaleQuirks.none(), 8);
    printer.runFor("3");
    printer.pan.putOn("pot", Mass.ofGrams("450"));
    assertThat(printer.during("20")).extracting(Heard::number).containsExactly("450.0");
    printer.pan.add(Mass.ofGrams("56"));
    List<Heard> second = printer.during("20");
    assertThat(second).hasSize(1);
    assertThat(second.get(0).grams()).isCloseTo(506, within(0.11));
  }

  @Test
  void on_the_print_key_it_sends_what_it_shows_at_rest_or_not() {
    Rig keyed = new Rig(QUIET.with(SendMode.ON_PRINT_KEY), ScaleQuirks.none(), 9);
    assertThat(keyed.during("3")).isEmpty();
    keyed.scale.press(ScaleKey.PRINT);
    assertThat(keyed.during("1")).hasSize(1);
  }

  @Test
  void while_it_moves_a_scale_set_to_send_at_rest_says_nothing() {
    Rig resting = new Rig(QUIET.with(SendMode.WHILE_STABLE), ScaleQuirks.none(), 10);
    resting.runFor("3");
    resting.pan.flow(5, 0);
    resting.runFor("1");
    assertThat(resting.during("5")).isEmpty();
    resting.pan.flow(0, 0);
    assertThat(resting.during("5"))
        .isNotEmpty()
        .allSatisfy(reading -> assertThat(reading.isStable()).isTrue());
  }

  @Test
  void repeated_conversions_come_in_runs_of_three_or_four_while_the_pan_moves() {
    Rig repeating = new Rig(QUIET, ScaleQuirks.of(ScaleQuirks.Quirk.REPEATS_CONVERSIONS), 11);
    repeating.runFor("2");
    repeating.pan.flow(5, 0);
    repeating.runFor("1");
    List<Integer> runs = runs(repeating.during("30"));
    assertThat(runs.subList(1, runs.size() - 1)).containsOnly(3, 4);
  }

  @Test
  void the_flag_may_lie_deny_or_be_late_and_flicker() {
    assertThat(restFrames(ScaleQuirks.Quirk.ALWAYS_SAYS_STABLE, "during the pour"))
        .isEqualTo(1.0);
    assertThat(restFrames(ScaleQuirks.Quirk.NEVER_SAYS_STABLE, "at rest")).isZero();
    assertThat(restFrames(ScaleQuirks.Quirk.FLAG_LATE_AND_FLICKERING, "just at rest"))
        .isZero();
    assertThat(restFrames(ScaleQuirks.Quirk.FLAG_LATE_AND_FLICKERING, "at rest"))
        .isBetween(0.90, 0.995);
  }

  @Test
  void zero_tracking_draws_a_slow_drift_at_zero_in_but_no_load() {
    Rig tracking = new Rig(QUIET, ScaleQuirks.of(ScaleQuirks.Quirk.TRACKS_ZERO), 12);
    tracking.pan.flow(0.02, 0);
    tracking.runFor("30");
    assertThat(tracking.last().number()).as("0.6 g of dust in half a minute").isEqualTo("0.0");
    tracking.pan.flow(0, 0);
    tracking.pan.putOn("pot", Mass.ofGrams("450"));
    tracking.runFor("60");
    assertThat(tracking.last().number()).isEqualTo("450.0");

    rig.pan.flow(0.02, 0);
    rig.runFor("30");
    assertThat(rig.last().grams()).isCloseTo(0.6, within(0.11));
  }

  @Test
  void a_tared_zero_that_is_tracked_eats_a_first_trickle_and_an_honest_one_does_not() {
    Rig eating = new Rig(QUIET, ScaleQuirks.of(ScaleQuirks.Quirk.TRACKS_TARED_ZERO), 13);
    for (Rig each : List.of(eating, rig)) {
      each.pan.putOn("pot", Mass.ofGrams("450"));
      each.runFor("5");
      each.scale.press(ScaleKey.TARE);
      for (int drop = 0; drop < 30; drop++) {
        each.pan.add(Mass.ofGrams("0.03"));
        each.runFor("1.5");
      }
    }
    assertThat(eating.last().number()).isEqualTo("0.0");
    assertThat(rig.last().grams()).isCloseTo(0.9, within(0.11));
  }

  @Test
  void a_slow_line_holds_the_next_frame_back() {
    Rig slow = new Rig(QUIET.with(LineSettings.of("600-7E1")), ScaleQuirks.none(), 14);
    List<Heard> readings = slow.during("20");
    assertThat(readings.size())
        .as("17 characters of 10 bits at 600 baud take 0.28 s")
        .isBetween(60, 70);
  }

  @Test
  void a_link_delays_every_frame_and_uneven_arrival_has_gaps_and_bursts_but_loses_nothing() {
    Rig delayed =
        new Rig(QUIET.withLinkDelay(java.time.Duration.ofMillis(300)), ScaleQuirks.none(), 15);
    assertThat(delayed.during("0.4")).isEmpty();
    assertThat(delayed.during("0.1")).hasSize(1);

    Rig uneven = new Rig(QUIET, ScaleQuirks.of(ScaleQuirks.Quirk.ARRIVES_UNEVENLY), 16);
    List<Heard> readings = uneven.during("600");
    assertThat(readings.size()).isBetween(5990, 6000);
    assertThat(readings).extracting(Heard::nanos).isSorted();
  }

  @Test
  void a_deaf_scale_obeys_no_command_but_its_keys() {
    Rig deaf = new Rig(QUIET, ScaleQuirks.of(ScaleQuirks.Quirk.DEAF), 17);
    deaf.pan.putOn("pot", Mass.ofGrams("450"));
    deaf.runFor("5");
    deaf.send("T\r\n");
    deaf.runFor("2");
    assertThat(deaf.last().number()).isEqualTo("450.0");
    deaf.scale.press(ScaleKey.TARE);
    deaf.runFor("2");
    assertThat(deaf.last().number()).isEqualTo("0.0");
  }

  @Test
  void the_same_seed_and_the_same_hands_give_the_same_bytes_however_time_is_cut() {
    ScaleQuirks odd = ScaleQuirks.of(
        ScaleQuirks.Quirk.ARRIVES_UNEVENLY,
        ScaleQuirks.Quirk.REPEATS_CONVERSIONS,
        ScaleQuirks.Quirk.FLAG_LATE_AND_FLICKERING);
    Rig once = new Rig(BENCH, odd, 18);
    Rig again = new Rig(BENCH, odd, 18);
    Rig otherSeed = new Rig(BENCH, odd, 19);
    for (Rig each : List.of(once, again, otherSeed)) each.pan.flow(0.7, 0.1);
    once.runFor("30");
    otherSeed.runFor("30");
    for (int step = 0; step < 3000; step++) again.runFor("0.01");
    assertThat(again.heard).isEqualTo(once.heard);
    assertThat(otherSeed.heard).isNotEqualTo(once.heard);
  }

  private double restFrames(ScaleQuirks.Quirk quirk, String when) {
    Rig flagged = new Rig(QUIET, ScaleQuirks.of(quirk), 20);
    flagged.pan.putOn("pot", Mass.ofGrams("450"));
    flagged.pan.flow(5, 0);
    List<Heard> pouring = flagged.during("5");
    flagged.pan.flow(0, 0);
    flagged.runFor("2.5");
    List<Heard> justAtRest = flagged.during("1");
    flagged.runFor("4");
    List<Heard> atRest = flagged.during("200");
    List<Heard> looked = switch (when) {
      case "during the pour" -> pouring;
      case "just at rest" -> justAtRest;
      default -> atRest;
    };
    return looked.stream().filter(Heard::isStable).count() / (double) looked.size();
  }

  private static List<Integer> runs(List<Heard> readings) {
    List<Integer> runs = new ArrayList<>();
    Decoded before = readings.get(0).decoded();
    int length = 0;
    for (Heard reading : readings) {
      if (!reading.number().equals(((Decoded.Weighed) before).indication().number())) {
        runs.add(length);
        length = 0;
        before = reading.decoded();
      }
      length++;
    }
    return runs;
  }
}
