package candlebench.station.batch;

import java.util.List;
import java.util.Optional;

/**
 * How a product is made.
 *
 * @param id short and lasting, such as {@code harbour-lane}
 * @param parts in the order in which they go into the pot
 * @param fillsVessels whether vessels are filled on the scale; where not, the batch ends in the pot
 * @param trim the reminder for the wick, as the maker wants to read it; empty for none
 */
public record Recipe(
    String id,
    String name,
    List<Part> parts,
    VesselKind vessel,
    boolean fillsVessels,
    Loss loss,
    Waits waits,
    String trim)
    implements Product {

  public Recipe {
    parts = List.copyOf(parts);
    if (parts.isEmpty())
      throw new IllegalArgumentException("a recipe needs at least one part: " + id);
    Fraction wax = shares(parts, PartKind.WAX, LoadBasis.OF_WAX);
    Fraction ofTotal = ofTotal(parts);
    if (!wax.equals(Fraction.ONE) && !(wax.isZero() && ofTotal.equals(Fraction.ONE)))
      throw new IllegalArgumentException(
          "the waxes of " + id + " sum to " + wax.percentText(2) + " % of the wax: make it 100 %");
    if (wax.equals(Fraction.ONE) && ofTotal.compareTo(Fraction.ONE) >= 0)
      throw new IllegalArgumentException("nothing is left for the wax of " + id);
  }

  /** The same for any number of vessels. */
  @Override
  public Recipe forVessels(int vessels) {
    return this;
  }

  @Override
  public Optional<String> refusal(int vessels) {
    return Optional.empty();
  }

  /** What all parts other than wax take, as a share of the wax. */
  Fraction addedToWax() {
    Fraction sum = Fraction.ZERO;
    for (Part part : parts)
      if (!part.isWax() && part.load().basis() == LoadBasis.OF_WAX)
        sum = sum.plus(part.load().share());
    return sum;
  }

  /** What all parts stated of the total take. */
  Fraction ofTotal() {
    return ofTotal(parts);
  }

  /** How much one gram of wax makes: W = T (1-b)/(1+a), turned round. Zero where there is no wax. */
  public Fraction totalPerWax() {
    Fraction left = Fraction.ONE.minus(ofTotal());
    return left.isZero() ? Fraction.ZERO : Fraction.ONE.plus(addedToWax()).dividedBy(left);
  }

  private static Fraction shares(List<Part> parts, PartKind kind, LoadBasis basis) {
    Fraction sum = Fraction.ZERO;
    for (Part part : parts)
      if (part.kind() == kind && part.load().basis() == basis)
        sum = sum.plus(part.load().share());
    return sum;
  }

  private static Fraction ofTotal(List<Part> parts) {
    Fraction sum = Fraction.ZERO;
    for (Part part : parts)
      if (part.load().basis() == LoadBasis.OF_TOTAL) sum = sum.plus(part.load().share());
    return sum;
  }
}
