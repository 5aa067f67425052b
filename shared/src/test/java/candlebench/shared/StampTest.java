package candlebench.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class StampTest {
  @Test
  void a_wall_clock_that_was_set_back_changes_no_duration() {
    Stamp before = new Stamp(Instant.parse("2026-03-01T10:00:00Z"), 5_000_000_000L);
    Stamp after = new Stamp(Instant.parse("2026-03-01T09:00:00Z"), 7_000_000_000L);
    assertThat(after.since(before)).isEqualTo(Duration.ofSeconds(2));
    assertThat(before.plus(Duration.ofSeconds(2)).nanos()).isEqualTo(after.nanos());
  }
}
