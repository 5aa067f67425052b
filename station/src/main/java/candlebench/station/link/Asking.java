package candlebench.station.link;

import java.time.Duration;
import java.util.Optional;

/**
 * Decides when a scale is asked for its weight: at the rate of its settings, or by itself where none comes unasked; never again before
 * it answered or a second has passed. Pure: time comes with every call.
 */
final class Asking {

  /** How often a scale is asked whose settings do not say: five times a second, as often as most such scales weigh anew. */
  static final Duration UNLESS_SET = Duration.ofMillis(200);

  /** How long an answer is waited for. */
  static final Duration ANSWER = Duration.ofSeconds(1);

  private final Optional<Duration> set;
  private boolean needed;
  private boolean waiting;
  private long asked;
  private boolean everAsked;

  Asking(Optional<Duration> set) {
    this.set = set;
  }

  /** The line was opened anew. */
  void opened() {
    needed = set.isPresent();
    waiting = false;
    everAsked = false;
  }

  /** Nothing arrives: a scale that does not send by itself has to be asked. */
  void silent() {
    needed = true;
  }

  /** A frame arrived: the answer, or one that nobody asked for, which shows that the scale sends by itself. */
  void frame() {
    if (!waiting) needed = set.isPresent();
    waiting = false;
  }

  /** Whether to ask now; if so, it counts as asked. */
  boolean due(long nanos) {
    if (!needed) return false;
    Duration pause = waiting ? ANSWER : set.orElse(UNLESS_SET);
    if (everAsked && nanos - asked < pause.toNanos()) return false;
    everAsked = true;
    waiting = true;
    asked = nanos;
    return true;
  }
}
