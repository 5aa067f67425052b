package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;

/**
 * How one part of a charge is to be weighed.
 *
 * @param exact its target, to the picogram
 * @param before the load on the pan before it goes in
 * @param after the load on the pan with it
 */
public record PlannedWeighing(
    Ingredient part, Mass exact, BenchScale scale, Into into, Mass before, Mass after) {

  /** The target as the scale can show it. */
  public Mass shown() {
    return scale.division().nearest(exact);
  }

  /** What showing it adds, or takes when negative. */
  public Mass rounding() {
    return shown().minus(exact);
  }

  public Tolerance tolerance() {
    return part.toleranceAt(exact);
  }

  public Fineness fineness() {
    return new Fineness(scale, exact, part.tolerance().narrowest(exact));
  }
}
