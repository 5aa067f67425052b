package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Part;
import candlebench.station.batch.Recipe;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The load that a part really reached, exact, in both meanings.
 *
 * @param amount how much of it is in the pot
 * @param ofWax its share of all wax; none where there is no wax
 * @param ofTotal its share of all that is in the pot
 */
public record LoadReached(Part part, Mass amount, Optional<Fraction> ofWax, Fraction ofTotal) {

  /** The loads of all parts but wax, of what is in the pot by part number. */
  public static List<LoadReached> of(Recipe recipe, Map<Integer, Mass> inPot) {
    Mass total = Mass.ZERO;
    Mass wax = Mass.ZERO;
    for (Map.Entry<Integer, Mass> each : inPot.entrySet()) {
      total = total.plus(each.getValue());
      if (recipe.parts().get(each.getKey()).isWax()) wax = wax.plus(each.getValue());
    }
    List<LoadReached> loads = new ArrayList<>();
    if (total.isZero()) return loads;
    for (int i = 0; i < recipe.parts().size(); i++) {
      Part part = recipe.parts().get(i);
      if (part.isWax() || !inPot.containsKey(i)) continue;
      Mass amount = inPot.get(i);
      loads.add(new LoadReached(
          part,
          amount,
          wax.isZero() ? Optional.empty() : Optional.of(Fraction.ratio(amount, wax)),
          Fraction.ratio(amount, total)));
    }
    return List.copyOf(loads);
  }

  /** The load in the meaning in which the recipe states it. */
  public Fraction asStated() {
    return switch (part.load().basis()) {
      case OF_WAX -> ofWax.orElse(ofTotal);
      case OF_TOTAL -> ofTotal;
    };
  }

  /** Whether it is more than its supplier and the product's tests allow, where that is known. */
  public boolean overLimit() {
    return !part.limit().isZero() && asStated().compareTo(part.limit()) > 0;
  }
}
