package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.util.Optional;

/**
 * What a charge is mixed in, or a cup that a part is weighed in and tipped from.
 *
 * @param empty its own weight
 * @param room how much it should hold, where that is known
 */
public record Pot(String name, Mass empty, Optional<Fill> room) {

  public Pot {
    if (name.isBlank()) throw new IllegalArgumentException("a pot needs a name of its own");
    if (empty.compareTo(Mass.ZERO) <= 0)
      throw new IllegalArgumentException("an empty pot weighs more than nothing: " + name);
  }

  boolean holds(Mass contents) {
    return room.filter(most -> contents.isMoreThan(most.mass())).isEmpty();
  }
}
