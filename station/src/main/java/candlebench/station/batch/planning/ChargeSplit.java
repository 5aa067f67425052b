package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A batch split into charges of whole vessels, as even as pots and scales allow: ten vessels over three pots are four, three and three.
 * The pots are used in the order named, in turns; where that does not fit, the roomiest first.
 */
final class ChargeSplit {
  private final PlanOrder order;
  private final Map<String, Map<Integer, PlannedCharge>> known = new HashMap<>();
  private final List<Rooms> bestFirst =
      Stream.of(Fit.values()).filter(fit -> fit != Fit.NONE).map(Rooms::new).toList();

  ChargeSplit(PlanOrder order) {
    this.order = order;
  }

  /** The charges, as the order asks for them; where they do not fit, as even as can be, so that it can be told what does not fit. */
  List<PlannedCharge> charges() {
    if (order.charges() instanceof Charges.OnePerPot) {
      int count = Math.min(order.pots().size(), order.vessels());
      return best(rooms -> rooms.fitting(count, order.pots())).orElseGet(() -> evenly(count));
    }
    if (order.charges() instanceof Charges.Exactly exactly)
      return best(rooms -> rooms.fitting(exactly.count())).orElseGet(() -> evenly(exactly.count()));
    if (order.charges() instanceof Charges.Fewest) return fewest().orElseGet(() -> evenly(1));
    throw new AssertionError(order.charges());
  }

  /** As few charges as fit, as well as can be. */
  Optional<List<PlannedCharge>> fewest() {
    return best(Rooms::fewest);
  }

  private Optional<List<PlannedCharge>> best(Function<Rooms, Optional<List<PlannedCharge>>> split) {
    return bestFirst.stream().map(split).flatMap(Optional::stream).findFirst();
  }

  private PlannedCharge charge(Pot pot, int vessels) {
    return known
        .computeIfAbsent(pot.name(), name -> new HashMap<>())
        .computeIfAbsent(vessels, count -> PlannedCharge.of(order, pot, count));
  }

  /** Whether pot and scales have room for so many at all, whatever they are weighed on: a quick look before the long one. */
  private boolean mayTake(Pot pot, int vessels) {
    Mass contents =
        order.vessel().fill().mass().times(vessels).plus(order.loss().of(vessels));
    return pot.holds(contents)
        && order.scales().stream().anyMatch(scale -> scale.carries(pot.empty().plus(contents)));
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

  /** What the pots can take, by one measure of what fits. */
  private final class Rooms {
    private final Fit fit;
    private final Map<String, Integer> most = new HashMap<>();

    Rooms(Fit fit) {
      this.fit = fit;
    }

    Optional<List<PlannedCharge>> fewest() {
      return IntStream.rangeClosed(1, order.vessels())
          .mapToObj(this::fitting)
          .flatMap(Optional::stream)
          .findFirst();
    }

    /** In the order named, or else the roomiest pots first, without those that cannot serve a single vessel. */
    Optional<List<PlannedCharge>> fitting(int count) {
      List<Pot> roomiest = order.pots().stream()
          .filter(pot -> most(pot) > 0)
          .sorted(Comparator.comparing(this::most).reversed())
          .toList();
      return fitting(count, order.pots()).or(() -> fitting(count, roomiest));
    }

    Optional<List<PlannedCharge>> fitting(int count, List<Pot> pots) {
      if (pots.isEmpty()) return Optional.empty();
      int[] room = new int[count];
      for (int i = 0; i < count; i++) room[i] = most(pots.get(i % pots.size()));
      boolean idle = Arrays.stream(room).anyMatch(each -> each == 0);
      if (idle || Arrays.stream(room).sum() < order.vessels()) return Optional.empty();
      List<PlannedCharge> charges = spread(pots, room);
      return charges.stream().allMatch(fit::of) ? Optional.of(charges) : Optional.empty();
    }

    /** The most vessels that a pot can serve at once; zero where not one. */
    private int most(Pot pot) {
      return most.computeIfAbsent(pot.name(), name -> {
        int vessels = order.vessels();
        while (vessels > 0 && !(mayTake(pot, vessels) && fit.of(charge(pot, vessels)))) vessels--;
        return vessels;
      });
    }
  }
}
