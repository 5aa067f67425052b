package candlebench.station.record;

import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchAbandoned;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.BatchScrapped;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.PotReweighed;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.Prepared;
import candlebench.station.guidance.GuidanceEvent.TemperatureNoted;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.GuidanceEvent.WaitEnded;
import candlebench.station.guidance.GuidanceEvent.WaitStarted;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * When something of a batch happened that is no weighing of a part or vessel.
 *
 * @param wall ISO 8601 with offset
 * @param about a weight, or a temperature in degrees Celsius, as text; may be empty
 */
public record Moment(long entry, String wall, What what, String about) {

  /** The kinds, each a few words of the page. */
  public enum What {
    STARTED,
    PREPARED,
    POT_WEIGHED,
    MELT_BEGAN,
    MELT_ENDED,
    POT_WEIGHED_AGAIN,
    MIX_BEGAN,
    MIX_ENDED,
    TEMPERATURE,
    ENDED
  }

  static Optional<Moment> of(Recorded recorded) {
    GuidanceEvent event = recorded.event();
    if (event instanceof BatchStarted) return at(recorded, What.STARTED, "");
    if (event instanceof Prepared) return at(recorded, What.PREPARED, "");
    if (event instanceof PotTared pot)
      return at(recorded, What.POT_WEIGHED, pot.tare().toString());
    if (event instanceof PotReweighed pot)
      return at(recorded, What.POT_WEIGHED_AGAIN, pot.gross().toString());
    if (event instanceof WaitStarted wait)
      return at(recorded, wait.what() == Wait.MELT ? What.MELT_BEGAN : What.MIX_BEGAN, "");
    if (event instanceof WaitEnded wait)
      return at(recorded, wait.what() == Wait.MELT ? What.MELT_ENDED : What.MIX_ENDED, "");
    if (event instanceof TemperatureNoted noted)
      return at(
          recorded,
          What.TEMPERATURE,
          BigDecimal.valueOf(noted.tenthsCelsius(), 1).toPlainString());
    if (event instanceof BatchDone
        || event instanceof BatchScrapped
        || event instanceof BatchAbandoned) return at(recorded, What.ENDED, "");
    return Optional.empty();
  }

  private static Optional<Moment> at(Recorded recorded, What what, String about) {
    return Optional.of(new Moment(recorded.entry(), recorded.wall(), what, about));
  }
}
