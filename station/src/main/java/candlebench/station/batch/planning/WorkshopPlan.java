package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.Loss;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A batch as it is to be made, with all that speaks against it. It is laid out even where it is refused, so that the sum shows why.
 *
 * @param fewest the fewest charges that would fit, where that is better than the order's own
 */
public record WorkshopPlan(
    PlanOrder order,
    List<PlannedCharge> charges,
    Filling filling,
    List<LimitCheck> limits,
    List<SensitiserCheck> sensitisers,
    Optional<List<PlannedCharge>> fewest,
    List<Finding> findings) {

  public static WorkshopPlan of(PlanOrder order) {
    ChargeSplit split = new ChargeSplit(order);
    List<PlannedCharge> charges = split.charges();
    Fit fit = Fit.of(charges);
    Optional<List<PlannedCharge>> fewest =
        fit == Fit.WELL ? Optional.empty() : split.fewest().filter(other -> betters(other, fit));
    Filling filling = Filling.of(order);
    List<LimitCheck> limits = LimitCheck.of(order.formula());
    List<SensitiserCheck> sensitisers = SensitiserCheck.of(order.formula());
    Set<Finding> findings = new LinkedHashSet<>();
    for (PlannedCharge charge : charges) findings.addAll(charge.findings());
    fewest.map(WorkshopPlan::better).ifPresent(findings::add);
    findings.addAll(filling.findings());
    for (LimitCheck check : limits) check.finding().ifPresent(findings::add);
    for (SensitiserCheck check : sensitisers) check.finding().ifPresent(findings::add);
    for (BenchScale scale : order.scales()) aboutClass(scale).ifPresent(findings::add);
    return new WorkshopPlan(
        order, charges, filling, limits, sensitisers, fewest, List.copyOf(findings));
  }

  private static boolean betters(List<PlannedCharge> other, Fit fit) {
    return Fit.of(other).compareTo(fit) < 0;
  }

  private static Finding better(List<PlannedCharge> fewest) {
    return Finding.noted(
        Rule.WHOLE_VESSELS,
        "batch",
        Wording.count(fewest.size(), "charge", "charges") + " would fit, of "
            + Wording.vessels(fewest) + ": set \"charges\" to " + fewest.size() + ".");
  }

  private static Optional<Finding> aboutClass(BenchScale scale) {
    if (scale.accuracy().isEmpty())
      return Optional.of(Finding.noted(
          Rule.NO_CLASS,
          scale.name(),
          "No class is given, so its Min is not known, and its error in use is taken as that of class III with e = "
              + scale.interval() + "."));
    return scale
        .accuracy()
        .get()
        .fault(scale.capacity(), scale.interval(), scale.division().step())
        .map(fault -> Finding.warned(
            Rule.ACCURACY_CLASS, scale.name(), fault + ". Look at its plate again."));
  }

  /** The same, with the loss that was learnt from so many finished batches beside the one in the file. */
  public WorkshopPlan beside(Loss learnt, int batches) {
    List<Finding> more = new ArrayList<>(findings);
    more.add(Finding.noted(
        Rule.LEARNT_LOSS,
        "batch.loss",
        batches + " finished batches without a spill lost " + Wording.grams(learnt.perPot())
            + " per pot and " + Wording.grams(learnt.perVessel()) + " per vessel; this plan has "
            + Wording.grams(order.loss().perPot()) + " and "
            + Wording.grams(order.loss().perVessel()) + "."));
    return new WorkshopPlan(
        order, charges, filling, limits, sensitisers, fewest, List.copyOf(more));
  }

  public boolean isRefused() {
    return findings.stream().anyMatch(Finding::refuses);
  }

  /** All fills and losses. */
  public Mass total() {
    return charges.stream().map(PlannedCharge::contents).reduce(Mass.ZERO, Mass::plus);
  }

  public Mass fills() {
    return order.vessel().fill().mass().times(order.vessels());
  }

  public Mass losses() {
    return total().minus(fills());
  }

  /** The parts of the whole batch, in the order of the recipe. Their exact targets sum to the total. */
  public List<PlannedPart> parts() {
    List<PlannedPart> parts = new ArrayList<>();
    Formula formula = order.formula();
    for (int i = 0; i < formula.ingredients().size(); i++) {
      Ingredient part = formula.ingredients().get(i);
      Mass exact = Mass.ZERO;
      Mass shown = Mass.ZERO;
      for (PlannedCharge charge : charges) {
        exact = exact.plus(charge.weighings().get(i).exact());
        shown = shown.plus(charge.weighings().get(i).shown());
      }
      parts.add(new PlannedPart(
          part, formula.ofWax(part), formula.ofTotal(part), exact, shown, otherMeaning(i)));
    }
    return List.copyOf(parts);
  }

  private Optional<OtherMeaning> otherMeaning(int which) {
    Ingredient part = order.formula().ingredients().get(which);
    return order.formula().meaningOtherwise(part).map(other -> {
      Mass ofPart = Mass.ZERO;
      Mass wax = Mass.ZERO;
      for (PlannedCharge charge : charges) {
        List<Mass> targets = order.sums(other, charge.vessels()).targets();
        ofPart = ofPart.plus(targets.get(which));
        for (int i = 0; i < targets.size(); i++)
          if (other.ingredients().get(i).isWax()) wax = wax.plus(targets.get(i));
      }
      return new OtherMeaning(other.ingredients().get(which).load(), ofPart, wax);
    });
  }

  /** All oils together, in a meaning. */
  public Load oils(LoadBasis basis) {
    return new Load(order.formula().oils(basis), basis);
  }
}
