package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.batch.Part;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a batch took from one lot, and which of its vessels hold it.
 *
 * @param lot empty where none was named: marked as unknown wherever it is shown
 * @param amount by weight; zero for what is counted, such as vessels and wicks
 * @param vessels by number from one, in order
 */
public record LotUse(String material, String lot, Mass amount, List<Integer> vessels) {

  public boolean isUnknown() {
    return lot.isEmpty();
  }

  private record Lot(String material, String number) {}

  /**
   * All lots of a batch. What went into the pot is in every vessel filled; a wick or a vessel is of the lot in use when it was filled.
   */
  static List<LotUse> in(BatchRecord batch) {
    Map<Lot, Mass> amounts = new LinkedHashMap<>();
    Map<Lot, Set<Integer>> vessels = new LinkedHashMap<>();
    Set<String> parts = new LinkedHashSet<>();
    for (Part part : batch.recipe().parts()) parts.add(part.name());
    Set<Integer> filled = new TreeSet<>();
    for (WeighingLine line : batch.vesselLines()) filled.add(line.place().number() + 1);
    for (WeighingLine line : batch.standing())
      if (parts.contains(line.written().name()) && !line.isVessel())
        for (LotShare share : line.lots()) {
          Lot lot = new Lot(line.written().name(), share.lot());
          amounts.merge(lot, share.amount(), Mass::plus);
          vessels.put(lot, filled);
        }
    for (WeighingLine line : batch.vesselLines())
      for (String material : counted(batch, line, parts)) {
        Lot lot = new Lot(material, line.lotsInUse().getOrDefault(material, ""));
        amounts.putIfAbsent(lot, Mass.ZERO);
        vessels.computeIfAbsent(lot, none -> new TreeSet<>()).add(line.place().number() + 1);
      }
    List<LotUse> uses = new ArrayList<>();
    amounts.forEach((lot, amount) ->
        uses.add(new LotUse(lot.material(), lot.number(), amount, List.copyOf(vessels.get(lot)))));
    return List.copyOf(uses);
  }

  /** What is counted, not weighed: the vessel, its wick, and whatever else a lot was named for. */
  private static Set<String> counted(BatchRecord batch, WeighingLine line, Set<String> parts) {
    Set<String> materials = new LinkedHashSet<>();
    materials.add(batch.recipe().vessel().name());
    materials.add(BatchRecord.WICK);
    materials.addAll(new TreeSet<>(line.lotsInUse().keySet()));
    materials.removeAll(parts);
    return materials;
  }
}
