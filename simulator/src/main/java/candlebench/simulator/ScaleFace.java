package candlebench.simulator;

import candlebench.protocol.WireLayout.Shown;
import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;

/**
 * One way a scale shows weights: a press on its unit key goes to the next.
 *
 * @param count how much the last digit counts by: 1, 2, 5 or 10
 */
public record ScaleFace(MassUnit unit, int decimals, int count) {

  public static ScaleFace grams(int decimals) {
    return new ScaleFace(MassUnit.GRAM, decimals, 1);
  }

  /** The step of its last digit. */
  public Division division() {
    return new Division(Mass.of(BigDecimal.valueOf(count).movePointLeft(decimals), unit));
  }

  Shown shown() {
    return new Shown(unit, decimals, 1);
  }
}
