package candlebench.station.batch.planning;

import java.math.BigDecimal;

/**
 * A density as the maker typed it. There is none to look up: it depends on the wax, its oil and the temperature.
 *
 * @param gramsPerMillilitre between 0.5 and 1.5: waxes are in print from 0.77 (hot) to 0.98, oils from 0.85 to 1.2, and anything
 *     beyond these is surely a slip of the finger (common practice, no source)
 */
public record Density(BigDecimal gramsPerMillilitre) {
  private static final BigDecimal LEAST = new BigDecimal("0.5");
  private static final BigDecimal MOST = new BigDecimal("1.5");

  public Density {
    if (gramsPerMillilitre.compareTo(LEAST) < 0 || gramsPerMillilitre.compareTo(MOST) > 0)
      throw new IllegalArgumentException("a density of wax or oil lies between " + LEAST + " and "
          + MOST + " g/mL, not at " + gramsPerMillilitre.toPlainString());
    gramsPerMillilitre = gramsPerMillilitre.stripTrailingZeros();
  }

  @Override
  public String toString() {
    return gramsPerMillilitre.toPlainString() + " g/mL";
  }
}
