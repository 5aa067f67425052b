package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * How far a single package may fall short of its label in the United States: the maximum allowable variation (MAV).
 *
 * <p>Source: NIST Handbook 133, Appendix A, Table 2-5, packages labelled by weight, up to 2.48 lb; partly from memory, so it is
 * indicative only: the handbook in force decides. Seen in print: 8 oz → 7/16 oz, 3 oz → 1/4 oz, 113 g → 7 g. The column of the unit on
 * the label counts; the European table is another one and must not stand in for it.
 */
public final class AllowableVariation {

  /**
   * Labels up to so much, and what one package may lack.
   *
   * @param sixteenths of an ounce; zero where the table goes on in pounds
   */
  private record Band(
      String upToPounds, String upToGrams, int sixteenths, String pounds, String grams) {}

  private static final List<Band> BANDS = List.of(
      new Band("0.12", "54", 2, "0.008", "3.6"),
      new Band("0.18", "81", 3, "0.012", "5.4"),
      new Band("0.26", "117", 4, "0.016", "7.2"),
      new Band("0.34", "154", 5, "0.020", "9.0"),
      new Band("0.46", "208", 6, "0.024", "10.8"),
      new Band("0.58", "263", 7, "0.028", "12.7"),
      new Band("0.70", "317", 8, "0.032", "14.5"),
      new Band("0.84", "381", 9, "0.036", "16.3"),
      new Band("0.94", "426", 10, "0.040", "18.1"),
      new Band("1.08", "489", 11, "0.044", "19.9"),
      new Band("1.26", "571", 0, "0.048", "21.7"),
      new Band("1.40", "635", 0, "0.052", "23.5"),
      new Band("1.54", "698", 0, "0.056", "25.4"),
      new Band("1.70", "771", 0, "0.060", "27.2"),
      new Band("1.88", "852", 0, "0.064", "29.0"),
      new Band("2.14", "970", 0, "0.070", "31.7"),
      new Band("2.48", "1120", 0, "0.078", "35.3"));

  private AllowableVariation() {}

  /** The variation allowed to a label stated in ounces. */
  public static Optional<Mass> ofOunces(Mass label) {
    if (label.isLessThan(pounds("0.08"))) return Optional.of(label.times(1, 10));
    for (Band band : BANDS)
      if (!label.isMoreThan(pounds(band.upToPounds())))
        return Optional.of(
            band.sixteenths() == 0
                ? pounds(band.pounds())
                : Mass.of(BigDecimal.ONE, MassUnit.OUNCE).times(band.sixteenths(), 16));
    return Optional.empty();
  }

  /** The variation allowed to a label stated in grams. */
  public static Optional<Mass> ofGrams(Mass label) {
    if (label.isLessThan(Mass.ofGrams("36"))) return Optional.of(label.times(1, 10));
    for (Band band : BANDS)
      if (!label.isMoreThan(Mass.ofGrams(band.upToGrams())))
        return Optional.of(Mass.ofGrams(band.grams()));
    return Optional.empty();
  }

  private static Mass pounds(String pounds) {
    return Mass.of(pounds, MassUnit.POUND);
  }
}
