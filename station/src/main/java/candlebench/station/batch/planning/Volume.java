package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import java.math.BigDecimal;

/** An exact volume. It is no mass, and becomes one only through a density that the maker typed. */
public record Volume(BigDecimal millilitres) {

  public Volume {
    if (millilitres.signum() <= 0)
      throw new IllegalArgumentException("a volume is above zero, not " + millilitres + " mL");
    millilitres = millilitres.stripTrailingZeros();
  }

  public static Volume of(BigDecimal amount, VolumeUnit unit) {
    return new Volume(amount.multiply(unit.millilitres()));
  }

  /** What this volume of something so dense weighs, rounded once, half to even, to a picogram. */
  public Mass of(Density density) {
    return Mass.of(millilitres.multiply(density.gramsPerMillilitre()), MassUnit.GRAM);
  }

  @Override
  public String toString() {
    return millilitres.toPlainString() + " mL";
  }
}
