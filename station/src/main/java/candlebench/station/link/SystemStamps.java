package candlebench.station.link;

import candlebench.shared.Stamp;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.function.LongSupplier;

/**
 * The computer's clocks. Elapsed time counts from 1970 as the wall clock had it at the start, so that a deadline in the record still
 * means something after a restart. Wall time goes with elapsed time, and is set anew only where the computer's clock was set.
 */
public final class SystemStamps implements Stamps {

  /** Less than this the two clocks may drift apart before the wall time is taken from its own clock again. */
  static final Duration DRIFT = Duration.ofMillis(20);

  private record Anchor(Instant wall, long nanos) {
    Instant wallAt(long later) {
      return wall.plusNanos(later - nanos);
    }
  }

  private final InstantSource wall;
  private final LongSupplier elapsed;
  private final long since1970;
  private volatile Anchor anchor;

  public SystemStamps() {
    this(InstantSource.system(), System::nanoTime);
  }

  SystemStamps(InstantSource wall, LongSupplier elapsed) {
    this.wall = wall;
    this.elapsed = elapsed;
    Instant start = wall.instant();
    this.anchor = new Anchor(start, elapsed.getAsLong());
    this.since1970 = start.getEpochSecond() * 1_000_000_000L + start.getNano() - anchor.nanos();
  }

  @Override
  public Stamp now() {
    long nanos = elapsed.getAsLong();
    Instant told = wall.instant();
    Anchor known = anchor;
    Instant reckoned = known.wallAt(nanos);
    if (Duration.between(reckoned, told).abs().compareTo(DRIFT) <= 0)
      return new Stamp(reckoned, since1970 + nanos);
    anchor = new Anchor(told, nanos);
    return new Stamp(told, since1970 + nanos);
  }
}
