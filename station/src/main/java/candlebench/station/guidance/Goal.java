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
 * @param container the own weight of the pot or vessel it goes into
 * @param base all that stood on the pan, container included, before it
 * @param target the exact net weight wanted
 */
public record Goal(
    Place place,
    String name,
    int scale,
    Mass container,
    Mass base,
    Mass target,
    Tolerance tolerance,
    Way way,
    PourKind kind) {

  /** Less than this on the pan, and the container is not on it. */
  Mass gone() {
    return container.times(1, 2);
  }
}
