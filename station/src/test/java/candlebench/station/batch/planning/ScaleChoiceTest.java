package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Which scale a part is weighed on, and what is refused where none is fit. */
class ScaleChoiceTest {
  private static final String SCALE =
      "[{\"name\": \"Bench scale\", \"capacity\": \"5000 g\", \"division\": \"0.1 g\", \"class\": \"II\"}]";
  private static final String COARSE =
      "{\"name\": \"Kitchen scale\", \"capacity\": \"5 kg\", \"division\": \"1 g\"}";
  private static final String FINE =
      "{\"name\": \"Fine scale\", \"capacity\": \"500 g\", \"division\": \"0.01 g\"}";
  private static final String MIDDLE =
      "{\"name\": \"Middle scale\", \"capacity\": \"3 kg\", \"division\": \"0.1 g\"}";
  private static final String CUP = "\"cup\": {\"empty\": \"40 g\"}, \"scales\"";

  private static List<String> ways(WorkshopPlan plan) {
    return plan.charges().get(0).weighings().stream()
        .map(way -> way.scale().name() + " " + way.into())
        .toList();
  }

  private static List<Rule> refusals(WorkshopPlan plan) {
    return plan.findings().stream().filter(Finding::refuses).map(Finding::rule).toList();
  }

  @Test
  void one_scale_fine_enough_for_all_takes_all_into_the_pot() {
    assertThat(ways(PlanFile.plan())).containsExactly("Bench scale POT", "Bench scale POT");
  }

  @Test
  void an_oil_too_small_for_the_scale_under_the_pot_goes_into_a_cup_on_a_finer_one() {
    WorkshopPlan plan = PlanFile.plan(SCALE, "[" + COARSE + ", " + FINE + "]", "\"scales\"", CUP);
    assertThat(ways(plan)).containsExactly("Kitchen scale POT", "Fine scale CUP");
    assertThat(plan.isRefused()).isFalse();
  }

  @Test
  void a_finer_scale_that_carries_the_pot_is_preferred_to_a_cup() {
    WorkshopPlan plan =
        PlanFile.plan(SCALE, "[" + COARSE + ", " + FINE + ", " + MIDDLE + "]", "\"scales\"", CUP);
    assertThat(ways(plan)).containsExactly("Kitchen scale POT", "Middle scale POT");
  }

  @Test
  void without_a_cup_the_finer_scale_cannot_carry_the_pot_and_the_plan_is_refused() {
    WorkshopPlan plan = PlanFile.plan(SCALE, "[" + COARSE + ", " + FINE + "]");
    assertThat(refusals(plan)).containsExactly(Rule.SCALE_CAPACITY);
    assertThat(plan.findings().get(0).words()).contains("Fine scale", "Name a cup");
  }

  @Test
  void six_grams_of_oil_to_1_percent_on_a_step_of_1_g_are_blocked() {
    // One vessel of 85.05 g at 8 % of wax: 78.75 g of wax and 6.3 g of oil.
    WorkshopPlan plan = PlanFile.plan(
        SCALE,
        "[" + COARSE + "]",
        "252 g",
        "85.05 g",
        "\"vessels\": 3",
        "\"vessels\": 1",
        "\"of\": \"wax\", \"tolerance\": \"1 %\"}\n",
        "\"of\": \"wax\", \"tolerance\": \"1 %\"}\n");
    assertThat(plan.charges().get(0).weighings().get(1).exact())
        .isEqualTo(candlebench.shared.Mass.ofGrams("6.3"));
    assertThat(plan.findings())
        .filteredOn(finding -> finding.subject().equals("Quay Cedar"))
        .singleElement()
        .satisfies(finding -> {
          assertThat(finding.rule()).isEqualTo(Rule.STEP_WITHIN_TOLERANCE);
          assertThat(finding.refuses()).isTrue();
          assertThat(finding.words()).contains("6.3 g ±1 %", "0.021 g or finer", "Kitchen scale");
        });
  }

  @Test
  void a_scatter_too_wide_for_a_part_is_refused_by_the_minimum_weight() {
    WorkshopPlan plan =
        PlanFile.plan("\"class\": \"II\"", "\"class\": \"II\", \"repeatability\": \"0.3 g\"");
    // 2 × 0.3 g / 1 % = 60 g, over the 56 g of oil.
    assertThat(refusals(plan)).containsExactly(Rule.MINIMUM_WEIGHT);
    assertThat(plan.findings().get(0).words()).contains("56 g", "minimum weight of 60 g");
  }

