package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.Loss;
import candlebench.station.batch.Part;
import candlebench.station.batch.ProcessWindows;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.VesselKind;
import candlebench.station.batch.Waits;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A recipe as a plan file states it: with tolerances that may be shares, limits each with its own meaning, and sensitisers.
 *
 * @param version counted up by the maker at every change, so that a batch tells which one it was made by
 * @param windows between which temperatures the wax is worked, for any lot and for single ones
 * @param tested the load that the product was tested with, all oils together
 */
public record Formula(
    String id,
    int version,
    String name,
    List<Ingredient> ingredients,
    Optional<LoadLimit> tested,
    Waits waits,
    String trim,
    List<ProcessWindows> windows) {

  /** More parts than this are surely a slip (common practice, no source). */
  static final int MOST_PARTS = 40;

  /** Where a candle is less wax than this, a figure was mistyped (common practice, no source). */
  private static final Fraction MOST_PER_WAX = Fraction.of(10, 1);

  public Formula {
    ingredients = List.copyOf(ingredients);
    windows = List.copyOf(windows);
    if (version < 1) throw new IllegalArgumentException("versions are counted from 1");
    if (ingredients.stream().noneMatch(Ingredient::isWax))
      throw new IllegalArgumentException("a recipe needs a wax that the other parts go into");
    if (ingredients.size() > MOST_PARTS)
      throw new IllegalArgumentException("a recipe has at most " + MOST_PARTS + " parts");
    Set<String> names = new HashSet<>();
    for (Ingredient each : ingredients)
      if (!names.add(each.name()))
        throw new IllegalArgumentException(
            "two parts are called '" + each.name() + "': give each a name of its own");
    agree(ingredients);
    if (bare(id, name, ingredients).totalPerWax().compareTo(MOST_PER_WAX) > 0)
      throw new IllegalArgumentException(
          "less than a tenth of the total is wax: is a share of the wax meant, not of the total?");
  }

  /** One substance is of one category, whichever part brings it. */
  private static void agree(List<Ingredient> ingredients) {
    Map<String, Sensitiser> known = new HashMap<>();
    for (Ingredient part : ingredients)
      for (Sensitiser each : part.sensitisers()) {
        Sensitiser before = known.putIfAbsent(each.name(), each);
        if (before != null
            && !(before.category() == each.category()
                && before.specificLimit().equals(each.specificLimit())))
          throw new IllegalArgumentException("the sensitiser '" + each.name()
              + "' has two categories or two limits: give it the same in each part");
      }
  }

  /** How much one gram of wax makes. */
  Fraction totalPerWax() {
    return bare(id, name, ingredients).totalPerWax();
  }

  Fraction ofWax(Ingredient part) {
    return part.load().basis() == LoadBasis.OF_WAX
        ? part.load().share()
        : part.load().share().times(totalPerWax());
  }

  Fraction ofTotal(Ingredient part) {
    return part.load().basis() == LoadBasis.OF_TOTAL
        ? part.load().share()
        : part.load().share().dividedBy(totalPerWax());
  }

  /** A part's load, said in one meaning. */
  Fraction load(Ingredient part, LoadBasis basis) {
    return switch (basis) {
      case OF_WAX -> ofWax(part);
      case OF_TOTAL -> ofTotal(part);
    };
  }

  /** The load of all oils together. */
  Fraction oils(LoadBasis basis) {
    return ingredients.stream()
        .filter(Ingredient::isOil)
        .map(oil -> load(oil, basis))
        .reduce(Fraction.ZERO, Fraction::plus);
  }

  /**
   * The same with a part's figure meant the other way; with an oil, all oils that are stated like it. None where that would leave too
   * little for the wax.
   */
  Optional<Formula> meaningOtherwise(Ingredient part) {
    if (part.meantOtherwise().isEmpty()) return Optional.empty();
    List<Ingredient> changed = ingredients.stream()
        .map(each -> isStatedLike(part, each) ? each.meantOtherwise().orElse(each) : each)
        .toList();
    try {
      return Optional.of(new Formula(id, version, name, changed, tested, waits, trim, windows));
    } catch (IllegalArgumentException nothingLeft) {
      return Optional.empty();
    }
  }

  private static boolean isStatedLike(Ingredient part, Ingredient each) {
    boolean bothOils = part.isOil() && each.isOil();
    return each.equals(part) || bothOils && each.load().basis() == part.load().basis();
  }

  /** As the bench makes it, with each tolerance as it is at these targets. */
  Recipe recipe(Vessel vessel, Loss loss, List<Mass> targets) {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < ingredients.size(); i++) {
      Ingredient each = ingredients.get(i);
      Fraction limit = BenchLimit.of(this, each).orElse(Fraction.ZERO);
      parts.add(part(each, each.toleranceAt(targets.get(i)), limit));
    }
    Mass fill = vessel.fill().mass();
    VesselKind kind = new VesselKind(vessel.name(), fill, vessel.tolerance().of(fill));
    return new Recipe(id, name, parts, kind, true, loss, waits, trim);
  }

  /** The shares alone, for sums. */
  Recipe bare(Vessel vessel, Loss loss) {
    return bare(id, name, ingredients, vessel.fill().mass(), loss);
  }

  private static Recipe bare(String id, String name, List<Ingredient> ingredients) {
    return bare(id, name, ingredients, Mass.ofGrams("1"), Loss.NONE);
  }

  private static Recipe bare(
      String id, String name, List<Ingredient> ingredients, Mass fill, Loss loss) {
    Tolerance exact = new Tolerance(Mass.ZERO, Mass.ZERO);
    List<Part> parts =
        ingredients.stream().map(each -> part(each, exact, Fraction.ZERO)).toList();
    return new Recipe(
        id, name, parts, new VesselKind(name, fill, exact), true, loss, Waits.NONE, "");
  }

  private static Part part(Ingredient each, Tolerance tolerance, Fraction limit) {
    Load load = each.load();
    return new Part(each.name(), each.kind(), each.way(), load, tolerance, limit);
  }
}
