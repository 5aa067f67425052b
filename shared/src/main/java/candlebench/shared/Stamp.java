package candlebench.shared;

import java.time.Duration;
import java.time.Instant;

/**
 * When something arrived: wall time for the record, elapsed nanoseconds for durations. Made only at the shell's edge.
 *
 * @param wall wall-clock time; may jump
 * @param nanos nanoseconds since some fixed moment of this run; never goes back
 */
public record Stamp(Instant wall, long nanos) {

  /** The time from an earlier stamp to this one, by the clock that does not jump. */
  public Duration since(Stamp earlier) {
    return Duration.ofNanos(nanos - earlier.nanos);
  }

  /** The stamp that lies so long after this one. */
  public Stamp plus(Duration later) {
    return new Stamp(wall.plus(later), nanos + later.toNanos());
  }
}
