package candlebench.station.batch.planning;

import candlebench.station.batch.Product;
import candlebench.station.batch.Recipe;
import java.util.List;
import java.util.Optional;

/**
 * The recipe of a plan file, to be started on the bench for any number of vessels, one pot at a time.
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
    Recipe made = order.charge(vessels).recipe();
    return new Recipe(
        made.id(),
        name(),
        made.parts(),
        made.vessel(),
        made.fillsVessels(),
        made.loss(),
        made.waits(),
        made.trim());
  }

  /** What the plan refuses in every pot there is; the last pot's words. */
  @Override
  public Optional<String> refusal(int vessels) {
    Optional<String> why = Optional.empty();
    for (Pot pot : order.pots()) {
      why = refusal(pot, vessels);
      if (why.isEmpty()) return why;
    }
    return why;
  }

  private Optional<String> refusal(Pot pot, int vessels) {
    return PlannedCharge.of(order, pot, vessels).findings().stream()
        .filter(Finding::refuses)
        .map(finding -> finding.subject() + ": " + finding.words())
        .findFirst();
  }

  public List<Pot> pots() {
    return order.pots();
  }
}
