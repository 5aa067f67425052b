package candlebench.station.batch;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;

/**
 * What a candle is poured into.
 *
 * @param fill its fill weight to its line, measured with the wax in use: never an "oz" that may be a capacity
 */
public record VesselKind(String name, Mass fill, Tolerance tolerance) {

  public VesselKind {
    if (fill.compareTo(Mass.ZERO) <= 0)
      throw new IllegalArgumentException("a vessel's fill weight is above zero: " + name);
  }
}
