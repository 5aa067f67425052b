package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.util.List;
import java.util.Optional;

/**
 * The accuracy classes of scales, with their limits as multiples of the verification interval <i>e</i>.
 *
 * <p>Source: OIML R 76-1:2006 (EN 45501:2015), Table 3 (intervals, Min), Table 6 (errors at verification) and 3.5.2 (in service: twice
 * those). Some countries allow class IIII up to 1 200 intervals.
 */
public enum AccuracyClass {
  I(50_000, 200_000, new Kind("0.001", "1000000", 50_000, Long.MAX_VALUE, 100)),
  II(
      5_000,
      20_000,
      new Kind("0.001", "0.05", 100, 100_000, 20),
      new Kind("0.1", "1000000", 5_000, 100_000, 50)),
  III(500, 2_000, new Kind("0.1", "2", 100, 10_000, 20), new Kind("5", "1000000", 500, 10_000, 20)),
  IIII(50, 200, new Kind("5", "1000000", 100, 1_000, 10));

  /** Intervals between two sizes, how many of them a scale has, and the least load in intervals. */
  private record Kind(String fromGrams, String toGrams, long fewest, long most, int leastLoad) {

    boolean takes(Mass interval) {
      return !interval.isLessThan(Mass.ofGrams(fromGrams))
          && !interval.isMoreThan(Mass.ofGrams(toGrams));
    }
  }

  private final long smallErrorTo;
  private final long middleErrorTo;
  private final List<Kind> kinds;

  AccuracyClass(long smallErrorTo, long middleErrorTo, Kind... kinds) {
    this.smallErrorTo = smallErrorTo;
    this.middleErrorTo = middleErrorTo;
    this.kinds = List.of(kinds);
  }

  /** How far a scale in use may be off at a load: 1, 2 or 3 intervals; the end of a band belongs to the smaller error. */
  public Mass errorInService(Mass load, Mass interval) {
    if (!exceeds(load, smallErrorTo, interval)) return interval;
    return interval.times(exceeds(load, middleErrorTo, interval) ? 3 : 2);
  }

  private static boolean exceeds(Mass load, long intervals, Mass interval) {
    return (load.picograms() - 1) / interval.picograms() >= intervals;
  }

  /** How far a scale may be off when it is verified: half as much. */
  Mass errorAtVerification(Mass load, Mass interval) {
    return errorInService(load, interval).times(1, 2);
  }

  /** The least load (Min) of a scale with this interval; counted in divisions where an auxiliary device shows finer ones. */
  Optional<Mass> leastLoad(Mass interval, Mass division) {
    Mass counted = division.isLessThan(interval) ? division : interval;
    return kind(interval).map(kind -> counted.times(kind.leastLoad()));
  }

  /**
   * What speaks against a scale of this capacity, interval and division being of this class. A division finer than the interval is an
   * auxiliary indicating device, which only classes I and II have (Directive 2014/31/EU, Annex I).
   */
  Optional<String> fault(Mass capacity, Mass interval, Mass division) {
    if (division.isLessThan(interval) && this != I && this != II)
      return Optional.of("class " + this + " has no division finer than its interval, and d = "
          + division + " is finer than e = " + interval);
    Optional<Kind> kind = kind(interval);
    if (kind.isEmpty()) return Optional.of("class " + this + " has no interval e = " + interval);
    long intervals = capacity.picograms() / interval.picograms();
    if (intervals < kind.get().fewest() || intervals > kind.get().most())
      return Optional.of(
          "class " + this + " with e = " + interval + " has " + kind.get().fewest()
              + (kind.get().most() == Long.MAX_VALUE
                  ? " intervals or more"
                  : " to " + kind.get().most() + " intervals")
              + ", not " + intervals);
    return Optional.empty();
  }

  private Optional<Kind> kind(Mass interval) {
    return kinds.stream().filter(kind -> kind.takes(interval)).findFirst();
  }
}
