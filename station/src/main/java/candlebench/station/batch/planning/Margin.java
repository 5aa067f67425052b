package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;

/** So much above or below something: as a weight, or as a share of it. */
public sealed interface Margin {

  /** How much it is of a weight, rounded once to a picogram. */
  Mass of(Mass whole);

  /** What share it is of a weight, exact. */
  Fraction shareOf(Mass whole);

  /** The same weight whatever the amount. */
  record Grams(Mass mass) implements Margin {

    public Grams {
      if (mass.isNegative()) throw new IllegalArgumentException("a margin is zero or more");
    }

    @Override
    public Mass of(Mass whole) {
      return mass;
    }

    @Override
    public Fraction shareOf(Mass whole) {
      return Fraction.ratio(mass, whole);
    }

    @Override
    public String toString() {
      return mass.toString();
    }
  }

  /** The same share of whatever amount. */
  record Share(Fraction share) implements Margin {

    public Share {
      if (share.isNegative() || share.compareTo(Fraction.ONE) > 0)
        throw new IllegalArgumentException("a margin is between 0 and 100 %");
    }

    @Override
    public Mass of(Mass whole) {
      return share.of(whole);
    }

    @Override
    public Fraction shareOf(Mass whole) {
      return share;
    }

    @Override
    public String toString() {
      return Wording.percent(share);
    }
  }
}
