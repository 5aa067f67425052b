package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How a batch is split over pots, and what is said where it does not fit. */
class ChargeSplitTest {
  private static final String POT = "[{\"name\": \"Pot A\", \"empty\": \"450 g\"}]";

  private static String pots(String... rooms) {
    StringBuilder pots = new StringBuilder("[");
    for (int i = 0; i < rooms.length; i++)
      pots.append(i == 0 ? "" : ", ")
          .append("{\"name\": \"Pot ")
          .append((char) ('A' + i))
          .append("\", \"empty\": \"450 g\"")
          .append(rooms[i].isEmpty() ? "" : ", \"room\": {\"weight\": \"" + rooms[i] + "\"}")
          .append("}");
    return pots.append("]").toString();
  }

  private static List<Integer> vessels(WorkshopPlan plan) {
    return plan.charges().stream().map(PlannedCharge::vessels).toList();
  }

  private static List<String> used(WorkshopPlan plan) {
    return plan.charges().stream().map(charge -> charge.pot().name()).toList();
  }

  private static Finding finding(WorkshopPlan plan, Rule rule) {
    return plan.findings().stream()
        .filter(finding -> finding.rule() == rule)
        .findFirst()
        .orElseThrow(() -> new AssertionError(rule + " not in " + plan.findings()));
  }

  /** Worked by hand: 1008, 756 and 756 g; at 8 % of wax 933.33 + 74.67, 700 + 56, 700 + 56 g. */
  @Test
  void ten_vessels_of_252_g_over_three_pots_are_four_three_and_three() {
    WorkshopPlan plan = PlanFile.plan(POT, pots("", "", ""), "\"vessels\": 3", "\"vessels\": 10");
    assertThat(vessels(plan)).containsExactly(4, 3, 3);
    assertThat(plan.charges().stream().map(PlannedCharge::contents))
        .containsExactly(Mass.ofGrams("1008"), Mass.ofGrams("756"), Mass.ofGrams("756"));
    List<PlannedWeighing> first = plan.charges().get(0).weighings();
    assertThat(first.get(0).exact().text(candlebench.shared.MassUnit.GRAM, 2)).isEqualTo("933.33");
    assertThat(first.get(1).exact().text(candlebench.shared.MassUnit.GRAM, 2)).isEqualTo("74.67");
    assertThat(plan.charges().get(1).weighings().stream().map(PlannedWeighing::exact))
        .containsExactly(Mass.ofGrams("700"), Mass.ofGrams("56"));
  }

  @Test
  void as_few_charges_as_fit_take_turns_in_the_pots() {
    WorkshopPlan plan = PlanFile.plan(
        POT,
        pots("1200 g", "1200 g"),
        "\"vessels\": 3",
        "\"vessels\": 10, \"charges\": \"fewest\"");
    assertThat(vessels(plan)).containsExactly(4, 3, 3);
    assertThat(used(plan)).containsExactly("Pot A", "Pot B", "Pot A");
  }

  @Test
  void a_small_pot_gets_what_it_can_take_and_the_others_share_the_rest() {
    WorkshopPlan plan = PlanFile.plan(
        POT,
        pots("600 g", "", ""),
        "\"vessels\": 3",
        "\"vessels\": 12",
        "\"division\"",
        "\"repeatability\": \"0.01 g\", \"division\"");
    assertThat(vessels(plan)).containsExactly(2, 5, 5);
  }

  /** 14 × 340 g and a pot of 450 g. */
  @Test
  void a_pot_of_5210_g_on_a_scale_of_5000_g_is_refused_and_two_charges_are_proposed() {
    WorkshopPlan plan = PlanFile.plan("252 g", "340 g", "\"vessels\": 3", "\"vessels\": 14");
    assertThat(plan.isRefused()).isTrue();
    Finding finding = finding(plan, Rule.SCALE_CAPACITY);
    assertThat(finding.words())
        .contains("450 g + contents 4760 g = 5210 g", "5000 g", "210 g too much");
    assertThat(finding.refuses()).isTrue();
    assertThat(finding(plan, Rule.WHOLE_VESSELS).words()).contains("2 charges", "7 + 7 vessels");
    WorkshopPlan split =
        PlanFile.plan("252 g", "340 g", "\"vessels\": 3", "\"vessels\": 14, \"charges\": 2");
    assertThat(split.isRefused()).isFalse();
    assertThat(vessels(split)).containsExactly(7, 7);
    assertThat(split.findings()).isEmpty();
  }

