package candlebench.station.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AskingTest {
  private static final long MS = 1_000_000;

  @Test
  void a_scale_is_asked_at_the_rate_of_its_settings_once_it_answered() {
    Asking asking = opened(Optional.of(Duration.ofMillis(500)));
    assertThat(asking.due(0)).isTrue();
    asking.frame();
    assertThat(asking.due(499 * MS)).isFalse();
    assertThat(asking.due(500 * MS)).isTrue();
  }

  @Test
  void it_is_never_asked_again_before_it_answered_or_a_second_passed() {
    Asking asking = opened(Optional.of(Duration.ofMillis(100)));
    assertThat(asking.due(0)).isTrue();
    assertThat(asking.due(900 * MS)).isFalse();
    assertThat(asking.due(1_000 * MS)).isTrue();
    asking.frame();
    assertThat(asking.due(1_100 * MS)).isTrue();
  }

  @Test
  void a_scale_that_sends_by_itself_is_not_asked() {
    Asking asking = opened(Optional.empty());
    assertThat(asking.due(0)).isFalse();
    asking.frame();
    assertThat(asking.due(10_000 * MS)).isFalse();
  }

  @Test
  void a_silent_scale_is_asked_until_it_sends_by_itself() {
    Asking asking = opened(Optional.empty());
    asking.silent();
    assertThat(asking.due(1_200 * MS)).isTrue();
    asking.frame();
    assertThat(asking.due(1_300 * MS)).isFalse();
    assertThat(asking.due(1_400 * MS)).isTrue();
    asking.frame();
    asking.frame();
    assertThat(asking.due(9_000 * MS)).isFalse();
  }

  @Test
  void what_was_asked_on_a_line_that_is_gone_is_forgotten() {
    Asking asking = opened(Optional.of(Duration.ofMillis(100)));
    assertThat(asking.due(0)).isTrue();
    asking.opened();
    assertThat(asking.due(10 * MS)).isTrue();
  }

  private static Asking opened(Optional<Duration> set) {
    Asking asking = new Asking(set);
    asking.opened();
    return asking;
  }
}
