package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/**
 * How far a single prepackage may fall short of its label in the average system.
 *
 * <p>Source: Directive 76/211/EEC, Annex I 2.4, as amended by 78/891/EEC; the same table in UK SI 2006/659, OIML R 87 Table 1 and the
 * New Zealand Weights and Measures Regulations 1999. Percentages are rounded up to the next tenth of a gram. No law is quoted here:
 * which one binds the maker depends on where the candle is sold.
 */
public final class TolerableError {

  /** A band of labels up to so many grams: a percentage of the label, or so many grams. */
  private record Band(String upTo, String percent, String grams) {}

  private static final Mass LEAST = Mass.ofGrams("5");
  private static final Mass TENTH = Mass.ofGrams("0.1");

  private static final List<Band> BANDS = List.of(
      new Band("50", "9", ""),
      new Band("100", "", "4.5"),
      new Band("200", "4.5", ""),
      new Band("300", "", "9"),
      new Band("500", "3", ""),
      new Band("1000", "", "15"),
      new Band("10000", "1.5", ""));

  private TolerableError() {}

  /** The tolerable negative error of a label; none for labels the table does not reach (under 5 g, over 10 kg). */
  public static Optional<Mass> of(Mass label) {
    if (label.isLessThan(LEAST)) return Optional.empty();
    for (Band band : BANDS)
      if (!label.isMoreThan(Mass.ofGrams(band.upTo()))) return Optional.of(of(label, band));
    return Optional.empty();
  }

  private static Mass of(Mass label, Band band) {
    if (band.percent().isEmpty()) return Mass.ofGrams(band.grams());
    BigDecimal tenths = new BigDecimal(label.picograms())
        .multiply(new BigDecimal(band.percent()).movePointLeft(2))
        .divide(new BigDecimal(TENTH.picograms()), 0, RoundingMode.CEILING);
    return Mass.of(tenths.movePointLeft(1), MassUnit.GRAM);
  }
}
