package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Figures in words and digits. */
final class Wording {
  private static final int MASS_DECIMALS = 4;
  private static final int PERCENT_DECIMALS = 4;
  private static final int SEVERAL = 5;

  private Wording() {}

  /** Grams to at most four decimals, without trailing zeros: {@code 933.3333 g}. */
  static String grams(Mass mass) {
    return plain(new BigDecimal(mass.text(MassUnit.GRAM, MASS_DECIMALS))) + " g";
  }

  /** Per cent to at most four decimals: {@code 7.4074 %}. */
  static String percent(Fraction share) {
    return plain(new BigDecimal(share.percentText(PERCENT_DECIMALS))) + " %";
  }

  static String basis(LoadBasis basis) {
    return switch (basis) {
      case OF_WAX -> "of wax";
      case OF_TOTAL -> "of total";
    };
  }

  static String load(Load load) {
    return percent(load.share()) + " " + basis(load.basis());
  }

  /** A share as decimal text, to twelve decimals. */
  static String decimal(Fraction share) {
    return plain(new BigDecimal(share.numerator())
        .divide(new BigDecimal(share.denominator()), 12, RoundingMode.HALF_EVEN));
  }

  static String plain(BigDecimal number) {
    if (number.signum() == 0) return "0";
    BigDecimal shortest = number.stripTrailingZeros();
    return (shortest.scale() < 0 ? shortest.setScale(0) : shortest).toPlainString();
  }

  static String count(int count, String one, String many) {
    return count + " " + (count == 1 ? one : many);
  }

  /** How a batch is split: {@code 4 + 3 + 3 vessels}, or with many charges {@code 6 × 7 + 1 × 6 vessels}. */
  static String vessels(List<PlannedCharge> charges) {
    if (charges.size() == 1) return count(charges.get(0).vessels(), "vessel", "vessels");
    if (charges.size() <= SEVERAL)
      return charges.stream()
          .map(charge -> String.valueOf(charge.vessels()))
          .collect(Collectors.joining(" + ", "", " vessels"));
    TreeMap<Integer, Integer> alike = new TreeMap<>(Comparator.reverseOrder());
    for (PlannedCharge charge : charges) alike.merge(charge.vessels(), 1, Integer::sum);
    return alike.entrySet().stream()
        .map(each -> each.getValue() + " × " + each.getKey())
        .collect(Collectors.joining(" + ", "", " vessels"));
  }
}
