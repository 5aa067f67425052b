package candlebench.station.batch.planning;

import candlebench.station.batch.Fraction;
import candlebench.station.batch.LoadBasis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A limit, and the load planned against it, in the meaning in which the limit is stated.
 *
 * @param of the wax, the part or the product that has the limit
 */
public record LimitCheck(Rule rule, String of, LoadLimit limit, Fraction planned) {

  static List<LimitCheck> of(Formula formula) {
    List<LimitCheck> checks = new ArrayList<>();
    for (Ingredient each : formula.ingredients())
      each.limit()
          .ifPresent(limit -> checks.add(new LimitCheck(
              each.isWax() ? Rule.WAX_MAXIMUM : Rule.SUPPLIER_MAXIMUM,
              each.name(),
              limit,
              planned(formula, each, limit.most().basis()))));
    formula
        .tested()
        .ifPresent(limit -> checks.add(new LimitCheck(
            Rule.TESTED_LOAD, formula.name(), limit, formula.oils(limit.most().basis()))));
    return List.copyOf(checks);
  }

  private static Fraction planned(Formula formula, Ingredient part, LoadBasis basis) {
    return part.isWax() ? formula.oils(basis) : formula.load(part, basis);
  }

  public boolean isKept() {
    return planned.compareTo(limit.most().share()) <= 0;
  }

  Optional<Finding> finding() {
    if (isKept()) return Optional.empty();
    String basis = Wording.basis(limit.most().basis());
    String words = Wording.percent(planned) + " " + basis + " is planned, "
        + Wording.percent(limit.most().share()) + " " + basis + " is the most";
    return Optional.of(
        limit.reason().isPresent()
            ? Finding.warned(
                rule, of, words + ". Reason given: " + limit.reason().get())
            : Finding.refused(
                rule, of, words + ". Use less, or give the reason beside the limit."));
  }
}
