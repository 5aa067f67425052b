package candlebench.station.batch;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Between which temperatures a wax is melted, takes its oil and is poured, by its supplier's sheet or by the maker's own tests.
 *
 * @param lot the lot of wax it is for; empty for any lot that has none of its own
 */
public record ProcessWindows(String lot, Map<Process, Window> windows) {

  public ProcessWindows {
    windows = Map.copyOf(windows);
  }

  /** What is done to the wax at a temperature. */
  public enum Process {
    MELT,
    OIL,
    POUR
  }

  /** In tenths of a degree Celsius, both ends within. */
  public record Window(int fromTenths, int toTenths) {

    public Window {
      if (fromTenths > toTenths)
        throw new IllegalArgumentException("a window is from the colder to the hotter end");
    }

    public boolean holds(int tenths) {
      return tenths >= fromTenths && tenths <= toTenths;
    }
  }

  /** The window of a process for the lots of wax in use: a lot's own, or else the one for any lot. */
  public static Optional<Window> of(
      Process process, List<ProcessWindows> all, Iterable<String> lots) {
    for (String lot : lots)
      for (ProcessWindows each : all)
        if (!each.lot().isEmpty() && each.lot().equals(lot) && each.windows().containsKey(process))
          return Optional.of(each.windows().get(process));
    return all.stream()
        .filter(each -> each.lot().isEmpty() && each.windows().containsKey(process))
        .map(each -> each.windows().get(process))
        .findFirst();
  }
}
