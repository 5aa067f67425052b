package candlebench.station.guidance.pour;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** What one pour showed of its maker's habits, each where it could be seen. */
public record PourShown(Map<Of, Double> seen) {

  /** What can be seen of a pour. */
  public enum Of {
    /** Seconds for which the free stream still counted in full after "slow". */
    SLOW,
    /** The same of the thin stream after "stop". */
    STOP,
    /** The thin stream, in grams a second. */
    THIN,
    /** The free stream, in grams a second. */
    FREE,
    /** One drop, in grams. */
    DROP
  }

  static final PourShown NOTHING = new PourShown(Map.of());

  public PourShown {
    EnumMap<Of, Double> inOrder = new EnumMap<>(Of.class);
    inOrder.putAll(seen);
    seen = Collections.unmodifiableMap(inOrder);
  }

  PourShown with(Of what, double value) {
    EnumMap<Of, Double> more = new EnumMap<>(Of.class);
    more.putAll(seen);
    more.put(what, value);
    return new PourShown(more);
  }

  Optional<Double> of(Of what) {
    return Optional.ofNullable(seen.get(what));
  }

  public boolean isNothing() {
    return seen.isEmpty();
  }
}
