package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchAbandoned;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.BatchScrapped;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.LotChanged;
import candlebench.station.guidance.GuidanceEvent.Noted;
import candlebench.station.guidance.GuidanceEvent.PotTaken;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Sorts a record's entries by batch, where several pots take turns: an entry is of the batch that was in hand, a remark or a correction of
 * the batch it names, and a change of lot of every batch that runs.
 */
public final class PotEntries {
  private final Map<String, List<Recorded>> batches = new LinkedHashMap<>();
  private final Set<String> running = new LinkedHashSet<>();
  private String inHand = "";

  /** The entries of one batch among those from its start on. */
  public static List<Recorded> of(String code, List<Recorded> entries) {
    PotEntries sorted = new PotEntries();
    entries.forEach(sorted::and);
    return sorted.batches.getOrDefault(code, List.of());
  }

  /** Batches that have ended are forgotten when the next one starts. */
  public void and(Recorded recorded) {
    GuidanceEvent event = recorded.event();
    if (event instanceof BatchStarted started) begin(started.code());
    if (event instanceof PotTaken taken) inHand = taken.batch();
    for (String code : codes(event)) batches.get(code).add(seenBy(code, recorded));
    if (event instanceof BatchDone
        || event instanceof BatchScrapped
        || event instanceof BatchAbandoned) running.remove(inHand);
  }

  private void begin(String code) {
    batches.keySet().retainAll(running);
    batches.put(code, new ArrayList<>());
    running.add(code);
    inHand = code;
  }

  private List<String> codes(GuidanceEvent event) {
    if (event instanceof Noted noted && batches.containsKey(noted.batch()))
      return List.of(noted.batch());
    if (event instanceof Corrected corrected && batches.containsKey(corrected.batch()))
      return List.of(corrected.batch());
    if (!batches.containsKey(inHand)) return List.of();
    if (!(event instanceof LotChanged)) return List.of(inHand);
    Set<String> all = new LinkedHashSet<>(running);
    all.add(inHand);
    return List.copyOf(all);
  }

  /** What was poured of a lot before it changed went into the pot in hand alone. */
  private Recorded seenBy(String code, Recorded recorded) {
    if (code.equals(inHand) || !(recorded.event() instanceof LotChanged changed)) return recorded;
    LotChanged elsewhere = new LotChanged(
        changed.at(),
        changed.material(),
        changed.from(),
        changed.to(),
        Mass.ZERO,
        changed.person());
    return new Recorded(recorded.entry(), recorded.wall(), elsewhere);
  }

  /** Whether a batch is among those that run, or that ended last. */
  public boolean has(String code) {
    return batches.containsKey(code);
  }

  /** The entries of those that have ended, which the next start of a batch forgets. */
  public List<List<Recorded>> ended() {
    return batches.entrySet().stream()
        .filter(each -> !running.contains(each.getKey()))
        .map(each -> List.copyOf(each.getValue()))
        .toList();
  }

  /** All of them, each with its entries so far. */
  public List<List<Recorded>> all() {
    return batches.values().stream().map(List::copyOf).toList();
  }
}
