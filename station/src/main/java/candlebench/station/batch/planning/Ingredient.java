package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Way;
import java.util.List;
import java.util.Optional;

/**
 * One part as a plan file states it.
 *
 * @param load a wax states its share of all wax
 * @param limit of a wax: the most oil that it holds, all oils together; of any other part: its supplier's maximum
 */
public record Ingredient(
    String name,
    PartKind kind,
    Way way,
    Load load,
    Allowance tolerance,
    Optional<LoadLimit> limit,
    List<Sensitiser> sensitisers) {

  private static final Fraction LEAST = Fraction.of(1, 1_000_000);

  public Ingredient {
    sensitisers = List.copyOf(sensitisers);
    if (name.isBlank())
      throw new IllegalArgumentException("a part needs a name, such as the wax's trade name");
    if (load.share().compareTo(LEAST) < 0)
      throw new IllegalArgumentException(
          "a share under 0.0001 % cannot be weighed: leave the part out");
    if (tolerance.allowsNothing())
      throw new IllegalArgumentException("a tolerance of nothing cannot be weighed");
    if (kind == PartKind.WAX && load.basis() != LoadBasis.OF_WAX)
      throw new IllegalArgumentException("a wax states its share of the wax");
  }

  public boolean isWax() {
    return kind == PartKind.WAX;
  }

  public boolean isOil() {
    return kind == PartKind.OIL;
  }

  /** The same figure, meant the other way; none where a total could not hold it. */
  Optional<Ingredient> meantOtherwise() {
    LoadBasis other = load.basis() == LoadBasis.OF_WAX ? LoadBasis.OF_TOTAL : LoadBasis.OF_WAX;
    if (isWax() || load.share().compareTo(Fraction.ONE) >= 0) return Optional.empty();
    return Optional.of(new Ingredient(
        name, kind, way, new Load(load.share(), other), tolerance, limit, sensitisers));
  }

  Tolerance toleranceAt(Mass target) {
    return tolerance.of(target);
  }
}
