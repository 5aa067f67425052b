package candlebench.station.guidance;

import candlebench.station.batch.PotShare;
import candlebench.station.guidance.GuidanceEvent.WorkDivided;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What is made in several pots that take turns. Each pot's share is a batch of its own, with its own code, weights and vessels.
 *
 * @param begun the codes of the shares that were begun, by their number from zero
 * @param ended whether no more are begun
 */
public record Work(
    WorkDivided divided, Map<String, String> lots, Map<Integer, String> begun, boolean ended) {

  public Work {
    lots = Map.copyOf(lots);
    begun = Map.copyOf(begun);
  }

  static Work of(WorkDivided divided) {
    return new Work(divided, divided.lots(), Map.of(), false);
  }

  /** The numbers of the shares that are still to be begun, in order. */
  public List<Integer> toCome() {
    List<Integer> left = new ArrayList<>();
    for (int i = 0; i < divided.shares().size() && !ended; i++)
      if (!begun.containsKey(i)) left.add(i);
    return left;
  }

  public PotShare share(int number) {
    return divided.shares().get(number);
  }

  /** The pot that a batch is made in, if it is of this work. */
  public Optional<String> potOf(String code) {
    return begun.entrySet().stream()
        .filter(each -> each.getValue().equals(code))
        .map(each -> share(each.getKey()).pot())
        .findFirst();
  }

  Work begun(int share, String code) {
    Map<Integer, String> more = new TreeMap<>(begun);
    more.put(share, code);
    return new Work(divided, lots, more, ended);
  }

  Work takingFrom(String material, String lot) {
    Map<String, String> changed = new TreeMap<>(lots);
    changed.put(material, lot);
    return new Work(divided, changed, begun, ended);
  }

  Work end() {
    return new Work(divided, lots, begun, true);
  }
}
