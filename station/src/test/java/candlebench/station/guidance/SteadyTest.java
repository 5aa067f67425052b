package candlebench.station.guidance;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Basis;
import candlebench.shared.Division;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.shared.Stability;
import candlebench.shared.Stamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A load between two steps of the scale: which of the numbers that it shows by turns is taken. */
class SteadyTest {
  private static final Instant START = Instant.parse("2026-11-25T08:00:00Z");

  @Test
  void what_was_shown_most_is_taken_though_the_newest_number_is_another() {
    assertThat(taken(250, "933.5", "933.5", "933.5", "933.4", "933.5", "933.4")).isEqualTo("933.5");
    assertThat(taken(250, "933.4", "933.4", "933.5", "933.4", "933.4", "933.5")).isEqualTo("933.4");
  }

  @Test
  void between_two_numbers_shown_as_often_the_one_seen_longer_is_taken() {
    List<Reading> readings = new ArrayList<>();
    readings.add(reading(0, "10.4"));
    readings.add(reading(700, "10.5"));
    readings.add(reading(900, "10.4"));
    readings.add(reading(1500, "10.5"));
    assertThat(taken(readings)).isEqualTo("10.4");
  }

  @Test
  void what_was_shown_more_than_three_seconds_ago_does_not_count() {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 20; i++) readings.add(reading(250 * i, "10.5"));
    for (int i = 20; i < 28; i++) readings.add(reading(250 * i, "10.4"));
    assertThat(taken(readings)).isEqualTo("10.4");
  }

  @Test
  void after_a_late_drop_only_what_was_shown_since_counts() {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 8; i++) readings.add(reading(250 * i, "10.4"));
    for (int i = 8; i < 13; i++) readings.add(reading(250 * i, "10.5"));
    assertThat(taken(readings)).isEqualTo("10.5");
  }

  private static String taken(int everyMillis, String... shown) {
    List<Reading> readings = new ArrayList<>();
    for (String number : shown) readings.add(reading(everyMillis * readings.size(), number));
    return taken(readings);
  }

  private static String taken(List<Reading> readings) {
    Division tenth = Division.ofDecimals(1, MassUnit.GRAM);
    Steady run = Steady.from(readings.get(0));
    for (Reading reading : readings.subList(1, readings.size())) run = run.and(reading, tenth);
    return run.middle().indication().number();
  }

  private static Reading reading(long millis, String number) {
    Indication shown = Indication.of(number, MassUnit.GRAM);
    return new Reading(
        shown,
        shown.mass(MassUnit.GRAM),
        Basis.GROSS,
        Stability.STABLE,
        false,
        new Stamp(START.plusMillis(millis), millis * 1_000_000));
  }
}