  @Test
  void a_load_under_the_Min_is_warned_of_for_the_pan_and_not_for_the_net() {
    String classed = FINE.replace("}", ", \"class\": \"II\", \"interval\": \"0.1 g\"}");
    String light = "\"cup\": {\"empty\": \"0.2 g\"}, \"scales\"";
    // Class II with an auxiliary digit: Min = 50 d = 0.5 g. A dye of 0.2 g in a cup of 0.2 g is
    // under it, in one of 40 g is not.
    String dye =
        "\"parts\": [{\"kind\": \"dye\", \"name\": \"Harbour Blue\", \"share\": \"0.2 g\", ";
    WorkshopPlan plan = small(classed, light);
    assertThat(plan.findings()).anySatisfy(finding -> {
      assertThat(finding.rule()).isEqualTo(Rule.LEAST_LOAD);
      assertThat(finding.severity()).isEqualTo(Severity.WARNED);
      assertThat(finding.words()).contains("0.4 g on its pan", "Min of 0.5 g");
    });
    assertThat(small(classed, CUP).findings())
        .noneMatch(finding -> finding.rule() == Rule.LEAST_LOAD);
  }

  private static WorkshopPlan small(String fine, String cup) {
    return PlanFile.plan(
        SCALE,
        "[" + COARSE + ", " + fine + "]",
        "\"scales\"",
        cup,
        "{\"kind\": \"oil\", \"name\": \"Quay Cedar\", \"share\": \"8 %\"",
        "{\"kind\": \"dye\", \"name\": \"Harbour Blue\", \"share\": \"2/6998\"",
        "\"tolerance\": \"1 %\"}\n    ]",
        "\"tolerance\": \"20 %\"}\n    ]",
        "252 g",
        "233.3333 g");
  }

  @Test
  void a_vessel_filled_to_2_g_wants_more_than_steps_of_1_g() {
    String[] file = {
      SCALE, "[" + COARSE + ", " + MIDDLE + "]", "\"3 g\", \"empty\"", "\"2 g\", \"empty\""
    };
    assertThat(PlanFile.plan(file).filling().scale().name()).isEqualTo("Middle scale");
    assertThat(PlanFile.plan(SCALE, "[" + COARSE + ", " + MIDDLE + "]")
            .filling()
            .scale()
            .name())
        .isEqualTo("Kitchen scale");
    WorkshopPlan coarse =
        PlanFile.plan(SCALE, "[" + COARSE + "]", "\"3 g\", \"empty\"", "\"2 g\", \"empty\"");
    assertThat(coarse.findings())
        .filteredOn(finding -> finding.subject().equals("Lane Glass"))
        .extracting(Finding::rule)
        .containsExactly(Rule.STEP_WITHIN_TOLERANCE);
  }

  @Test
  void a_scale_without_a_class_is_said_to_have_promised_nothing_and_a_wrong_class_is_warned_of() {
    assertThat(PlanFile.plan("\"0.1 g\", \"class\": \"II\"", "\"0.1 g\"").findings())
        .extracting(Finding::rule)
        .containsExactly(Rule.NO_CLASS);
    assertThat(PlanFile.plan("\"class\": \"II\"", "\"class\": \"III\"").findings())
        .singleElement()
        .satisfies(finding -> {
          assertThat(finding.rule()).isEqualTo(Rule.ACCURACY_CLASS);
          assertThat(finding.words()).contains("10000 intervals, not 50000");
        });
  }

  @Test
  void
      a_pot_too_heavy_for_the_fine_scale_stands_on_the_coarse_one_while_all_parts_come_from_the_cup() {
    // 158 g: wax of 146.3 g to 1 % wants steps of 0.49 g, and pot and contents weigh 608 g.
    WorkshopPlan plan = PlanFile.plan(
        SCALE,
        "[" + COARSE + ", " + FINE + "]",
        "\"scales\"",
        CUP,
        "252 g",
        "158 g",
        "\"vessels\": 3",
        "\"vessels\": 1");
    assertThat(plan.charges().get(0).scale().name()).isEqualTo("Kitchen scale");
    assertThat(ways(plan)).containsExactly("Fine scale CUP", "Fine scale CUP");
    assertThat(plan.isRefused()).isFalse();
  }

  @Test
  void a_large_scale_too_coarse_for_the_wax_does_not_count_as_room() {
    String large = "{\"name\": \"Floor scale\", \"capacity\": \"30 kg\", \"division\": \"10 g\"}";
    String[] file = {
      SCALE,
      "[" + MIDDLE + ", " + large + "]",
      "\"tolerance\": \"1 %\"},",
      "\"tolerance\": \"5 g\"},",
      "\"vessels\": 3",
      "\"vessels\": 14"
    };
    assertThat(refusals(PlanFile.plan(file))).contains(Rule.SCALE_CAPACITY);
    file[5] = "\"vessels\": 14, \"charges\": \"fewest\"";
    WorkshopPlan split = PlanFile.plan(file);
    assertThat(split.isRefused()).isFalse();
    assertThat(split.charges()).hasSize(2);
  }
}
