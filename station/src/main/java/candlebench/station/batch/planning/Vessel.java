package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.util.Optional;

/**
 * A kind of vessel, as a plan file states it.
 *
 * @param empty its own weight, where that is known
 * @param spread how far a single one may lie off that; each is tared by itself, so this only tells how surely one is recognised
 */
public record Vessel(
    String name, Fill fill, Allowance tolerance, Optional<Mass> empty, Mass spread) {

  /** More in one candle, or less, is surely a slip of the finger (common practice, no source). */
  static final Mass MOST = Mass.ofGrams("5000");

  static final Mass LEAST = Mass.ofGrams("0.1");

  public Vessel {
    if (name.isBlank()) throw new IllegalArgumentException("a kind of vessel needs a name");
    if (fill.mass().isLessThan(LEAST) || fill.mass().isMoreThan(MOST))
      throw new IllegalArgumentException(
          "a fill weight is between " + LEAST + " and " + MOST + ", not " + fill.mass());
    if (tolerance.allowsNothing())
      throw new IllegalArgumentException("a tolerance of nothing cannot be poured");
    if (spread.isNegative()) throw new IllegalArgumentException("a spread is zero or more");
  }

  /** The load on the pan once it is full. */
  Mass full() {
    return empty.orElse(Mass.ZERO).plus(spread).plus(fill.mass());
  }
}
