package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.station.batch.Loss;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Plans as JSON: as the published schema says, and with sums that others can check. */
class PlanJsonTest {
  private static final String SCHEMA_TEXT = RecipeJsonTest.resource("plan.schema.json");
  private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(
          SpecificationVersion.DRAFT_2020_12)
      .getSchema(SCHEMA_TEXT, InputFormat.JSON);

  static Stream<WorkshopPlan> plans() {
    return Stream.of(
        PlanFile.plan(),
        PlanFile.plan("\"vessels\": 3", "\"vessels\": 10, \"charges\": 3"),
        PlanFile.plan("252 g", "340 g", "\"vessels\": 3", "\"vessels\": 14"),
        PlanFile.plan("\"0.1 g\", \"class\": \"II\"", "\"1 g\", \"repeatability\": \"0.4 g\""),
        PlanFile.plan(
            "\"tolerance\": \"1 %\"}\n",
            "\"tolerance\": \"1 %\", \"maximum\": {\"share\": \"7 %\", \"of\": \"total\", \"reason\": \"test\"},"
                + " \"sensitisers\": [{\"name\": \"quayol\", \"category\": \"1B\", \"content\": \"50 %\"}]}\n"));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void a_plan_is_as_the_schema_says_and_its_exact_targets_sum_to_its_total(WorkshopPlan plan)
      throws Exception {
    String text = PlanJson.text(plan);
    assertThat(SCHEMA.validate(text, InputFormat.JSON)).as(text).isEmpty();
    JsonNode json = new ObjectMapper().readTree(text);
    BigDecimal total = decimal(json.get("total").get("total"));
    assertThat(sum(json.get("parts"))).isEqualByComparingTo(total);
    BigDecimal charges = BigDecimal.ZERO;
    for (JsonNode charge : json.get("charges")) {
      assertThat(sum(charge.get("parts"))).isEqualByComparingTo(decimal(charge.get("contents")));
      charges = charges.add(decimal(charge.get("contents")));
    }
    assertThat(charges).isEqualByComparingTo(total);
    assertThat(json.get("verdict").asText().equals("refused")).isEqualTo(plan.isRefused());
  }

  private static BigDecimal decimal(JsonNode text) {
    return new BigDecimal(text.textValue());
  }

  private static BigDecimal sum(JsonNode parts) {
    BigDecimal sum = BigDecimal.ZERO;
    for (JsonNode part : parts) sum = sum.add(decimal(part.get("exact")));
    return sum;
  }

  @Test
  void the_schema_names_every_rule_and_no_other() throws Exception {
    List<String> named = new ArrayList<>();
    JsonNode rules =
        new ObjectMapper().readTree(SCHEMA_TEXT).at("/$defs/finding/properties/rule/enum");
    rules.forEach(rule -> named.add(rule.asText()));
    assertThat(named)
        .containsExactlyElementsOf(Stream.of(Rule.values()).map(Rule::id).toList());
  }

  @Test
  void a_plan_with_a_field_more_or_a_number_for_a_mass_is_not_as_the_schema_says() {
    String text = PlanJson.text(PlanFile.plan());
    assertThat(SCHEMA.validate(
            text.replace("\"total\" : \"756\"", "\"total\" : 756"), InputFormat.JSON))
        .isNotEmpty();
    assertThat(SCHEMA.validate(text.replaceFirst("\\{", "{\"more\": 1,"), InputFormat.JSON))
        .isNotEmpty();
  }

  @Test
  void the_learnt_loss_stands_beside_the_one_in_the_file_and_changes_no_sum() {
    WorkshopPlan plan = PlanFile.plan();
    WorkshopPlan beside = plan.beside(new Loss(Mass.ofGrams("8"), Mass.ofGrams("0.3")), 5);
    assertThat(SCHEMA.validate(PlanJson.text(beside), InputFormat.JSON)).isEmpty();
    assertThat(beside.total()).isEqualTo(plan.total());
    assertThat(beside.isRefused()).isEqualTo(plan.isRefused());
    assertThat(PlanText.of(beside)).contains("5 finished batches", "8 g", "0.3 g per vessel");
  }

  @Test
  void shares_are_fractions_in_lowest_terms_and_masses_are_exact() throws Exception {
    JsonNode json = new ObjectMapper()
        .readTree(PlanJson.text(PlanFile.plan("\"vessels\": 3", "\"vessels\": 4")));
    JsonNode oil = json.get("parts").get(1);
    assertThat(oil.get("ofTotal").get("fraction").asText()).isEqualTo("2/27");
    assertThat(oil.get("ofTotal").get("decimal").asText()).isEqualTo("0.074074074074");
    assertThat(oil.get("exact").asText()).isEqualTo("74.666666666667");
    assertThat(oil.get("shown").asText()).isEqualTo("74.7");
    assertThat(oil.get("rounding").asText()).isEqualTo("0.033333333333");
  }

  @Test
  void the_text_shows_the_sum_step_by_step() {
    String text = PlanText.of(PlanFile.plan(
        "\"vessels\": 3",
        "\"vessels\": 3, \"loss\": {\"perPot\": \"8 g\", \"perVessel\": \"0.5 g\"}"));
    assertThat(text)
        .contains("fill of a vessel                            252 g   measured")
        .contains("fills                                       756 g   3 × 252 g")
        .contains(
            "loss                                        9.5 g   1 pot × 8 g + 3 vessels × 0.5 g")
        .contains("total                                     765.5 g   fills + loss")
        .contains("8 % of wax as stated; 8 % of wax = 7.4074 % of total")
        .contains("meant as 8 % of total it would be 61.24 g in 704.26 g of wax")
        .contains("Buoyancy in air is left out");
  }

  @Test
  void a_chart_gives_the_loads_for_round_amounts_and_marks_what_the_scale_cannot_weigh() {
    BenchChart chart = BenchChart.of(PlanFile.plan());
    BenchChart.Row kilogram = chart.forWax().stream()
        .filter(row -> row.amount().equals("1000 g"))
        .findFirst()
        .orElseThrow();
    assertThat(kilogram.parts())
        .extracting(BenchChart.Cell::shown)
        .containsExactly(Mass.ofGrams("1000"), Mass.ofGrams("80"));
    assertThat(kilogram.total()).isEqualTo(Mass.ofGrams("1080"));
    // 8 g to 1 % is under the minimum weight of 8.2 g in steps of 0.1 g.
    assertThat(chart.forWax().get(0).parts().get(1))
        .isEqualTo(new BenchChart.Cell(Mass.ofGrams("8"), false));
    String page = ChartText.of(chart);
    assertThat(page)
        .contains("8 % of wax as stated, 8 % of wax = 7.4074 % of total", "8 g*", "* too little");
    assertThat(page.lines().count()).isLessThan(60);
    assertThat(page.lines().mapToInt(String::length).max().orElseThrow()).isLessThan(100);
  }
}
