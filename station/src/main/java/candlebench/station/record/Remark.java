package candlebench.station.record;

import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Noted;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A note on a batch.
 *
 * @param text as it stands now, corrected where it was corrected
 */
public record Remark(
    long entry, String wall, String text, Noted written, List<Correction> corrections) {

  static List<Remark> in(List<Recorded> entries) {
    Map<Long, List<Correction>> corrections = Correction.byEntry(entries);
    List<Remark> remarks = new ArrayList<>();
    for (Recorded recorded : entries)
      if (recorded.event() instanceof Noted noted)
        remarks.add(of(recorded, noted, corrections.getOrDefault(recorded.entry(), List.of())));
    return List.copyOf(remarks);
  }

  private static Remark of(Recorded recorded, Noted noted, List<Correction> corrections) {
    String text = noted.text();
    for (Correction each : corrections)
      if (each.corrected().what() == Correctable.NOTE) text = each.corrected().now();
    return new Remark(recorded.entry(), recorded.wall(), text, noted, corrections);
  }
}
