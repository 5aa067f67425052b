package candlebench.station.batch;

import candlebench.shared.Mass;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a batch is to be: a recipe, and so many vessels.
 *
 * <p>With <i>a</i> the sum of the shares of the wax, and <i>b</i> of the shares of the total, of all parts that are not wax:
 * W + aW + bT = T, so W = T (1-b)/(1+a). Each target is rounded once to a picogram, and the last wax takes what that leaves, so that
 * the targets sum to the total exactly.
 */
public record BatchPlan(Recipe recipe, int vessels) {
  /** More than this is surely a slip of the finger (common practice, no source). */
  public static final int MOST_VESSELS = 500;

  public BatchPlan {
    if (vessels < 1 || vessels > MOST_VESSELS)
      throw new IllegalArgumentException(
          "a batch has 1 to " + MOST_VESSELS + " vessels, not " + vessels);
  }

  /** Fill weights and losses. */
  public Mass total() {
    return recipe.vessel().fill().times(vessels).plus(recipe.loss().of(vessels));
  }

  /** The planned weight of each part, in the order of the recipe; they sum to {@link #total()}. */
  public List<Mass> targets() {
    Mass total = total();
    Fraction perWax = recipe.totalPerWax();
    Mass wax = perWax.isZero() ? Mass.ZERO : Fraction.ONE.dividedBy(perWax).of(total);
    List<Mass> targets = new ArrayList<>();
    Mass sum = Mass.ZERO;
    int last = 0;
    for (Part part : recipe.parts()) {
      Mass target = part.of(wax, total);
      if (part.isWax()) last = targets.size();
      targets.add(target);
      sum = sum.plus(target);
    }
    targets.set(last, targets.get(last).plus(total.minus(sum)));
    return List.copyOf(targets);
  }

  /**
   * What a part's target is, given what is really in the pot by part number: everything follows the wax that is there. Before any
   * wax is in, the plan holds.
   */
  public Mass target(int part, Map<Integer, Mass> inPot) {
    return waxFor(inPot)
        .map(wax -> wanted(recipe.parts().get(part), wax))
        .orElseGet(() -> targets().get(part));
  }

  private Mass wanted(Part part, Mass wax) {
    return part.of(wax, recipe.totalPerWax().of(wax));
  }

  /** All the wax that belongs to the wax already in: itself, or more where another of the blend is still to come. */
  private Optional<Mass> waxFor(Map<Integer, Mass> inPot) {
    Mass there = Mass.ZERO;
    Fraction shares = Fraction.ZERO;
    for (int i = 0; i < recipe.parts().size(); i++) {
      Part part = recipe.parts().get(i);
      if (!part.isWax() || !inPot.containsKey(i)) continue;
      there = there.plus(inPot.get(i));
      shares = shares.plus(part.load().share());
    }
    return shares.isZero()
        ? Optional.empty()
        : Optional.of(Fraction.ONE.dividedBy(shares).of(there));
  }

  /** What the batch will weigh, given what is really in the pot, once all parts still to come are in. */
  public Mass total(Map<Integer, Mass> inPot) {
    Mass total = Mass.ZERO;
    for (int i = 0; i < recipe.parts().size(); i++)
      total = total.plus(inPot.containsKey(i) ? inPot.get(i) : target(i, inPot));
    return total;
  }

  /** All the wax there is and is to come. */
  public Mass wax(Map<Integer, Mass> inPot) {
    Mass wax = Mass.ZERO;
    for (int i = 0; i < recipe.parts().size(); i++)
      if (recipe.parts().get(i).isWax())
        wax = wax.plus(inPot.containsKey(i) ? inPot.get(i) : target(i, inPot));
    return wax;
  }

  /**
   * What a part lacks until it is right beside a part that was poured over, or beside the wax that is there, where that asks for more.
   * The other parts do not count: each may be a little off within its own tolerance, and is brought up itself. Zero where it lacks
   * nothing.
   */
  public Mass lacking(int part, int over, Map<Integer, Mass> inPot) {
    Mass asked = waxAskedBy(recipe.parts().get(over), inPot.getOrDefault(over, Mass.ZERO));
    Mass wax = waxFor(inPot).filter(there -> there.isMoreThan(asked)).orElse(asked);
    Mass lacking = wanted(recipe.parts().get(part), wax).minus(inPot.getOrDefault(part, Mass.ZERO));
    return lacking.isNegative() ? Mass.ZERO : lacking;
  }

  /** The wax for which so much of a part is its share. */
  private Mass waxAskedBy(Part part, Mass there) {
    if (part.load().share().isZero()) return Mass.ZERO;
    Fraction whole = Fraction.ONE.dividedBy(part.load().share());
    boolean ofWax = part.load().basis() == LoadBasis.OF_WAX;
    Fraction perWax = recipe.totalPerWax();
    if (!ofWax && perWax.isZero()) return Mass.ZERO;
    return (ofWax ? whole : whole.dividedBy(perWax)).of(there);
  }

  /** The steps, in order. */
  public List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    if (recipe.fillsVessels()) steps.add(new Step.Prepare(vessels));
    steps.add(new Step.PlacePot());
    boolean melts = !recipe.waits().melt().isZero();
    for (int i = 0; i < recipe.parts().size(); i++) {
      boolean firstAfterWax =
          i > 0 && recipe.parts().get(i - 1).isWax() && !recipe.parts().get(i).isWax();
      if (melts && firstAfterWax) {
        steps.add(new Step.Melt(recipe.waits().melt()));
        steps.add(new Step.ReturnPot());
      }
      steps.add(new Step.AddPart(i));
      if (recipe.parts().get(i).way() == Way.IN_CUP) steps.add(new Step.TipCup(i));
    }
    if (!recipe.waits().mix().isZero()) steps.add(new Step.Mix(recipe.waits().mix()));
    if (recipe.fillsVessels()) for (int i = 0; i < vessels; i++) steps.add(new Step.FillVessel(i));
    return List.copyOf(steps);
  }
}
