package candlebench.station.guidance.pour;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Tolerance;
import candlebench.station.guidance.pour.PourCue.Kind;
import candlebench.station.guidance.pour.PourShown.Of;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One pour in even steps, through a scale by 0.1 g with a filter of a third of a second; the hand does what the test says. */
class PourWatchTest {
  private static final long STEP = 100_000_000L;
  private static final double FILTER_KEEPS = Math.exp(-0.1 / 0.33);

  private double poured;
  private double felt;
  private long nanos;
  private PourWatch watch = watch("56", "0.5", PourKind.OIL);
  private final List<Kind> said = new ArrayList<>();

  private static PourWatch watch(String target, String tolerance, PourKind kind) {
    return PourWatch.begin(
        kind,
        Mass.ofGrams(target),
        Tolerance.ofGrams(tolerance, tolerance),
        Division.ofDecimals(1, MassUnit.GRAM),
        Habits.unlearnt(kind),
        0,
        Mass.ofGrams("0"));
  }

  private void pour(double gramsPerSecond) {
    nanos += STEP;
    poured += gramsPerSecond * 0.1;
    felt = poured + (felt - poured) * FILTER_KEEPS;
    watch = watch.seen(nanos, shown(felt));
    Kind kind = cue().kind();
    if (said.isEmpty() || said.get(said.size() - 1) != kind) said.add(kind);
  }

  private static Mass shown(double grams) {
    return Mass.ofGrams(String.format(java.util.Locale.ROOT, "%.1f", grams));
  }

  private PourCue cue() {
    return watch.cue(nanos);
  }

  private void pourUntil(Kind kind, double gramsPerSecond) {
    for (int i = 0; i < 1000 && cue().kind() != kind; i++) pour(gramsPerSecond);
    assertThat(cue().kind()).isEqualTo(kind);
  }

  private void goOnFor(double seconds, double gramsPerSecond) {
    for (int i = 0; i < seconds * 10; i++) pour(gramsPerSecond);
  }

  private void pourUntilStopIsNearerThan(long left) {
    for (int i = 0; i < 1000 && (cue().stopInNanos() < 0 || cue().stopInNanos() > left); i++)
      pour(1.0);
    assertThat(cue().stopInNanos()).isBetween(0L, left);
  }

  @Test
  void an_unknown_maker_who_is_slow_at_both_ends_stays_under_the_limit() {
    pourUntil(Kind.SLOW, 8);
    goOnFor(1.2, 8);
    pourUntil(Kind.STOP, 1.2);
    goOnFor(1.2, 1.2);
    goOnFor(4, 0);
    assertThat(poured).isLessThan(56.5);
    assertThat(said).containsSubsequence(Kind.POUR, Kind.SLOW, Kind.STOP).doesNotContain((Kind)
        null);
  }

  @Test
  void the_stop_is_counted_down_to_and_comes_when_it_was_foreseen() {
    pourUntil(Kind.SLOW, 8);
    goOnFor(0.8, 8);
    pourUntilStopIsNearerThan(2_000_000_000L);
    long foreseen = nanos + cue().stopInNanos();
    pourUntil(Kind.STOP, 1.0);
    assertThat(Math.abs(nanos - foreseen)).isLessThan(400_000_000L);
  }

  @Test
  void who_times_the_stop_and_turns_back_early_is_not_told_to_go_on() {
    pourUntil(Kind.SLOW, 8);
    goOnFor(0.8, 8);
    pourUntilStopIsNearerThan(500_000_000L);
    goOnFor(1, 0);
    assertThat(cue().kind()).isEqualTo(Kind.STOP);
  }

  @Test
  void between_two_readings_the_foreseen_moment_comes_too() {
    pourUntil(Kind.SLOW, 8);
    goOnFor(0.8, 8);
    pourUntilStopIsNearerThan(600_000_000L);
    assertThat(cue().kind()).isEqualTo(Kind.SLOW);
    assertThat(watch.cue(nanos + 700_000_000L).kind()).isEqualTo(Kind.STOP);
  }

  @Test
  void a_burst_of_readings_that_were_held_up_is_no_flood() {
    goOnFor(2, 8);
    double before = poured;
    for (int i = 0; i < 8; i++) {
      poured += 0.8;
      felt = poured + (felt - poured) * FILTER_KEEPS;
      nanos += i == 0 ? 800_000_000L : 2_000_000L;
      watch = watch.seen(nanos, shown(felt));
    }
    assertThat(poured - before).isLessThan(8);
    assertThat(cue().kind()).isEqualTo(Kind.POUR);
  }

  @Test
  void a_gram_missing_is_asked_for_by_drops_with_the_number_to_go_or_by_a_short_stream() {
    pourUntil(Kind.SLOW, 8);
    goOnFor(0.8, 8);
    for (int i = 0; i < 600 && poured < 55.4; i++) pour(1.0);
    goOnFor(4, 0);
    assertThat(cue().kind()).isEqualTo(Kind.DROPS);
    double missing = 56 - poured;
    assertThat(cue().drops() * 0.033).isBetween(missing - 0.12, missing + 0.12);
  }

  @Test
  void at_the_target_it_says_hold_still_and_is_done() {
    pourUntil(Kind.SLOW, 8);
    goOnFor(0.8, 8);
    for (int i = 0; i < 600 && poured < 56; i++) pour(1.0);
    goOnFor(4, 0);
    assertThat(cue().kind()).isEqualTo(Kind.HOLD_STILL);
    assertThat(watch.isDone()).isTrue();
  }

  @Test
  void where_the_pour_really_ended_shows_how_long_the_hand_took() {
    pourUntil(Kind.SLOW, 8);
    goOnFor(0.8, 8);
    pourUntil(Kind.STOP, 1.0);
    goOnFor(0.5, 1.0);
    goOnFor(4, 0);
    assertThat(watch.shown().of(Of.STOP).orElseThrow()).isBetween(0.6, 1.1);
    assertThat(watch.shown().of(Of.SLOW).orElseThrow()).isBetween(0.8, 1.5);
    assertThat(watch.shown().of(Of.THIN).orElseThrow()).isBetween(0.8, 1.2);
  }

  @Test
  void a_vessel_is_stopped_short_of_its_limit_and_not_topped_up_by_drops() {
    watch = watch("340", "4", PourKind.VESSEL);
    pourUntil(Kind.SLOW, 17);
    goOnFor(0.8, 17);
    pourUntil(Kind.STOP, 3.5);
    goOnFor(0.6, 3.5);
    goOnFor(4, 0);
    assertThat(poured).isBetween(335.0, 344.0);
    assertThat(said).doesNotContain(Kind.DROPS);
  }
}
