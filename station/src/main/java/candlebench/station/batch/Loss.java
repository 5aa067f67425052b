package candlebench.station.batch;

import candlebench.shared.Mass;

/**
 * What stays behind: a film in each pot, and a little at each vessel. A percentage is wrong at both ends, for the film hardly
 * depends on the size of the batch (common practice, no source).
 */
public record Loss(Mass perPot, Mass perVessel) {
  public static final Loss NONE = new Loss(Mass.ZERO, Mass.ZERO);

  public Loss {
    if (perPot.isNegative() || perVessel.isNegative())
      throw new IllegalArgumentException("a loss is zero or more");
  }

  public Mass of(int vessels) {
    return perPot.plus(perVessel.times(vessels));
  }
}
