package candlebench.station.link;

import candlebench.protocol.ScaleFormat;
import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.time.Duration;
import java.util.Optional;

/**
 * What is known of a scale before it is heard.
 *
 * @param line where it is reached
 * @param name its name on the page and in the record, where it was given one
 * @param division its step, where that is not one of the last digit shown
 * @param capacity what it can carry
 * @param unit what it shows, for a scale that never names its unit
 * @param ask how often it is to be asked, for a scale that sends only when asked
 */
public record ScaleSettings(
    Line line,
    ScaleFormat format,
    Optional<String> name,
    Optional<Division> division,
    Optional<Mass> capacity,
    Optional<MassUnit> unit,
    Optional<Duration> ask) {

  /** A scale of which no more is known than where it is and what it speaks. */
  public static ScaleSettings of(Line line, ScaleFormat format) {
    return new ScaleSettings(
        line,
        format,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
