package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * How the vessels are filled: on which scale, and to what.
 *
 * @param onPan the load on the pan with a full vessel
 */
public record Filling(Vessel vessel, BenchScale scale, Mass onPan, List<Finding> findings) {

  static Filling of(PlanOrder order) {
    Vessel vessel = order.vessel();
    Mass fill = vessel.fill().mass();
    Mass most = vessel.full().plus(vessel.tolerance().over().of(fill));
    List<BenchScale> carry =
        order.scales().stream().filter(scale -> scale.carries(most)).toList();
    List<Finding> findings = new ArrayList<>();
    BenchScale scale = carry.stream()
        .filter(each -> fineness(vessel, each).suffices())
        .findFirst()
        .orElseGet(() -> (carry.isEmpty() ? order.scales() : carry)
            .stream().min(Comparator.comparing(each -> each.division().step())).orElseThrow());
    if (carry.isEmpty())
      findings.add(Finding.refused(
          Rule.SCALE_CAPACITY,
          vessel.name(),
          "A full vessel of " + Wording.grams(most) + " is more than any scale carries."));
    else
      fineness(vessel, scale)
          .broken()
          .ifPresent(rule -> findings.add(refused(rule, vessel, scale)));
    scale
        .leastLoad()
        .filter(vessel.full()::isLessThan)
        .ifPresent(least -> findings.add(Finding.warned(
            Rule.LEAST_LOAD,
            vessel.name(),
            "A full vessel of " + Wording.grams(vessel.full()) + " is under the Min of " + least
                + " of " + scale.words() + ".")));
    return new Filling(vessel, scale, vessel.full(), List.copyOf(findings));
  }

  private static Finding refused(Rule rule, Vessel vessel, BenchScale scale) {
    Fineness fineness = fineness(vessel, scale);
    String fill = "A fill of " + Wording.grams(vessel.fill().mass()) + " " + vessel.tolerance();
    String words = rule == Rule.STEP_WITHIN_TOLERANCE
        ? " wants a step of " + Wording.grams(fineness.widestStep()) + " or finer; " + scale.words()
            + " is too coarse."
        : " is under the minimum weight of " + Wording.grams(fineness.minimumWeight()) + " on "
            + scale.words() + ".";
    return Finding.refused(
        rule,
        vessel.name(),
        fill + words + " Name a finer scale that carries it, or a tolerance that it can show.");
  }

  private static Fineness fineness(Vessel vessel, BenchScale scale) {
    Mass fill = vessel.fill().mass();
    return new Fineness(scale, fill, vessel.tolerance().narrowest(fill));
  }

  public Fineness fineness() {
    return fineness(vessel, scale);
  }

  /** The fill as the scale can show it. */
  public Mass shown() {
    return scale.division().nearest(vessel.fill().mass());
  }
}
