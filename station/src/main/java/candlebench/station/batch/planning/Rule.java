package candlebench.station.batch.planning;

import java.util.Locale;

/** The rules a plan is held to, each with where it comes from. */
public enum Rule {
  SCALE_CAPACITY(
      "What stands on the pan, pot included, is within the scale's capacity",
      "OIML R 76-1:2006, T.2.7.4: a subtractive tare takes room, it never adds any"),
  POT_ROOM("What is in a pot is within its room", "common practice, no source"),
  CURE_MARGIN(
      "Pot and scale have room left to cure an over-pour by more of the other parts",
      "common practice, no source"),
  WHOLE_VESSELS(
      "A batch is split into charges of whole vessels, as even as pots and scales allow",
      "common practice, no source"),
  LEARNT_LOSS(
      "What stays behind is as it was in finished batches without a spill",
      "this bench's own record"),
  STEP_WITHIN_TOLERANCE(
      "The scale's step is at most a third of the tolerance", "common practice, no source"),
  MINIMUM_WEIGHT(
      "A net weight is at least 2 × max(s, 0.41 d) / tolerance",
      "the form of USP <41>, with the maker's own tolerance in place of 0.10 %"),
  LEAST_LOAD("The load on the pan is at least the scale's Min", "OIML R 76-1:2006, Table 3"),
  ACCURACY_CLASS(
      "A scale's capacity and interval are those of its class", "OIML R 76-1:2006, Table 3"),
  NO_CLASS(
      "A scale without a class on its plate has promised nothing: its error in use is taken as that of class III with its e, or e = d",
      "OIML R 76-1:2006, Table 6 and 3.5.2, by assumption"),
  WAX_MAXIMUM("All oils together stay within what the wax holds", "the wax supplier's sheet"),
  SUPPLIER_MAXIMUM("A part stays within its supplier's maximum", "the supplier's sheet"),
  TESTED_LOAD(
      "All oils together stay within the load that the product was tested with",
      "the product's own tests"),
  SENSITISER_CLASSIFIES(
      "From this share on, a sensitiser classifies the finished candle (H317)",
      "Regulation (EC) 1272/2008 (CLP), Annex I, Table 3.4.5, or the substance's specific limit"),
  SENSITISER_NAMED(
      "From this share on, a sensitiser is named on the label (EUH208)",
      "Regulation (EC) 1272/2008 (CLP), Annex I, Table 3.4.6 and Annex II 2.8");

  private final String words;
  private final String source;

  Rule(String words, String source) {
    this.words = words;
    this.source = source;
  }

  /** What the rule asks, as a sentence without its full stop. */
  public String words() {
    return words;
  }

  public String source() {
    return source;
  }

  /** Its name in a plan's JSON: {@code scale-capacity}. */
  public String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  boolean isAboutRoom() {
    return this == SCALE_CAPACITY || this == POT_ROOM;
  }
}
