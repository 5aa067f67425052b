package candlebench.station.batch.planning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * A batch split into charges of whole vessels, as even as pots and scales allow: ten vessels over three pots are four, three and three.
 * The pots are used in the order named, in turns; where that does not fit, the roomiest first.
 */
final class ChargeSplit {

  private record PotLoad(Pot pot, int vessels) {}

  private final PlanOrder order;
  private final Map<PotLoad, PlannedCharge> known = new HashMap<>();

  ChargeSplit(PlanOrder order) {
    this.order = order;
  }

  /** The charges, as the order asks for them; where they do not fit, as even as can be, so that it can be told what does not fit. */
  List<PlannedCharge> charges() {
    if (order.charges() instanceof Charges.OnePerPot) return onePerPot();
    if (order.charges() instanceof Charges.Exactly exactly)
      return fitting(exactly.count(), PlannedCharge::hasRoomForCure)
          .or(() -> fitting(exactly.count(), PlannedCharge::hasRoom))
          .orElseGet(() -> evenly(exactly.count()));
    if (order.charges() instanceof Charges.Fewest) return fewest().orElseGet(() -> evenly(1));
    throw new AssertionError(order.charges());
  }

  /** As few charges as fit, with room for a cure if that can be. */
  Optional<List<PlannedCharge>> fewest() {
    return fewest(PlannedCharge::hasRoomForCure).or(() -> fewest(PlannedCharge::hasRoom));
  }

  /** How a charge of so many vessels would be in a pot. */
  PlannedCharge charge(Pot pot, int vessels) {
    return known.computeIfAbsent(
        new PotLoad(pot, vessels), load -> PlannedCharge.of(order, load.pot(), load.vessels()));
  }

  private List<PlannedCharge> onePerPot() {
    int count = Math.min(order.pots().size(), order.vessels());
    return fitting(count, order.pots(), PlannedCharge::hasRoomForCure)
        .or(() -> fitting(count, order.pots(), PlannedCharge::hasRoom))
        .orElseGet(() -> evenly(count));
  }

  private Optional<List<PlannedCharge>> fewest(Predicate<PlannedCharge> fits) {
    return IntStream.rangeClosed(1, order.vessels())
        .mapToObj(count -> fitting(count, fits))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private Optional<List<PlannedCharge>> fitting(int count, Predicate<PlannedCharge> fits) {
    List<Pot> roomiest = roomiestFirst(fits);
    if (roomiest.isEmpty()) return Optional.empty();
    return fitting(count, order.pots(), fits).or(() -> fitting(count, roomiest, fits));
  }

  private Optional<List<PlannedCharge>> fitting(
      int count, List<Pot> pots, Predicate<PlannedCharge> fits) {
    int[] most = new int[count];
    for (int i = 0; i < count; i++) most[i] = most(pots.get(i % pots.size()), fits);
    if (Arrays.stream(most).anyMatch(each -> each == 0)
        || Arrays.stream(most).sum() < order.vessels()) return Optional.empty();
    List<PlannedCharge> charges = spread(pots, most);
    return charges.stream().allMatch(fits) ? Optional.of(charges) : Optional.empty();
  }

  private List<PlannedCharge> evenly(int count) {
    int[] most = new int[count];
    Arrays.fill(most, order.vessels());
    return spread(order.pots(), most);
  }

  /** One vessel after the other goes to the charge that has the fewest and can take it. */
  private List<PlannedCharge> spread(List<Pot> pots, int[] most) {
    int[] vessels = new int[most.length];
    for (int placed = 0; placed < order.vessels(); placed++) {
      int least = -1;
      for (int i = 0; i < most.length; i++)
        if (vessels[i] < most[i] && (least < 0 || vessels[i] < vessels[least])) least = i;
      vessels[least]++;
    }
    List<PlannedCharge> charges = new ArrayList<>();
    for (int i = 0; i < most.length; i++)
      charges.add(charge(pots.get(i % pots.size()), vessels[i]));
    return charges;
  }

  /** The most vessels that a pot can serve at once; zero where not one. */
  private int most(Pot pot, Predicate<PlannedCharge> fits) {
    for (int vessels = order.vessels(); vessels > 0; vessels--)
      if (fits.test(charge(pot, vessels))) return vessels;
    return 0;
  }

  /** The pots that can serve a vessel at all. */
  private List<Pot> roomiestFirst(Predicate<PlannedCharge> fits) {
    return order.pots().stream()
        .filter(pot -> most(pot, fits) > 0)
        .sorted(Comparator.comparing((Pot pot) -> most(pot, fits)).reversed())
        .toList();
  }
}
