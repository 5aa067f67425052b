package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.batch.Fraction;
import candlebench.station.batch.Load;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.Part;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Waits;
import candlebench.station.batch.Way;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The most that a wax, a supplier and the product's tests allow. */
class LimitCheckTest {

  private static WorkshopPlan planWith(Rule rule, String limit) {
    String wax = "\"100 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"";
    String oil = "\"8 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"";
    return switch (rule) {
      case WAX_MAXIMUM -> PlanFile.plan(wax, wax + ", \"maximum\": " + limit);
      case SUPPLIER_MAXIMUM -> PlanFile.plan(oil, oil + ", \"maximum\": " + limit);
      default -> PlanFile.plan("\"parts\": [", "\"testedLoad\": " + limit + ", \"parts\": [");
    };
  }

  /** 8 % of wax is 2/27 of the total, 7.407 %. */
  @ParameterizedTest
  @CsvSource({
    "8 %, wax, true",
    "7.99 %, wax, false",
    "7.4 %, total, false",
    "7.41 %, total, true",
    "2/27, total, true"
  })
  void a_load_at_the_limit_is_kept_and_one_above_is_refused(String share, String of, boolean kept) {
    for (Rule rule : List.of(Rule.WAX_MAXIMUM, Rule.SUPPLIER_MAXIMUM, Rule.TESTED_LOAD)) {
      WorkshopPlan plan = planWith(rule, "{\"share\": \"" + share + "\", \"of\": \"" + of + "\"}");
      assertThat(plan.isRefused()).as(rule.toString()).isEqualTo(!kept);
      assertThat(plan.findings().stream().map(Finding::rule).toList())
          .isEqualTo(kept ? List.of() : List.of(rule));
    }
  }

  @Test
  void a_reason_makes_a_refusal_a_warning_that_repeats_it() {
    WorkshopPlan plan = planWith(
        Rule.WAX_MAXIMUM,
        "{\"share\": \"6 %\", \"of\": \"wax\", \"reason\": \"test burn of three candles\"}");
    assertThat(plan.isRefused()).isFalse();
    assertThat(plan.findings()).singleElement().satisfies(finding -> {
      assertThat(finding.severity()).isEqualTo(Severity.WARNED);
      assertThat(finding.words())
          .contains(
              "8 % of wax is planned", "6 % of wax is the most", "test burn of three candles");
    });
  }

  @Test
  void a_wax_holds_all_oils_together() {
    WorkshopPlan plan = PlanFile.plan(
        "\"100 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"",
            "\"100 %\", \"of\": \"wax\", \"tolerance\": \"1 %\", \"maximum\": {\"share\": \"10 %\", \"of\": \"wax\"}",
        "\"tolerance\": \"1 %\"}\n",
            "\"tolerance\": \"1 %\"}, {\"kind\": \"oil\", \"name\": \"Lane Amber\", \"share\": \"3 %\", \"of\": \"wax\", \"tolerance\": \"1 %\"}\n");
    assertThat(plan.limits().get(0).planned()).isEqualTo(Fraction.of(11, 100));
    assertThat(plan.isRefused()).isTrue();
  }

  private static final Allowance ANY = Allowance.of(new Margin.Share(Fraction.percent("1")));

  private static Ingredient part(
      String name, PartKind kind, String percent, LoadBasis basis, Optional<LoadLimit> limit) {
    return new Ingredient(
        name,
        kind,
        Way.usual(kind),
        new Load(Fraction.percent(percent), basis),
        ANY,
        limit,
        List.of());
  }

  /** At its limit for the bench, a part just reaches one of the limits of the recipe, and keeps the others. */
  @Test
  void the_limit_for_the_bench_is_where_a_limit_of_the_recipe_is_just_reached() {
    Random random = new Random(20261125);
    for (int run = 0; run < 400; run++) {
      List<Ingredient> parts = new ArrayList<>();
      parts.add(part("wax", PartKind.WAX, "100", LoadBasis.OF_WAX, Optional.of(limit(random, 15))));
      parts.add(part("dye", PartKind.DYE, "0.3", basis(random), Optional.empty()));
      parts.add(part("other", PartKind.OIL, "3", basis(random), Optional.empty()));
      parts.add(part("oil", PartKind.OIL, "5", basis(random), Optional.of(limit(random, 11))));
      Formula formula = new Formula(
          "law", 1, "law", parts, Optional.of(limit(random, 15)), Waits.NONE, "", List.of());
      assertThat(LimitCheck.of(formula)).allMatch(LimitCheck::isKept);
      Fraction reach = BenchLimit.of(formula, parts.get(3)).orElseThrow();
      parts.set(
          3,
          new Ingredient(
              "oil",
              PartKind.OIL,
              Way.POURED,
              new Load(reach, parts.get(3).load().basis()),
              ANY,
              parts.get(3).limit(),
              List.of()));
      Formula reached =
          new Formula("law", 1, "law", parts, formula.tested(), Waits.NONE, "", List.of());
      List<LimitCheck> checks = LimitCheck.of(reached);
      assertThat(checks).allMatch(LimitCheck::isKept);
      assertThat(checks)
          .anyMatch(check -> check.planned().equals(check.limit().most().share()));
    }
  }

  private static LoadBasis basis(Random random) {
    return LoadBasis.values()[random.nextInt(2)];
  }

  private static LoadLimit limit(Random random, int percent) {
    String share = String.valueOf(percent + random.nextInt(10));
    return new LoadLimit(new Load(Fraction.percent(share), basis(random)), Optional.empty());
  }

  @Test
  void the_bench_gets_the_recipe_with_its_limits_and_tolerances() {
    Part oil = planWith(Rule.TESTED_LOAD, "{\"share\": \"10 %\", \"of\": \"wax\"}")
        .charges()
        .get(0)
        .batch()
        .recipe()
        .parts()
        .get(1);
    assertThat(oil.limit()).isEqualTo(Fraction.percent("10"));
    assertThat(oil.tolerance()).isEqualTo(candlebench.shared.Tolerance.ofGrams("0.56", "0.56"));
  }
}
