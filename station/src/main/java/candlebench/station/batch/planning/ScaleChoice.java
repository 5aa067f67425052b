package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Which scale each part of a charge is weighed on. The whole pot stands on one scale, which must carry it with all its contents; a part
 * that this scale is too coarse for goes into the pot on a finer one, or into the cup where the pot is too heavy for that.
 */
final class ScaleChoice {
  private final PlanOrder order;
  private final Pot pot;
  private final List<Mass> targets;
  private final Mass contents;
  private final BenchScale potScale;
  private final List<Finding> findings = new ArrayList<>();

  ScaleChoice(PlanOrder order, Pot pot, List<Mass> targets) {
    this.order = order;
    this.pot = pot;
    this.targets = targets;
    this.contents = targets.stream().reduce(Mass.ZERO, Mass::plus);
    this.potScale = potScale();
  }

  BenchScale forPot() {
    return potScale;
  }

  /** What was found while the parts were given their scales. */
  List<Finding> findings() {
    return findings;
  }

  List<PlannedWeighing> weighings() {
    List<PlannedWeighing> weighings = new ArrayList<>();
    Mass inPot = Mass.ZERO;
    for (int i = 0; i < targets.size(); i++) {
      weighings.add(weighing(order.formula().ingredients().get(i), targets.get(i), inPot));
      inPot = inPot.plus(targets.get(i));
    }
    return List.copyOf(weighings);
  }

  /**
   * The first that carries the pot with room for a cure and is fine enough for the wax; else without that room; else a coarser one, on
   * which the pot stands while its parts come from the cup; else the largest there is.
   */
  private BenchScale potScale() {
    Mass gross = pot.empty().plus(contents);
    Mass cured = gross.plus(order.cure().of(contents));
    return first(scale -> scale.carries(cured) && fineForWax(scale))
        .or(() -> first(scale -> scale.carries(gross) && fineForWax(scale)))
        .or(() -> first(scale -> scale.carries(cured)))
        .or(() -> first(scale -> scale.carries(gross)))
        .orElseGet(() -> order.scales().stream()
            .max(Comparator.comparing(BenchScale::capacity))
            .orElseThrow());
  }

  private Optional<BenchScale> first(Predicate<BenchScale> fit) {
    return order.scales().stream().filter(fit).findFirst();
  }

  /** Whether a scale is fine enough for the wax of which there is most. */
  private boolean fineForWax(BenchScale scale) {
    int most = -1;
    for (int i = 0; i < targets.size(); i++)
      if (order.formula().ingredients().get(i).isWax()
          && (most < 0 || targets.get(i).isMoreThan(targets.get(most)))) most = i;
    Ingredient wax = order.formula().ingredients().get(most);
    Mass target = targets.get(most);
    return new Fineness(scale, target, wax.tolerance().narrowest(target)).suffices();
  }

  private PlannedWeighing weighing(Ingredient part, Mass target, Mass inPot) {
    List<PlannedWeighing> ways = ways(part, target, inPot);
    List<PlannedWeighing> fine =
        ways.stream().filter(way -> way.fineness().suffices()).toList();
    Optional<PlannedWeighing> first = fine.stream().filter(this::fits).findFirst();
    if (first.isPresent()) return warnedOf(first.get());
    if (!fine.isEmpty()) {
      boolean potIsTooHeavy = !potScale.carries(pot.empty().plus(contents));
      PlannedWeighing largest =
          fine.stream().max(Comparator.comparing(way -> way.scale().capacity())).orElseThrow();
      if (!(potIsTooHeavy && largest.scale() == potScale)) findings.add(tooHeavy(largest));
      return largest;
    }
    PlannedWeighing finest = ways.stream()
        .filter(this::fits)
        .min(Comparator.comparing(way -> way.scale().division().step()))
        .orElse(ways.get(0));
    findings.add(tooCoarse(finest));
    return finest;
  }

  /** All ways to weigh a part, the ones to be preferred first. */
  private List<PlannedWeighing> ways(Ingredient part, Mass target, Mass inPot) {
    List<PlannedWeighing> ways = new ArrayList<>();
    Mass before = pot.empty().plus(inPot);
    ways.add(new PlannedWeighing(part, target, potScale, Into.POT, before, before.plus(target)));
    for (BenchScale scale : order.scales())
      if (scale != potScale)
        ways.add(new PlannedWeighing(part, target, scale, Into.POT, before, before.plus(target)));
    order.cup().ifPresent(cup -> {
      for (BenchScale scale : order.scales())
        ways.add(new PlannedWeighing(
            part, target, scale, Into.CUP, cup.empty(), cup.empty().plus(target)));
    });
    return ways;
  }

  private boolean fits(PlannedWeighing way) {
    boolean holds = way.into() == Into.POT
        || order.cup().filter(cup -> cup.holds(way.exact())).isPresent();
    return holds && way.scale().carries(way.after());
  }

  private PlannedWeighing warnedOf(PlannedWeighing way) {
    way.scale()
        .leastLoad()
        .filter(way.after()::isLessThan)
        .ifPresent(least -> findings.add(Finding.warned(
            Rule.LEAST_LOAD,
            way.part().name(),
            "With " + Wording.grams(way.after()) + " on its pan, " + way.scale().words()
                + " is under its Min of " + least
                + ", where its error is too large a share to rely on. A heavier cup helps.")));
    return way;
  }

  private Finding tooCoarse(PlannedWeighing way) {
    Fineness fineness = way.fineness();
    String target = Wording.grams(way.exact()) + " " + way.part().tolerance();
    String cup = order.cup().isPresent() ? "" : ", with a cup if the pot is too heavy for it";
    if (!fineness.stepFits())
      return Finding.refused(
          Rule.STEP_WITHIN_TOLERANCE,
          way.part().name(),
          target + " wants a step of " + Wording.grams(fineness.widestStep()) + " or finer; "
              + way.scale().words() + " is too coarse. Name a finer scale" + cup
              + ", or make more at once.");
    return Finding.refused(
        Rule.MINIMUM_WEIGHT,
        way.part().name(),
        target + " is under the minimum weight of " + Wording.grams(fineness.minimumWeight())
            + " on " + way.scale().words() + ". Name a finer or steadier scale" + cup
            + ", or make more at once.");
  }

  /** A scale is fine enough, and carries the part neither in the pot nor in a cup. */
  private Finding tooHeavy(PlannedWeighing way) {
    Mass target = way.exact();
    Mass inPot = way.into() == Into.POT ? way.after() : pot.empty().plus(target);
    String said = way.scale().words() + " is the largest fine enough for " + Wording.grams(target)
        + " " + way.part().tolerance() + " and cannot carry it in the pot ("
        + Wording.grams(inPot) + ")";
    Optional<Pot> small = order.cup().filter(cup -> !cup.holds(target));
    if (small.isPresent())
      return Finding.refused(
          Rule.POT_ROOM,
          way.part().name(),
          said + "; the cup has room for "
              + Wording.grams(small.get().room().orElseThrow().mass())
              + ". Use a larger cup, allow a wider tolerance, or split the batch otherwise.");
    return Finding.refused(
        Rule.SCALE_CAPACITY,
        way.part().name(),
        said
            + (order.cup().isPresent()
                ? ", nor in the cup. Use a lighter cup, allow a wider tolerance, or split the batch otherwise."
                : ". Name a cup to weigh it in, or split the batch otherwise."));
  }
}
