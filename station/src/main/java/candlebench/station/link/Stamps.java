package candlebench.station.link;

import candlebench.shared.Stamp;

/** The clock at the shell's edge: wall time for the record, elapsed time for durations. Safe from any thread. */
@FunctionalInterface
public interface Stamps {
  Stamp now();
}
