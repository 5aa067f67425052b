package candlebench.station.record;

import candlebench.station.guidance.GuidanceEvent.Corrected;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A correction, in its place in the journal: it stands beside the entry it names.
 *
 * @param entry the number of its own entry
 */
public record Correction(long entry, String wall, Corrected corrected) {

  static Correction of(Recorded recorded, Corrected corrected) {
    return new Correction(recorded.entry(), recorded.wall(), corrected);
  }

  /** All corrections among entries, by the entry they correct, in the order in which they were made. */
  static Map<Long, List<Correction>> byEntry(List<Recorded> entries) {
    Map<Long, List<Correction>> all = new LinkedHashMap<>();
    for (Recorded recorded : entries)
      if (recorded.event() instanceof Corrected corrected)
        all.computeIfAbsent(corrected.entry(), none -> new ArrayList<>())
            .add(of(recorded, corrected));
    return all;
  }
}
