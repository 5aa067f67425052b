package candlebench.station.guidance;

import java.time.Duration;
import java.util.Optional;

/**
 * The time between "settled" and "taken", to be heard, in which a hand or a drop can still change it.
 *
 * @param fromNanos when it began; empty while it does not run
 */
record CountIn(Optional<Long> fromNanos) {
  static final CountIn NONE = new CountIn(Optional.empty());

  /** Goes on while the weight may be taken; else begins anew. */
  CountIn on(boolean mayBeTaken, long nanos) {
    if (!mayBeTaken) return NONE;
    return fromNanos.isPresent() ? this : new CountIn(Optional.of(nanos));
  }

  boolean over(Duration time, long nanos) {
    return fromNanos.filter(from -> nanos - from >= time.toNanos()).isPresent();
  }

  Optional<Prompt.Running> running(Words what, Duration time, long nanos) {
    return fromNanos.map(from ->
        new Prompt.Running(what, Math.max(0, time.toNanos() - (nanos - from)), time.toNanos()));
  }
}
