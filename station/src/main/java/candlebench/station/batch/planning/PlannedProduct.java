package candlebench.station.batch.planning;

import candlebench.station.batch.Part;
import candlebench.station.batch.PotShare;
import candlebench.station.batch.ProcessWindows;
import candlebench.station.batch.Product;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.Way;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The recipe of a plan file, to be started on the bench for any number of vessels: from one pot where that takes them all, else
 * from as many as the plan needs, in turns.
 *
 * @param order what the file says; how many vessels it plans does not matter here
 */
public record PlannedProduct(PlanOrder order) implements Product {

  @Override
  public String id() {
    return order.formula().id();
  }

  /** With its version, so that the record tells which one a batch was made by. */
  @Override
  public String name() {
    return order.formula().name() + ", version " + order.formula().version();
  }

  @Override
  public Recipe forVessels(int vessels) {
    Pot pot = order.pots().stream()
        .filter(each -> refusal(each, vessels).isEmpty())
        .findFirst()
        .orElse(order.pots().get(0));
    return recipe(PlannedCharge.of(order, pot, vessels));
  }

  /** What the plan weighs in a cup is weighed in a cup at the bench. */
  private Recipe recipe(PlannedCharge charge) {
    Recipe made = charge.batch().recipe();
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < made.parts().size(); i++) {
      Part part = made.parts().get(i);
      boolean inCup = charge.weighings().get(i).into() == Into.CUP;
      parts.add(inCup ? part.weighed(Way.IN_CUP) : part);
    }
    return new Recipe(
        made.id(),
        name(),
        parts,
        made.vessel(),
        made.fillsVessels(),
        made.loss(),
        made.waits(),
        made.trim());
  }

  /** What the plan refuses in every pot there is, and in any way to share it among them; the last pot's words. */
  @Override
  public Optional<String> refusal(int vessels) {
    Optional<String> why = Optional.empty();
    for (Pot pot : order.pots()) {
      why = refusal(pot, vessels);
      if (why.isEmpty()) return why;
    }
    return split(vessels).isEmpty() ? why : Optional.empty();
  }

  @Override
  public List<PotShare> shares(int vessels) {
    boolean onePot = order.pots().stream().anyMatch(pot -> refusal(pot, vessels).isEmpty());
    if (onePot && !(order.charges() instanceof Charges.Exactly)) return List.of();
    List<PlannedCharge> charges = split(vessels);
    if (charges.size() < 2) return List.of();
    return charges.stream()
        .map(charge -> new PotShare(charge.pot().name(), charge.vessels(), recipe(charge)))
        .toList();
  }

  /** As the plan would share so many among the pots; none where no way fits. */
  private List<PlannedCharge> split(int vessels) {
    Charges charges =
        order.charges() instanceof Charges.Exactly exactly && exactly.count() <= vessels
            ? exactly
            : new Charges.Fewest();
    List<PlannedCharge> split = new ChargeSplit(order.of(vessels, charges)).charges();
    return split.stream().anyMatch(PlannedCharge::isRefused) ? List.of() : split;
  }

  private Optional<String> refusal(Pot pot, int vessels) {
    return PlannedCharge.of(order, pot, vessels).findings().stream()
        .filter(Finding::refuses)
        .map(finding -> finding.subject() + ": " + finding.words())
        .findFirst();
  }

  @Override
  public List<ProcessWindows> windows() {
    return order.formula().windows();
  }

  public List<Pot> pots() {
    return order.pots();
  }
}
