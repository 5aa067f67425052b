package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.Loss;
import candlebench.station.batch.ProcessWindows;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * What is to be planned: a recipe, so many vessels, and the pots and scales there are for it.
 *
 * @param pots the pots of this batch, in the order in which they are used
 * @param cup what a part is weighed in where it cannot go straight into the pot
 * @param scales in the order in which the maker would rather use them
 * @param cure how much more than planned each pot and scale should still take, so that an over-pour can be cured: to cure an oil poured
 *     over by a tenth, everything else grows by a tenth
 */
public record PlanOrder(
    Formula formula,
    Vessel vessel,
    List<Pot> pots,
    Optional<Pot> cup,
    List<BenchScale> scales,
    int vessels,
    Loss loss,
    Charges charges,
    Margin cure) {

  /** More pots or scales than this are surely a slip (common practice, no source). */
  static final int MOST_POTS = 20;

  /** A loss above this is no film and no spill (common practice, no source). */
  static final Mass MOST_LOSS = Mass.ofGrams("1000");

  public PlanOrder {
    pots = List.copyOf(pots);
    scales = List.copyOf(scales);
    if (pots.isEmpty() || pots.size() > MOST_POTS)
      throw new IllegalArgumentException("a batch needs 1 to " + MOST_POTS + " pots");
    if (scales.isEmpty() || scales.size() > MOST_POTS)
      throw new IllegalArgumentException("a batch needs 1 to " + MOST_POTS + " scales");
    if (loss.perPot().isMoreThan(MOST_LOSS) || loss.perVessel().isMoreThan(MOST_LOSS))
      throw new IllegalArgumentException("a loss is at most " + MOST_LOSS + " per pot or vessel");
    if (vessels < 1 || vessels > BatchPlan.MOST_VESSELS)
      throw new IllegalArgumentException(
          "a batch has 1 to " + BatchPlan.MOST_VESSELS + " vessels, not " + vessels);
    if (charges instanceof Charges.Exactly exactly && exactly.count() > vessels)
      throw new IllegalArgumentException(exactly.count() + " charges are more than " + vessels
          + " vessels: each charge fills at least one");
    each(pots.stream().map(Pot::name).toList());
    each(scales.stream().map(BenchScale::name).toList());
  }

  private static void each(List<String> names) {
    Set<String> seen = new HashSet<>();
    for (String name : names)
      if (!seen.add(name))
        throw new IllegalArgumentException(
            "two are called '" + name + "': give each a name of its own");
  }

  /** The same for another number of vessels. */
  PlanOrder of(int ofVessels, Charges inCharges) {
    return new PlanOrder(formula, vessel, pots, cup, scales, ofVessels, loss, inCharges, cure);
  }

  /** The same with other names for the lots that its windows are for. */
  public PlanOrder withLots(UnaryOperator<String> names) {
    List<ProcessWindows> windows = formula.windows().stream()
        .map(each -> new ProcessWindows(names.apply(each.lot()), each.windows()))
        .toList();
    Formula renamed = new Formula(
        formula.id(),
        formula.version(),
        formula.name(),
        formula.ingredients(),
        formula.tested(),
        formula.waits(),
        formula.trim(),
        windows);
    return new PlanOrder(renamed, vessel, pots, cup, scales, vessels, loss, charges, cure);
  }

  /** One charge, as the bench makes it. */
  BatchPlan charge(int ofVessels) {
    List<Mass> targets = sums(formula, ofVessels).targets();
    return new BatchPlan(formula.recipe(vessel, loss, targets), ofVessels);
  }

  /** One charge of a formula, for its sums alone. */
  BatchPlan sums(Formula of, int ofVessels) {
    return new BatchPlan(of.bare(vessel, loss), ofVessels);
  }
}
