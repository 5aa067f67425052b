package candlebench.station.batch.planning;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.LoadBasis;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The loads of a recipe for round amounts, to hang beside the bench: for so much wax, and for so many vessels from one pot. Only what
 * the first pot and its scale have room for.
 */
public record BenchChart(WorkshopPlan plan, List<Row> forWax, List<Row> forVessels) {

  /** What of each part. */
  public record Row(String amount, List<Cell> parts, Mass total) {}

  /**
   * A part as its scale shows it.
   *
   * @param fineEnough whether the scale planned for it can hold its tolerance at so little
   */
  public record Cell(Mass shown, boolean fineEnough) {}

  private static final List<Integer> GRAMS_OF_WAX =
      List.of(100, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 3000, 4000);
  private static final List<Integer> VESSELS = List.of(1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 18, 24);

  public static BenchChart of(WorkshopPlan plan) {
    Pot pot = plan.charges().get(0).pot();
    List<Row> forWax = GRAMS_OF_WAX.stream()
        .map(grams -> row(plan, grams + " g", ofWax(plan.order().formula(), grams)))
        .filter(row -> fits(plan, pot, row.total()))
        .toList();
    List<Row> forVessels = Stream.concat(
            VESSELS.stream(), plan.charges().stream().map(PlannedCharge::vessels))
        .distinct()
        .sorted()
        .map(vessels -> row(
            plan,
            String.valueOf(vessels),
            plan.order().sums(plan.order().formula(), vessels).targets()))
        .filter(row -> fits(plan, pot, row.total()))
        .toList();
    return new BenchChart(plan, forWax, forVessels);
  }

  private static List<Mass> ofWax(Formula formula, int grams) {
    Mass wax = Mass.ofGrams(String.valueOf(grams));
    Fraction perWax = formula.totalPerWax();
    List<Mass> masses = new ArrayList<>();
    for (Ingredient each : formula.ingredients()) {
      boolean ofWax = each.load().basis() == LoadBasis.OF_WAX;
      masses.add((ofWax ? each.load().share() : each.load().share().times(perWax)).of(wax));
    }
    return masses;
  }

  private static Row row(WorkshopPlan plan, String amount, List<Mass> exact) {
    List<PlannedWeighing> ways = plan.charges().get(0).weighings();
    List<Cell> cells = new ArrayList<>();
    Mass total = Mass.ZERO;
    for (int i = 0; i < exact.size(); i++) {
      BenchScale scale = ways.get(i).scale();
      Division division = scale.division();
      Fraction tolerance = ways.get(i).part().tolerance().narrowest(exact.get(i));
      cells.add(new Cell(
          division.nearest(exact.get(i)), new Fineness(scale, exact.get(i), tolerance).suffices()));
      total = total.plus(exact.get(i));
    }
    return new Row(amount, List.copyOf(cells), total);
  }

  private static boolean fits(WorkshopPlan plan, Pot pot, Mass contents) {
    return pot.holds(contents)
        && plan.charges().get(0).scale().carries(pot.empty().plus(contents));
  }
}
