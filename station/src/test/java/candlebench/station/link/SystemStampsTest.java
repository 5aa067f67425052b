package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Stamp;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class SystemStampsTest {
  private static final Instant MORNING = Instant.parse("2026-11-25T08:00:00Z");
  private static final long MS = 1_000_000;

  private Instant wall = MORNING;
  private long elapsed = 5_000;
  private final SystemStamps stamps = new SystemStamps(() -> wall, () -> elapsed);

  @Test
  void elapsed_time_counts_from_1970_so_that_it_goes_on_after_a_restart() {
    assertThat(stamps.now().nanos()).isEqualTo(MORNING.toEpochMilli() * MS);
    wall = MORNING.plus(Duration.ofHours(1));
    elapsed = 77;
    Stamp afterRestart = new SystemStamps(() -> wall, () -> elapsed).now();
    assertThat(afterRestart.since(new Stamp(MORNING, MORNING.toEpochMilli() * MS)))
        .isEqualTo(Duration.ofHours(1));
  }

  @Test
  void wall_time_goes_with_elapsed_time_through_a_little_drift() {
    pass(Duration.ofSeconds(10), Duration.ofSeconds(10).plusMillis(20));
    assertThat(stamps.now().wall()).isEqualTo(MORNING.plusSeconds(10));
    pass(Duration.ZERO, Duration.ofMillis(1));
    assertThat(stamps.now().wall()).isEqualTo(MORNING.plusMillis(10_021));
  }

  @Test
  void a_clock_that_is_set_moves_the_wall_time_and_no_duration() {
    Stamp before = stamps.now();
    pass(Duration.ofSeconds(1), Duration.ofHours(-1));
    Stamp after = stamps.now();
    assertThat(after.wall()).isEqualTo(MORNING.minus(Duration.ofHours(1)));
    assertThat(after.since(before)).isEqualTo(Duration.ofSeconds(1));
  }

  private void pass(Duration time, Duration onTheWall) {
    elapsed += time.toNanos();
    wall = wall.plus(onTheWall);
  }
}
