package candlebench.station.batch;

import candlebench.shared.Mass;
import java.util.Map;
import java.util.Optional;

/**
 * A way on after an over-pour, with what it costs.
 *
 * @param more what is to be added of each part already in the pot, by its number
 * @param takeOut what is to be taken out
 * @param total what the batch will weigh in the end
 * @param surplus how much that is above the plan; negative when below
 * @param reached the share of the part that was poured over, in its own basis, as it will be in the end
 * @param whyNot why it is not possible now, if it is not
 */
public record Remedy(
    Kind kind,
    Map<Integer, Mass> more,
    Mass takeOut,
    Mass total,
    Mass surplus,
    Fraction reached,
    Optional<WhyNot> whyNot) {

  public Remedy {
    more = Map.copyOf(more);
  }

  /** The ways. Adding wax is the trade's own cure, and works only where the weights poured are known. */
  public enum Kind {
    KEEP,
    ADD_MORE,
    TAKE_BACK,
    SPLIT_OFF,
    SCRAP
  }

  /** Why a way is closed. */
  public enum WhyNot {
    /** The load would be above the most that supplier and tests allow. */
    OVER_LIMIT,
    POT_TOO_SMALL,
    SCALE_TOO_SMALL,
    /** It lies on other parts in the pot and cannot be told from them. */
    ALREADY_IN_POT,
    /** Nothing to add would change it. */
    NOTHING_TO_ADD,
    /** What is in the pot cannot be mixed evenly first. */
    NOT_MIXED
  }
}
