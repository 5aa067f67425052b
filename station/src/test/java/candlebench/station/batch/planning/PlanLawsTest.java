package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.Loss;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Waits;
import candlebench.station.batch.Way;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds of every plan. */
class PlanLawsTest {
  private static final Allowance ONE_PERCENT =
      Allowance.of(new Margin.Share(Fraction.percent("1")));
  private static final String[] ADDITIVES = {"1", "0.3", "0.05", "2.75"};

  private static Ingredient part(String name, PartKind kind, String percent, LoadBasis basis) {
    return new Ingredient(
        name,
        kind,
        Way.usual(kind),
        new Load(Fraction.percent(percent), basis),
        ONE_PERCENT,
        Optional.empty(),
        List.of());
  }

  /** A wax, so many additives of which every other is stated the other way, and an oil. */
  private static Formula formula(int percent, LoadBasis basis, int additives) {
    List<Ingredient> parts = new ArrayList<>();
    parts.add(part("wax", PartKind.WAX, "100", LoadBasis.OF_WAX));
    for (int i = 0; i < additives; i++)
      parts.add(part("additive " + i, PartKind.ADDITIVE, ADDITIVES[i], LoadBasis.values()[i % 2]));
    parts.add(part("oil", PartKind.OIL, String.valueOf(percent), basis));
    return new Formula("law", 1, "law", parts, Optional.empty(), Waits.NONE, "", List.of());
  }

  private static PlanOrder order(Formula formula, int vessels, String fill, Charges charges) {
    return new PlanOrder(
        formula,
        new Vessel(
            "glass",
            new Fill.Measured(Mass.ofGrams(fill)),
            ONE_PERCENT,
            Optional.empty(),
            Mass.ZERO),
        List.of(
            new Pot("A", Mass.ofGrams("450"), Optional.empty()),
            new Pot(
                "B", Mass.ofGrams("512.5"), Optional.of(new Fill.Measured(Mass.ofGrams("1900"))))),
        Optional.of(new Pot("cup", Mass.ofGrams("40"), Optional.empty())),
        List.of(scale("coarse", "5000", "1"), scale("fine", "600", "0.01")),
        vessels,
        new Loss(Mass.ofGrams("7.3"), Mass.ofGrams("0.35")),
        charges,
        new Margin.Share(Fraction.percent("10")));
  }

  private static BenchScale scale(String name, String capacity, String division) {
    Mass step = Mass.ofGrams(division);
    return new BenchScale(
        name, Mass.ofGrams(capacity), new Division(step), Optional.empty(), step, Mass.ZERO);
  }

  @ParameterizedTest
  @EnumSource
  void exact_targets_sum_exactly_and_each_shown_one_is_within_half_a_division(LoadBasis basis) {
    int plans = 0;
    for (int percent = 1; percent <= 15; percent++)
      for (int additives = 0; additives <= 4; additives++) {
        Formula formula = formula(percent, basis, additives);
        List<Fraction> shares =
            formula.ingredients().stream().map(formula::ofTotal).toList();
        for (int vessels = 1; vessels <= 100; vessels++) {
          PlanOrder order = order(formula, vessels, "252.3", new Charges.Exactly(1));
          check(PlannedCharge.of(order, order.pots().get(0), vessels), shares);
          plans++;
        }
      }
    assertThat(plans).isEqualTo(15 * 5 * 100);
  }

  private static void check(PlannedCharge charge, List<Fraction> shares) {
    Mass expected = Mass.ofGrams("252.65").times(charge.vessels()).plus(Mass.ofGrams("7.3"));
    Mass sum = Mass.ZERO;
    for (int i = 0; i < shares.size(); i++) {
      PlannedWeighing each = charge.weighings().get(i);
      long step = each.scale().division().step().picograms();
      long off = Math.abs(each.shown().picograms() - each.exact().picograms());
      long fromShare = Math.abs(shares.get(i).of(expected).minus(each.exact()).picograms());
      boolean lawful =
          2 * off <= step && each.shown().picograms() % step == 0 && fromShare <= shares.size();
      if (!lawful) throw new AssertionError(each + " of " + charge.vessels() + " vessels");
      sum = sum.plus(each.exact());
    }
    assertThat(sum).isEqualTo(expected);
  }

  @ParameterizedTest
  @ValueSource(longs = {20261125, 41})
  void charges_hold_all_vessels_fit_and_are_even_but_for_what_pots_cannot_take(long seed) {
    Random random = new Random(seed);
    for (int run = 0; run < 60; run++) {
      Formula formula =
          formula(1 + random.nextInt(15), LoadBasis.values()[random.nextInt(2)], random.nextInt(5));
      int vessels = 1 + random.nextInt(100);
      String fill = String.valueOf(85 + random.nextInt(300));
      WorkshopPlan plan = WorkshopPlan.of(order(formula, vessels, fill, new Charges.Fewest()));
      List<Integer> counts = plan.charges().stream().map(PlannedCharge::vessels).toList();
      assertThat(counts.stream().mapToInt(count -> count).sum()).isEqualTo(vessels);
      assertThat(plan.charges()).allMatch(PlannedCharge::hasRoomForCure);
      for (PlannedCharge each : plan.charges()) {
        assertThat(each.gross().plus(each.cure()))
            .isLessThanOrEqualTo(each.scale().capacity());
        assertThat(each.pot().holds(each.contents().plus(each.cure()))).isTrue();
      }
      evenButForFullPots(plan);
      Mass parts = plan.parts().stream().map(PlannedPart::exact).reduce(Mass.ZERO, Mass::plus);
      assertThat(parts).isEqualTo(plan.total());
      assertThat(plan.total()).isEqualTo(plan.fills().plus(plan.losses()));
      assertThat(plan.losses())
          .isEqualTo(
              Mass.ofGrams("7.3").times(counts.size()).plus(Mass.ofGrams("0.35").times(vessels)));
    }
  }

  /** A charge with two vessels fewer than another has a pot that takes no more. */
  private static void evenButForFullPots(WorkshopPlan plan) {
    int most = plan.charges().stream().mapToInt(PlannedCharge::vessels).max().orElseThrow();
    for (PlannedCharge each : plan.charges())
      if (each.vessels() < most - 1)
        assertThat(
                PlannedCharge.of(plan.order(), each.pot(), each.vessels() + 1).hasRoomForCure())
            .isFalse();
  }

  @Test
  void no_fewer_charges_would_fit() {
    for (int vessels : IntStream.of(5, 14, 33).toArray()) {
      Formula formula = formula(8, LoadBasis.OF_WAX, 1);
      WorkshopPlan plan = WorkshopPlan.of(order(formula, vessels, "252.3", new Charges.Fewest()));
      int count = plan.charges().size();
      if (count == 1) continue;
      WorkshopPlan fewer =
          WorkshopPlan.of(order(formula, vessels, "252.3", new Charges.Exactly(count - 1)));
      assertThat(fewer.charges()).anyMatch(charge -> !charge.hasRoomForCure());
    }
  }
}
