package candlebench.station.record;

import java.util.List;
import java.util.Optional;

/**
 * What a candle's label says, short of the maker's own name and the chemical warnings of its oil.
 *
 * <p>The three safety messages are those that ASTM F2058 and EN 15494 have in common (subject matter only; the words are ours), and the
 * wick is trimmed as the recipe says. Where the candle is sold, law and standard set words, symbols, sizes and languages:
 * {@link #DEFERENCE} says so on the sheet itself.
 *
 * @param product as the recipe names it
 * @param code the batch's code
 * @param trim the line on the wick; none where the recipe gives no length
 */
public record CandleLabel(String product, String code, NetWeightLabel net, Optional<String> trim) {

  /** The word under which the messages stand. */
  public static final String SIGNAL_WORD = "WARNING";

  public static final List<String> SAFETY = List.of(
      "Stay with a burning candle. Put it out before you leave the room or go to sleep.",
      "Keep it well away from anything that can catch fire.",
      "Burn it only where children and pets cannot reach it.");

  public static final String DEFERENCE =
      "Check before use: the law where the candle is sold, and your wax and oil suppliers' sheets, decide the wording, symbols, sizes and"
          + " languages of a label, and what else it must say.";

  public static CandleLabel of(String product, String code, NetWeightLabel net, String trim) {
    return new CandleLabel(
        product,
        code,
        net,
        trim.isBlank()
            ? Optional.empty()
            : Optional.of("Before each lighting, trim the wick to " + trim.strip() + "."));
  }
}
