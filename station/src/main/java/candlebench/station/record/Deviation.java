package candlebench.station.record;

/**
 * Something that did not go by the recipe, or that whoever reads the sheet has to know.
 *
 * @param about the part, vessel or material it concerns; may be empty
 * @param amount how much, as text with its unit, where that says something; may be empty
 * @param choice what was chosen, in the word of the event; may be empty
 * @param reason what the maker gave as reason; may be empty
 */
public record Deviation(
    long entry, String wall, Kind kind, String about, String amount, String choice, String reason) {

  /** The kinds, each a sentence of the page. */
  public enum Kind {
    OVER_POURED,
    OVER_GONE,
    REMEDY,
    OUT_OF_TOLERANCE,
    OVER_LIMIT,
    BY_HAND,
    TAKEN_BACK,
    REOPENED,
    PAN_DIFFERED,
    NOT_WEIGHED_AGAIN,
    LOT_CHANGED,
    LOT_UNKNOWN,
    TEMPERATURE_OUTSIDE,
    MIX_SPILT,
    MIX_SHORT,
    VESSELS_LEFT_OUT,
    SCRAPPED,
    GIVEN_UP
  }
}
