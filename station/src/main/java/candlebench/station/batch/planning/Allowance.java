package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Fraction;

/** What a target is held to, under and over, before the target itself is known. */
public record Allowance(Margin under, Margin over) {

  /** The same either way. */
  public static Allowance of(Margin both) {
    return new Allowance(both, both);
  }

  public Tolerance of(Mass target) {
    return new Tolerance(under.of(target), over.of(target));
  }

  /** The share by which a scale is judged: the narrower side, or the other where one allows nothing. */
  public Fraction narrowest(Mass target) {
    Fraction below = under.shareOf(target);
    Fraction above = over.shareOf(target);
    if (below.isZero()) return above;
    if (above.isZero()) return below;
    return below.compareTo(above) < 0 ? below : above;
  }

  boolean allowsNothing() {
    return nothing(under) && nothing(over);
  }

  private static boolean nothing(Margin side) {
    return side.shareOf(Mass.ofGrams("1")).isZero();
  }

  @Override
  public String toString() {
    return under.equals(over) ? "±" + under : "−" + under + " +" + over;
  }
}