  /** 7 × 340 g and a pot of 500 g. */
  @Test
  void a_pot_of_2880_g_on_a_scale_of_3000_g_is_warned_of_a_cure_over_120_g() {
    String[] file = {
      "252 g", "340 g", "450 g", "500 g", "5000 g", "3000 g", "\"vessels\": 3", "\"vessels\": 7"
    };
    WorkshopPlan plan = PlanFile.plan(file);
    assertThat(plan.isRefused()).isFalse();
    Finding finding = finding(plan, Rule.CURE_MARGIN);
    assertThat(finding.severity()).isEqualTo(Severity.WARNED);
    assertThat(finding.words())
        .contains("= 2880 g", "a cure of more than 120 g of wax would not fit");
    file[7] = "\"vessels\": 7, \"cureMargin\": \"120 g\"";
    assertThat(PlanFile.plan(file).findings()).isEmpty();
    file[7] = "\"vessels\": 7, \"cureMargin\": \"120.001 g\"";
    assertThat(finding(PlanFile.plan(file), Rule.CURE_MARGIN).words()).contains("120.001 g");
  }

  /** Worked by hand: 8 % of wax, 120 g of room take an over-pour of x with x + 12.5 x = 120, 8.8889 g. */
  @Test
  void the_over_pour_that_can_still_be_cured_is_told() {
    PlannedCharge charge = PlanFile.plan(
            "252 g",
            "340 g",
            "450 g",
            "500 g",
            "5000 g",
            "3000 g",
            "\"vessels\": 3",
            "\"vessels\": 7")
        .charges()
        .get(0);
    assertThat(charge.roomLeft()).isEqualTo(Mass.ofGrams("120"));
    assertThat(charge.curable().orElseThrow().text(candlebench.shared.MassUnit.GRAM, 4))
        .isEqualTo("8.8889");
  }

  @Test
  void a_pot_too_small_for_its_contents_is_refused() {
    WorkshopPlan plan = PlanFile.plan(
        POT,
        "[{\"name\": \"Pot A\", \"empty\": \"450 g\", \"room\": {\"capacity\": \"0.8 L\", \"density\": \"0.85 g/mL\"}}]");
    assertThat(finding(plan, Rule.POT_ROOM).words()).contains("756 g", "680 g");
    assertThat(plan.isRefused()).isTrue();
  }

  @Test
  void one_vessel_too_heavy_for_everything_is_refused_without_a_proposal() {
    WorkshopPlan plan = PlanFile.plan("5000 g", "600 g", "\"vessels\": 3", "\"vessels\": 1");
    assertThat(plan.isRefused()).isTrue();
    assertThat(plan.fewest()).isEmpty();
  }

  @Test
  void losses_are_counted_once_for_each_pot_and_once_for_each_vessel() {
    WorkshopPlan plan = PlanFile.plan(
        POT,
        pots("", ""),
        "\"vessels\": 3",
        "\"vessels\": 5, \"loss\": {\"perPot\": \"10 g\", \"perVessel\": \"0.5 g\"}");
    assertThat(plan.losses()).isEqualTo(Mass.ofGrams("22.5"));
    assertThat(plan.total()).isEqualTo(Mass.ofGrams("1282.5"));
    assertThat(plan.charges().get(0).contents()).isEqualTo(Mass.ofGrams("767.5"));
  }

  @Test
  void a_split_of_which_a_charge_is_too_small_to_be_weighed_is_refused_for_that_and_not_for_room() {
    String[] file = {
      "\"100 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"}",
      "\"80 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"}, {\"kind\": \"wax\", \"name\": \"Lane Coconut\","
          + " \"share\": \"20 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"}",
      "\"8 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"}",
      "\"8 %\", \"of\": \"wax\", \"tolerance\": \"3 %\"}",
      "\"division\": \"0.1 g\"",
      "\"division\": \"0.8 g\"",
      "252 g",
      "216 g",
      POT,
      pots("1728 g"),
      "\"vessels\": 3",
      "\"vessels\": 13, \"cureMargin\": \"0 %\", \"charges\": \"fewest\""
    };
    // Of 216 g each 200 g are wax: with six, 240 g of coconut wax to 2.4 g in steps of 0.8 g; with
    // five, 200 g do not go.
    WorkshopPlan plan = PlanFile.plan(file);
    assertThat(vessels(plan)).containsExactly(7, 6);
    file[11] = "\"vessels\": 11, \"cureMargin\": \"0 %\", \"charges\": \"fewest\"";
    WorkshopPlan uneven = PlanFile.plan(file);
    assertThat(vessels(uneven)).containsExactly(6, 5);
    assertThat(uneven.isRefused()).isTrue();
    assertThat(uneven.fewest()).isEmpty();
    assertThat(uneven.findings().stream().filter(Finding::refuses).map(Finding::rule))
        .containsOnly(Rule.STEP_WITHIN_TOLERANCE);
  }
}
