package candlebench.station.guidance;

import candlebench.shared.Mass;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether what stands on a pan was put there, or grew there. A pot or vessel that was zeroed away by the scale's own key looks like an
 * empty pan; what is then poured into it must not be taken for a container.
 *
 * @param clearSeen whether the pan was seen clear
 * @param recent the last half second, oldest first
 * @param biggestRise the most it rose within that time since it was clear
 * @param clearSince since when it is clear, while it is
 * @param heaviest the most that stood there since
 * @param below whether less than nothing stood there since it was last at rest and clear: its zero lies elsewhere, and was not found
 */
record Placement(
    boolean clearSeen,
    List<Point> recent,
    Mass biggestRise,
    Optional<Long> clearSince,
    Mass heaviest,
    boolean below) {
  static final Placement UNKNOWN =
      new Placement(false, List.of(), Mass.ZERO, Optional.empty(), Mass.ZERO, false);

  /** Known to have been put there. */
  static final Placement PUT =
      new Placement(true, List.of(), Mass.ofGrams("1000000"), Optional.empty(), Mass.ZERO, false);

  private static final long WAITED = 15_000_000_000L;
  private static final long LOOK_BACK = 500_000_000L;

  /** What is put down arrives at once, but for the scale's own filter; a pour of 30 g/s brings 15 g in that time. */
  private static final long LEAST_SHARE = 4;

  /** No draught reaches it; a spoon that lay there when the zero was found leaves more. */
  private static final Mass BELOW = Mass.ofGrams("-2");

  record Point(long nanos, Mass load) {}

  Placement seen(long nanos, Mass load, Mass lightest) {
    List<Point> kept = new ArrayList<>(recent);
    while (kept.size() > 1 && nanos - kept.get(1).nanos() >= LOOK_BACK) kept.remove(0);
    boolean clear = load.isLessThan(lightest);
    Mass rise = kept.isEmpty() ? Mass.ZERO : load.minus(kept.get(0).load());
    kept.add(new Point(nanos, load));
    Mass most = load.isMoreThan(heaviest) ? load : heaviest;
    if (clear)
      return new Placement(
          true,
          List.copyOf(kept),
          Mass.ZERO,
          Optional.of(clearSince.orElse(nanos)),
          most,
          below || load.isLessThan(BELOW));
    return new Placement(
        clearSeen,
        List.copyOf(kept),
        rise.isMoreThan(biggestRise) ? rise : biggestRise,
        Optional.empty(),
        most,
        below);
  }

  /** Seen at rest and clear: its zero is known. */
  Placement clear() {
    return new Placement(clearSeen, recent, biggestRise, clearSince, heaviest, false);
  }

  /** After so long with nothing on it, a maker who has put something there is told why it cannot be seen. */
  Optional<Words> thereAlready(long nanos) {
    return clearSince
        .filter(since -> nanos - since >= WAITED)
        .map(since -> Words.of("detail.there-already"));
  }

  /** Whether something so heavy stood there and is gone, though quick hands left no time for the number to fall to nothing. */
  boolean isGone(Mass thing, Mass load) {
    return heaviest.minus(load).isMoreThan(thing);
  }

  /** Whether it was seen to grow. */
  boolean grew(Mass load) {
    return clearSeen && biggestRise.times(LEAST_SHARE).isLessThan(load);
  }
}
