package candlebench.station.batch;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;

/**
 * One part of a charge, as its recipe states it.
 *
 * @param name the material, as the maker calls it
 * @param load its share: of the wax or of the total; a wax states its share of all wax
 * @param limit the most that its supplier and the product's tests allow, in the same basis; zero where none is known
 */
public record Part(
    String name, PartKind kind, Way way, Load load, Tolerance tolerance, Fraction limit) {

  public Part {
    if (name.isBlank())
      throw new IllegalArgumentException("a part needs a name, such as the wax's trade name");
    if (kind == PartKind.WAX && load.basis() != LoadBasis.OF_WAX)
      throw new IllegalArgumentException("a wax states its share of the wax: " + name);
    if (limit.isNegative())
      throw new IllegalArgumentException("a limit is zero (not known) or more: " + name);
  }

  /** A wax that is all of the wax, held to so many grams either way. */
  public static Part wax(String name, Way way, String grams) {
    return new Part(
        name,
        PartKind.WAX,
        way,
        new Load(Fraction.ONE, LoadBasis.OF_WAX),
        Tolerance.ofGrams(grams, grams),
        Fraction.ZERO);
  }

  /** The same, weighed another way. */
  public Part weighed(Way other) {
    return new Part(name, kind, other, load, tolerance, limit);
  }

  public boolean isWax() {
    return kind == PartKind.WAX;
  }

  /** This part of so much wax in so much total. */
  Mass of(Mass wax, Mass total) {
    return load.share().of(load.basis() == LoadBasis.OF_WAX ? wax : total);
  }
}
