package candlebench.station.link.find;

import candlebench.protocol.Candidate;
import candlebench.protocol.Heard;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleFormat;
import candlebench.station.link.ScaleUri;

/**
 * What a search on a line came to.
 *
 * @param heard what was heard, at the setting at which most of it was understood
 */
public record Found(Heard heard, Sending sending) {

  /** When a scale sends, as far as the search has shown. */
  public enum Sending {
    /** By itself, all the time. */
    BY_ITSELF,
    /** When it is asked. */
    WHEN_ASKED,
    /** Once its PRINT key is pressed or a load has come to rest: no use while pouring. */
    NOW_AND_THEN,
    /** Not at all. */
    NEVER
  }

  /** How the scale's own line is set. */
  public LineSettings line() {
    return heard.suggested();
  }

  /** Whether the unit must be said by hand if it speaks this format: no frame names one, or none did that was heard. */
  public static boolean needsUnit(Candidate candidate) {
    ScaleFormat format = candidate.format();
    boolean named = candidate
        .lastWeighed()
        .filter(weighed -> weighed.indication().unit().isPresent())
        .isPresent();
    return format.unitIsASetting() || !named && !format.unitMayBeBorrowed();
  }

  /** How to name the scale if it speaks this format; where no frame names a unit, that is still to be said. */
  public String uri(String device, ScaleFormat format) {
    return ScaleUri.serial(device, format, line(), sending == Sending.WHEN_ASKED);
  }
}
