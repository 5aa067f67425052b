package candlebench.station.record;

import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.planning.LoadUncertainty;
import candlebench.station.batch.planning.LoadUncertainty.Net;
import candlebench.station.guidance.GuidanceEvent.PotReweighed;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Place;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * How surely the loads of a batch are known from the readings that were really taken: standard uncertainties, JCGM 100:2008 (GUM),
 * 5.1.2. The loads themselves are exact, and stay so.
 *
 * <p>A reading that ends one part and begins the next stands in the sum once. A pot weighed again after the melt gives the one part that
 * is in it a new last reading. Where mix was split off, what is left is taken as if it alone had been weighed, which says a little too
 * much. Buoyancy is left out.
 */
final class LoadsKnown {

  /** One look at the pan: which scale, and what stood there. */
  private record Look(int scale, Mass gross) {}

  /** A net weight by the numbers of its looks. */
  private record Weighed(int part, Mass net, int before, int after) {}

  private final List<Look> looks = new ArrayList<>();
  private final List<BigDecimal> variances = new ArrayList<>();
  private final List<Weighed> weighed = new ArrayList<>();

  private LoadsKnown() {}

  /** By part number, of all parts in the pot that are no wax; none where there is no wax to compare them with. */
  static Map<Integer, LoadUncertainty> of(BatchRecord batch) {
    LoadsKnown known = new LoadsKnown();
    Map<Long, WeighingLine> standing =
        batch.standing().stream().collect(Collectors.toMap(WeighingLine::entry, line -> line));
    for (Recorded each : batch.entries()) {
      if (each.event() instanceof PotTared pot)
        known.look(new Look(pot.scale(), pot.tare()), pot.indication());
      if (each.event() instanceof PotReweighed again) known.again(again);
      if (standing.containsKey(each.entry())) known.and(standing.get(each.entry()));
    }
    return known.loads(batch);
  }

  private void and(WeighingLine line) {
    if (line.place().kind() != Place.Kind.PART && line.place().kind() != Place.Kind.MORE) return;
    WeightAccepted weight = line.counts();
    Look tare = new Look(weight.scale(), weight.tare());
    if (looks.isEmpty() || !looks.get(looks.size() - 1).equals(tare))
      look(tare, weight.indication());
    look(new Look(weight.scale(), weight.gross()), weight.indication());
    int after = looks.size() - 1;
    weighed.add(new Weighed(line.place().number(), line.net(), after - 1, after));
  }

  private void again(PotReweighed again) {
    look(new Look(again.scale(), again.gross()), again.indication());
    if (weighed.size() != 1) return;
    Weighed only = weighed.get(0);
    weighed.set(0, new Weighed(only.part(), only.net(), only.before(), looks.size() - 1));
  }

  private void look(Look look, Indication shown) {
    looks.add(look);
    Mass step = WeighingLine.stepOf(shown).step();
    variances.add(LoadUncertainty.varianceByStep(look.gross(), step));
  }

  private Map<Integer, LoadUncertainty> loads(BatchRecord batch) {
    Map<Integer, LoadUncertainty> loads = new TreeMap<>();
    List<Net> nets = weighed.stream().map(each -> net(each, batch)).toList();
    if (nets.stream().noneMatch(net -> net.isWax() && !net.mass().isZero())) return loads;
    for (int part : batch.inPot().keySet()) {
      Set<Integer> own = new HashSet<>();
      for (int i = 0; i < weighed.size(); i++) if (weighed.get(i).part() == part) own.add(i);
      if (!own.isEmpty() && !batch.recipe().parts().get(part).isWax())
        loads.put(part, LoadUncertainty.of(own, nets, variances));
    }
    return loads;
  }

  /** A net weight as it counts in the end: so that all of a part sum to what is in the pot of it. */
  private Net net(Weighed each, BatchRecord batch) {
    Mass sum = weighed.stream()
        .filter(other -> other.part() == each.part())
        .map(Weighed::net)
        .reduce(Mass.ZERO, Mass::plus);
    Mass inPot = batch.inPot().getOrDefault(each.part(), Mass.ZERO);
    return new Net(
        sum.isZero() ? Mass.ZERO : Fraction.ratio(inPot, sum).of(each.net()),
        batch.recipe().parts().get(each.part()).isWax(),
        each.before(),
        each.after());
  }
}
