package candlebench.station.batch.planning;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import java.util.Optional;

/**
 * A scale that parts can be weighed on.
 *
 * @param capacity the most it carries, pot included
 * @param division its step d
 * @param accuracy the class on its plate; a scale without one has promised nothing
 * @param interval the verification interval e on its plate; d where the plate names none
 * @param repeatability the standard deviation s of at least ten weighings of one thing; zero where it was not tried
 */
public record BenchScale(
    String name,
    Mass capacity,
    Division division,
    Optional<AccuracyClass> accuracy,
    Mass interval,
    Mass repeatability) {

  /** Anything coarser is no scale (common practice, no source). */
  private static final int FEWEST_INTERVALS = 10;

  public BenchScale {
    if (name.isBlank()) throw new IllegalArgumentException("a scale needs a name of its own");
    if (interval.isLessThan(division.step()))
      throw new IllegalArgumentException(
          "the verification interval e is the division d or more: " + name);
    if (interval.times(FEWEST_INTERVALS).isMoreThan(capacity))
      throw new IllegalArgumentException(
          "a capacity is at least " + FEWEST_INTERVALS + " divisions: " + name);
    if (repeatability.isNegative())
      throw new IllegalArgumentException("a repeatability is zero or more: " + name);
  }

  boolean carries(Mass load) {
    return !load.isMoreThan(capacity);
  }

  /** How far it may be off at a load; as class III where its plate names no class. */
  Mass errorInService(Mass load) {
    return accuracy.orElse(AccuracyClass.III).errorInService(load, interval);
  }

  /** The least load that its class vouches for. */
  Optional<Mass> leastLoad() {
    return accuracy.flatMap(known -> known.leastLoad(interval, division.step()));
  }

  String words() {
    return name + " (" + capacity + " × " + division.step() + ")";
  }
}
