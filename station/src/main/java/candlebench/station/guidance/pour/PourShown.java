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

  /** A free stream is told from a thin one by being so many times as strong. */
  private static final double FREE_TO_THIN = 2;

  /** Fewer drops than this weigh too little to be told apart on a scale by 0.1 g. */
  private static final int FEWEST_DROPS = 6;

  /** The last of the drops shows on the scale after so many seconds. */
  private static final double LAST_SHOWS = 0.9;

  static final PourShown NOTHING = new PourShown(Map.of());

  public PourShown {
    EnumMap<Of, Double> inOrder = new EnumMap<>(Of.class);
    inOrder.putAll(seen);
    seen = Collections.unmodifiableMap(inOrder);
  }

  /** What a pour that came to rest at so many grams shows, given when it was slowed, if it was, and stopped. */
  static PourShown ofEnd(Optional<Said> slow, Said stop, Habits known, double grams) {
    boolean stopSeen = stop.sure() && stop.flow() > PourWatch.LEAST_STREAM;
    double thin = stopSeen ? stop.flow() : known.thin().usual();
    PourShown shown = stopSeen
        ? NOTHING.with(Of.THIN, thin).with(Of.STOP, (grams - stop.grams()) / thin)
        : NOTHING;
    if (slow.filter(said -> said.flow() > FREE_TO_THIN * thin).isEmpty()) return shown;
    Said slowed = slow.get();
    double byThin = thin * (stop.at() - slowed.at() + known.stop().usual());
    double seconds = (grams - slowed.grams() - byThin) / (slowed.flow() - thin);
    return shown.with(Of.FREE, slowed.flow()).with(Of.SLOW, seconds);
  }

  /** What each of the drops asked for weighed, once all of them must have fallen. */
  static Optional<Double> ofDrops(Said said, double at, double grams) {
    boolean fallen = at >= said.at() + said.drops() / Expected.DROPS_A_SECOND + LAST_SHOWS;
    return said.drops() >= FEWEST_DROPS && fallen
        ? Optional.of(Math.max(0, grams - said.grams()) / said.drops())
        : Optional.empty();
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
