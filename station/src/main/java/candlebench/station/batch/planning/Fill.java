package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import java.math.BigDecimal;

/** How much goes into something up to its line, and how that is known. Each way says whether it is a weight or a capacity. */
public sealed interface Fill {

  Mass mass();

  /** The sum by which the weight is found. */
  String words();

  /** Weighed once, with the wax in use. */
  record Measured(Mass mass) implements Fill {

    @Override
    public String words() {
      return "measured";
    }
  }

  /**
   * The weight of water to the line, and the density of the mix. One gram of water is taken as one millilitre; at 20 °C it is 0.2 %
   * more, far under the uncertainty of a typed density.
   */
  record OfWater(Mass water, Density density) implements Fill {

    @Override
    public Mass mass() {
      return new Volume(new BigDecimal(water.picograms()).movePointLeft(12)).of(density);
    }

    @Override
    public String words() {
      return water + " of water × " + density;
    }
  }

  /** The volume to the line, and the density of the mix. */
  record OfCapacity(Volume capacity, Density density) implements Fill {

    @Override
    public Mass mass() {
      return capacity.of(density);
    }

    @Override
    public String words() {
      return capacity + " × " + density;
    }
  }
}
