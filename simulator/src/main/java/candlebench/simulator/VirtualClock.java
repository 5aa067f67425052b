package candlebench.simulator;

import candlebench.shared.Stamp;
import java.time.Duration;
import java.time.Instant;

/** Time that moves only when told. Its wall time starts at a moment of its maker's choice and never jumps by itself. */
public final class VirtualClock {
  private Instant start;
  private long nanos;

  public VirtualClock(Instant start) {
    this.start = start;
  }

  /** Nanoseconds since the start of the run. */
  public long nanos() {
    return nanos;
  }

  public Stamp stamp() {
    return new Stamp(start.plusNanos(nanos), nanos);
  }

  public void advance(Duration by) {
    advanceTo(nanos + by.toNanos());
  }

  /** Moves on; throws {@link IllegalArgumentException} if that moment is past. */
  public void advanceTo(long moment) {
    if (moment < nanos)
      throw new IllegalArgumentException(
          "time does not go back: it is " + nanos + " ns, asked for " + moment + " ns");
    nanos = moment;
  }

  /** Sets the wall clock on or back, as a time server or a person does, while elapsed time goes on undisturbed. */
  public void jumpWall(Duration by) {
    start = start.plus(by);
  }
}
