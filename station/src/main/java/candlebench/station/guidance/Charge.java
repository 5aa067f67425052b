package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What is in the pot, and what was weighed so far.
 *
 * @param pot the pot, once its own weight is known
 * @param gross the pot and all in it, as last known on the pan
 * @param inPot what is really there of each part, by its number
 * @param weights all weights taken, in order
 */
public record Charge(
    Optional<PotTared> pot, Mass gross, Map<Integer, Mass> inPot, List<WeightAccepted> weights) {

  static final Charge EMPTY = new Charge(Optional.empty(), Mass.ZERO, Map.of(), List.of());

  public Charge {
    inPot = Map.copyOf(inPot);
    weights = List.copyOf(weights);
  }

  Charge tared(PotTared tared) {
    return new Charge(Optional.of(tared), tared.tare(), Map.of(), weights);
  }

  Charge accepted(WeightAccepted weight) {
    List<WeightAccepted> more = new ArrayList<>(weights);
    more.add(weight);
    if (weight.place().kind() == Place.Kind.VESSEL) return new Charge(pot, gross, inPot, more);
    Map<Integer, Mass> filled = new TreeMap<>(inPot);
    filled.merge(weight.place().number(), weight.net(), Mass::plus);
    return new Charge(pot, weight.gross(), filled, more);
  }

  /** What is in the pot, all parts together. */
  public Mass contents() {
    return inPot.values().stream().reduce(Mass.ZERO, Mass::plus);
  }
}
