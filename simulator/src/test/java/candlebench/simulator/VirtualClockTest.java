package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Stamp;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class VirtualClockTest {
  private static final Instant NINE = Instant.parse("2026-03-02T09:00:00Z");

  private final VirtualClock clock = new VirtualClock(NINE);

  @Test
  void time_moves_only_when_told_and_never_back() {
    assertThat(clock.stamp()).isEqualTo(new Stamp(NINE, 0));
    clock.advance(Duration.ofSeconds(90));
    assertThat(clock.stamp()).isEqualTo(new Stamp(NINE.plusSeconds(90), 90_000_000_000L));
    assertThatThrownBy(() -> clock.advanceTo(1)).hasMessageContaining("time does not go back");
  }

  @Test
  void a_jump_of_the_wall_clock_leaves_elapsed_time_alone() {
    clock.advance(Duration.ofSeconds(5));
    clock.jumpWall(Duration.ofHours(-1));
    assertThat(clock.nanos()).isEqualTo(5_000_000_000L);
    assertThat(clock.stamp().wall()).isEqualTo(NINE.plusSeconds(5).minusSeconds(3600));
  }
}
