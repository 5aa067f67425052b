package candlebench.station.batch.planning;

import candlebench.station.batch.Load;
import java.util.Optional;

/**
 * The most of something that a supplier or the product's own tests allow.
 *
 * @param most with its meaning: of the wax, or of the total
 * @param reason why this batch may go above it; without one, it may not
 */
public record LoadLimit(Load most, Optional<String> reason) {

  public LoadLimit {
    if (reason.filter(String::isBlank).isPresent())
      throw new IllegalArgumentException("a reason to go above a limit says something");
  }
}
