package candlebench.station.link.find;

import candlebench.protocol.LineSettings;
import candlebench.station.link.LinkReport;
import java.util.Optional;

/**
 * How far a search has come.
 *
 * @param line how the line is set now
 * @param found what it came to, once it is over
 * @param trouble why it could not be made at all, if so
 */
public record Search(
    Doing doing, LineSettings line, Optional<Found> found, Optional<LinkReport> trouble) {

  /** What is being done. */
  public enum Doing {
    LISTENING,
    ASKING,
    /** For someone to press PRINT, or to put something on the pan. */
    WAITING_FOR_PRINT
  }

  public boolean isOver() {
    return found.isPresent() || trouble.isPresent();
  }
}
