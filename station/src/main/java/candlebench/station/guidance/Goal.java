package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Way;
import candlebench.station.guidance.pour.PourKind;

/**
 * What is to be weighed now, as it follows from the plan and from what is recorded.
 *
 * @param place which part or vessel
 * @param name how the maker calls it
 * @param container the own weight of the pot or vessel it goes into; of a bottle, half of what stays there
 * @param base all that stood on the pan, container included, before it
 * @param direction whether it goes in, or is taken out
 * @param target the exact net weight wanted
 */
public record Goal(
    Place place,
    String name,
    int scale,
    Mass container,
    Mass base,
    Direction direction,
    Mass target,
    Tolerance tolerance,
    Way way,
    PourKind kind) {

  public enum Direction {
    IN,
    OUT
  }

  /** What was put in or taken out so far, when so much stands on the pan. */
  public Mass net(Mass load) {
    return direction == Direction.IN ? load.minus(base) : base.minus(load);
  }

  /** What stands on the pan, when so much was put in or taken out. */
  Mass load(Mass net) {
    return direction == Direction.IN ? base.plus(net) : base.minus(net);
  }

  /** Less than this on the pan, and the container is not on it. */
  Mass gone() {
    return isFromBottle() ? container : container.times(1, 2);
  }

  /** Whether it goes into a cup first. */
  boolean isInCup() {
    return way == Way.IN_CUP;
  }

  /** Whether it is weighed by what its bottle loses. */
  boolean isFromBottle() {
    return way == Way.FROM_BOTTLE;
  }

  boolean isVessel() {
    return place.kind() == Place.Kind.VESSEL;
  }

  boolean byPieces() {
    return way == Way.BY_PIECES;
  }
}
