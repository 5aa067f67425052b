package candlebench.station.batch;

import java.util.List;
import java.util.Optional;

/** What a maker can start: a recipe, or what makes one once it is known how many vessels are to be filled. */
public interface Product {

  /** Short and lasting, such as {@code harbour-lane}. */
  String id();

  String name();

  /** How so many vessels are made; 1 to {@link BatchPlan#MOST_VESSELS}. A tolerance may be a share of a target that depends on them. */
  Recipe forVessels(int vessels);

  /** How so many vessels are shared among pots, in order; empty where one pot, whichever it is, takes them all. */
  default List<PotShare> shares(int vessels) {
    return List.of();
  }

  /** Between which temperatures its wax is worked; none where nobody said. */
  default List<ProcessWindows> windows() {
    return List.of();
  }

  /** Why so many cannot be made, and what to do instead; empty where nothing speaks against it. */
  Optional<String> refusal(int vessels);
}
