package candlebench.station.batch.planning;

import candlebench.station.batch.Fraction;
import candlebench.station.batch.LoadBasis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How far a single part may go at the bench before a limit stops it, in that part's own meaning, while all others keep to the recipe.
 *
 * <p>Per gram of wax, with x of the part, a and b the shares of the other parts of wax and of total, the total is
 * T = (1 + a + x)/(1 − b). With p and q the shares, of wax and of total, of the other parts that count towards the same limit L,
 * x + p + qT ≤ L (of wax) or ≤ LT (of total); each is solved for x.
 */
final class BenchLimit {
  private final Formula formula;
  private final Ingredient part;
  private final Fraction a;
  private final Fraction b;

  private BenchLimit(Formula formula, Ingredient part) {
    this.formula = formula;
    this.part = part;
    List<Ingredient> others = formula.ingredients().stream()
        .filter(each -> !each.isWax() && !each.equals(part))
        .toList();
    this.a = sum(others, LoadBasis.OF_WAX);
    this.b = sum(others, LoadBasis.OF_TOTAL);
  }

  /** The narrowest limit that holds; none for a wax, where none is known, or where each was set aside with a reason. */
  static Optional<Fraction> of(Formula formula, Ingredient part) {
    boolean limited = part.limit().isPresent()
        || formula.tested().isPresent()
        || formula.ingredients().stream()
            .anyMatch(wax -> wax.isWax() && wax.limit().isPresent());
    if (part.isWax() || !limited) return Optional.empty();
    return new BenchLimit(formula, part).narrowest();
  }

  private Optional<Fraction> narrowest() {
    List<Fraction> reaches = new ArrayList<>();
    part.limit().ifPresent(own -> add(reaches, own, List.of()));
    if (part.isOil()) {
      List<Ingredient> oils = formula.ingredients().stream()
          .filter(each -> each.isOil() && !each.equals(part))
          .toList();
      formula.tested().ifPresent(tested -> add(reaches, tested, oils));
      for (Ingredient wax : formula.ingredients())
        if (wax.isWax()) wax.limit().ifPresent(most -> add(reaches, most, oils));
    }
    return reaches.stream().min(Fraction::compareTo).map(this::inOwnMeaning);
  }

  /** Adds how much of the part, per gram of wax, a limit allows. */
  private void add(List<Fraction> reaches, LoadLimit limit, List<Ingredient> counted) {
    if (limit.reason().isPresent()) return;
    Fraction p = sum(counted, LoadBasis.OF_WAX);
    Fraction q = sum(counted, LoadBasis.OF_TOTAL);
    Fraction most = limit.most().share();
    Fraction rest = Fraction.ONE.minus(b);
    Fraction grown = Fraction.ONE.plus(a);
    boolean ofWax = limit.most().basis() == LoadBasis.OF_WAX;
    Fraction left = ofWax
        ? most.minus(p).times(rest).minus(q.times(grown))
        : most.minus(q).times(grown).minus(p.times(rest));
    Fraction per = ofWax ? rest.plus(q) : rest.minus(most).plus(q);
    if (per.compareTo(Fraction.ZERO) <= 0) return;
    Fraction planned = formula.ofWax(part);
    Fraction reach = left.dividedBy(per);
    reaches.add(reach.compareTo(planned) < 0 ? planned : reach);
  }

  private Fraction inOwnMeaning(Fraction perWax) {
    if (part.load().basis() == LoadBasis.OF_WAX) return perWax;
    return perWax.times(Fraction.ONE.minus(b)).dividedBy(Fraction.ONE.plus(a).plus(perWax));
  }

  private static Fraction sum(List<Ingredient> parts, LoadBasis basis) {
    return parts.stream()
        .map(Ingredient::load)
        .filter(load -> load.basis() == basis)
        .map(load -> load.share())
        .reduce(Fraction.ZERO, Fraction::plus);
  }
}
