package candlebench.station.view;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Masses as text in the maker's unit: rounded to the scale's division, with no more decimals than it takes to show it. */
record Figures(MassUnit unit, Division division) {
  private static final int MOST_DECIMALS = 5;

  /** A mass that is compared with what the scale shows. */
  String text(Mass mass) {
    return withoutMinusZero(division.nearest(mass).text(unit, decimals()));
  }

  /** An exact target, shown beside the one rounded to the division: two decimals more, without idle zeros. */
  String exact(Mass mass) {
    BigDecimal full = new BigDecimal(mass.text(unit, decimals() + 2));
    BigDecimal bare = full.stripTrailingZeros();
    return bare.setScale(Math.max(bare.scale(), decimals())).toPlainString();
  }

  private int decimals() {
    int decimals = 0;
    BigDecimal step = new BigDecimal(division.step().text(unit, 12));
    while (decimals < MOST_DECIMALS
        && step.compareTo(BigDecimal.ONE.movePointLeft(decimals)) < 0
        && step.setScale(decimals, RoundingMode.DOWN).signum() == 0) decimals++;
    return decimals;
  }

  private static String withoutMinusZero(String text) {
    return text.startsWith("-") && new BigDecimal(text).signum() == 0 ? text.substring(1) : text;
  }
}
