package candlebench.station.link;

import candlebench.shared.Stamp;
import java.time.Instant;

/** The clock at the shell's edge: wall time for the record, elapsed time for durations. */
@FunctionalInterface
public interface Stamps {
  Stamps SYSTEM = () -> new Stamp(Instant.now(), System.nanoTime());

  Stamp now();
}
