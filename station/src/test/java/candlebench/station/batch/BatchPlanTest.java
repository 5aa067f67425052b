package candlebench.station.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BatchPlanTest {

  private static BatchPlan three(Load load) {
    return new BatchPlan(Recipes.of("252", Loss.NONE, Recipes.WAX, Recipes.oil(load)), 3);
  }

  private static Mass grams(String grams) {
    return Mass.ofGrams(grams);
  }

  @Test
  void eight_per_cent_of_wax_for_756_g_is_700_and_56() {
    assertThat(three(Load.ofWax("8")).targets()).containsExactly(grams("700"), grams("56"));
  }

  @Test
  void eight_per_cent_of_total_for_756_g_is_695_52_and_60_48() {
    assertThat(three(Load.ofTotal("8")).targets()).containsExactly(grams("695.52"), grams("60.48"));
  }

  @Test
  void oil_follows_the_wax_that_is_really_there() {
    assertThat(three(Load.ofWax("8")).target(1, Map.of(0, grams("705")))).isEqualTo(grams("56.4"));
    assertThat(three(Load.ofTotal("8")).target(1, Map.of(0, grams("695.52"))))
        .isEqualTo(grams("60.48"));
    assertThat(three(Load.ofTotal("8")).target(1, Map.of(0, grams("92")))).isEqualTo(grams("8"));
  }

  @Test
  void a_second_wax_follows_the_first_by_the_blend() {
    Part soft = new Part(
        "soft", PartKind.WAX, Way.POURED, Load.ofWax("25"), Recipes.WAX.tolerance(), Fraction.ZERO);
    Part hard = new Part(
        "hard", PartKind.WAX, Way.POURED, Load.ofWax("75"), Recipes.WAX.tolerance(), Fraction.ZERO);
    BatchPlan plan =
        new BatchPlan(Recipes.of("252", Loss.NONE, soft, hard, Recipes.oil(Load.ofWax("8"))), 3);
    assertThat(plan.targets()).containsExactly(grams("175"), grams("525"), grams("56"));
    assertThat(plan.target(1, Map.of(0, grams("180")))).isEqualTo(grams("540"));
    assertThat(plan.target(2, Map.of(0, grams("180"), 1, grams("530")))).isEqualTo(grams("56.8"));
  }

  @Test
  void losses_are_grams_a_pot_and_grams_a_vessel() {
    BatchPlan plan = new BatchPlan(
        Recipes.of(
            "227", new Loss(grams("10"), grams("0.3")), Recipes.WAX, Recipes.oil(Load.ofWax("8"))),
        12);
    assertThat(plan.total()).isEqualTo(grams("2737.6"));
  }

  @Test
  void exact_targets_sum_exactly_and_shown_ones_to_within_half_a_division_each() {
    SplittableRandom random = new SplittableRandom(20261125);
    Division tenth = new Division(grams("0.1"));
    for (int percent = 1; percent <= 15; percent++)
      for (int vessels = 1; vessels <= 100; vessels++) {
        BatchPlan plan = new BatchPlan(drawn(percent, random), vessels);
        List<Mass> targets = plan.targets();
        assertThat(sum(targets)).isEqualTo(plan.total());
        Mass shown = sum(targets.stream().map(tenth::nearest).toList());
        Mass rounding = shown.minus(plan.total()).abs();
        assertThat(rounding.times(2)).isLessThanOrEqualTo(tenth.steps(targets.size()));
      }
  }

  private static Recipe drawn(int percent, SplittableRandom random) {
    List<Part> parts = new ArrayList<>();
    parts.add(Recipes.WAX);
    parts.add(Recipes.oil(load(percent, random)));
    for (int i = random.nextInt(5); i > 0; i--)
      parts.add(Recipes.part("additive " + i, PartKind.ADDITIVE, load(i, random)));
    String fill =
        new java.math.BigDecimal(random.nextInt(850, 4000)).movePointLeft(1).toString();
    return Recipes.of(fill, Loss.NONE, parts.toArray(new Part[0]));
  }

  private static Load load(int percent, SplittableRandom random) {
    String text = percent + "." + random.nextInt(10);
    return random.nextBoolean() ? Load.ofWax(text) : Load.ofTotal(text);
  }

  @Test
  void every_part_keeps_its_stated_share() {
    SplittableRandom random = new SplittableRandom(5);
    for (int i = 0; i < 300; i++) {
      BatchPlan plan = new BatchPlan(drawn(1 + i % 15, random), 1 + i % 40);
      List<Mass> targets = plan.targets();
      for (int p = 1; p < targets.size(); p++) {
        Load load = plan.recipe().parts().get(p).load();
        Mass whole = load.basis() == LoadBasis.OF_WAX ? targets.get(0) : plan.total();
        assertThat(load.share().of(whole).minus(targets.get(p)).abs())
            .isLessThanOrEqualTo(new Mass(2));
      }
    }
  }

  @Test
  void the_steps_of_a_small_batch_are_in_the_order_of_the_work() {
    assertThat(three(Load.ofWax("8")).steps())
        .extracting(step -> step.getClass().getSimpleName())
        .containsExactly(
            "Prepare",
            "PlacePot",
            "AddPart",
            "Melt",
            "ReturnPot",
            "AddPart",
            "Mix",
            "FillVessel",
            "FillVessel",
            "FillVessel");
  }

  @Test
  void one_part_into_a_pot_is_a_plan_of_two_steps() {
    BatchPlan plan = new BatchPlan(HarbourLane.OIL_ONLY, 1);
    assertThat(plan.steps()).containsExactly(new Step.PlacePot(), new Step.AddPart(0));
    assertThat(plan.targets()).containsExactly(grams("56"));
  }

  @Test
  void a_recipe_whose_waxes_are_not_all_of_the_wax_is_refused() {
    Part half = new Part(
        "half", PartKind.WAX, Way.POURED, Load.ofWax("50"), Recipes.WAX.tolerance(), Fraction.ZERO);
    assertThatThrownBy(() -> Recipes.of("252", Loss.NONE, half, Recipes.oil(Load.ofWax("8"))))
        .hasMessageContaining("50.00 % of the wax: make it 100 %");
  }

  @Test
  void a_number_of_vessels_that_is_surely_a_slip_is_refused() {
    assertThatThrownBy(() -> new BatchPlan(HarbourLane.CANDLE, 0)).hasMessageContaining("1 to 500");
  }

  private static Mass sum(List<Mass> masses) {
    return masses.stream().reduce(Mass.ZERO, Mass::plus);
  }
}
