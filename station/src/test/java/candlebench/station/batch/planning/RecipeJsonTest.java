package candlebench.station.batch.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.shared.Mass;
import candlebench.station.batch.Load;
import candlebench.station.batch.Way;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Plan files, good and bad; the published schema agrees with what is read. */
class RecipeJsonTest {
  private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(
          SpecificationVersion.DRAFT_2020_12)
      .getSchema(resource("plan-file.schema.json"), InputFormat.JSON);

  static String resource(String name) {
    try (InputStream in = RecipeJson.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException lost) {
      throw new AssertionError(lost);
    }
  }

  private static boolean isAsTheSchemaSays(String text) {
    return SCHEMA.validate(text, InputFormat.JSON).isEmpty();
  }

  private static String refusal(String text) {
    try {
      RecipeJson.read(text);
    } catch (UnreadablePlan wrong) {
      return wrong.getMessage();
    }
    throw new AssertionError("read: " + text);
  }

  @Test
  void a_small_file_is_read_and_is_as_the_schema_says() throws UnreadablePlan {
    PlanOrder order = RecipeJson.read(PlanFile.TEXT);
    assertThat(order.formula().ingredients())
        .extracting(Ingredient::name)
        .containsExactly("Lane Soy 1", "Quay Cedar");
    assertThat(order.formula().ingredients().get(1).load()).isEqualTo(Load.ofWax("8"));
    assertThat(order.vessel().fill().mass()).isEqualTo(Mass.ofGrams("252"));
    assertThat(order.charges()).isEqualTo(new Charges.OnePerPot());
    assertThat(order.cure()).isEqualTo(RecipeJson.USUAL_CURE);
    assertThat(isAsTheSchemaSays(PlanFile.TEXT)).isTrue();
  }

  @Test
  void a_part_says_how_it_is_weighed_or_is_weighed_as_usual() throws UnreadablePlan {
    String fromBottle = PlanFile.TEXT.replace("\"8 %\"", "\"8 %\", \"way\": \"from the bottle\"");
    assertThat(isAsTheSchemaSays(fromBottle)).isTrue();
    PlanOrder order = RecipeJson.read(fromBottle);
    assertThat(order.formula().ingredients())
        .extracting(Ingredient::way)
        .containsExactly(Way.BY_PIECES, Way.FROM_BOTTLE);
    assertThat(RecipeJson.read(RecipeWriterJson.text(order))).isEqualTo(order);
  }

  /** What is wrong, what is put in its place, and what the refusal says. */
  static Stream<Arguments> whatTheSchemaSeesToo() {
    return Stream.of(
        Arguments.of(
            "\"252 g\"", "\"252\"", "vessel.fill.weight: '252' has no unit: write '252 g'"),
        Arguments.of(
            "\"252 g\"", "252", "vessel.fill.weight: 252 is not text: put it in double quotes"),
        Arguments.of("\"252 g\"", "\"252,5 g\"", "vessel.fill.weight: '252,5 g' has a comma"),
        Arguments.of("\"252 g\"", "\"252 gr\"", "'gr' is the grain"),
        Arguments.of("\"252 g\"", "\"8 fl oz\"", "vessel.fill.weight: '8 fl oz' is a volume"),
        Arguments.of("\"252 g\"", "\"8 US fl oz\"", "'8 US fl oz' is a volume"),
        Arguments.of("\"252 g\"", "\"240 mL\"", "'240 mL' is a volume"),
        Arguments.of("\"252 g\"", "\"-5 g\"", "'-5 g' is not a number with a unit"),
        Arguments.of("\"252 g\"", "\"1e3 g\"", "write mg, g, kg, oz or lb"),
        Arguments.of(
            "{\"weight\": \"252 g\"}",
            "\"8 oz\"",
            "vessel.fill: say whether it is a weight or a capacity"),
        Arguments.of("{\"weight\": \"252 g\"}", "{}", "vessel.fill: give one way"),
        Arguments.of(
            "{\"weight\": \"252 g\"}",
            "{\"capacity\": \"300 mL\"}",
            "vessel.fill.density: missing: give the density"),
        Arguments.of(
            "{\"weight\": \"252 g\"}",
            "{\"capacity\": \"8 oz\", \"density\": \"0.86 g/mL\"}",
            "vessel.fill.capacity: '8 oz' could be a weight or either of two capacities: write US fl oz or imp fl oz"),
        Arguments.of(
            "{\"weight\": \"252 g\"}",
            "{\"capacity\": \"8 fl oz\", \"density\": \"0.86 g/mL\"}",
            "write US fl oz or imp fl oz"),
        Arguments.of(
            "{\"weight\": \"252 g\"}",
            "{\"capacity\": \"300 mL\", \"density\": \"0.86\"}",
            "vessel.fill.density: '0.86' is no density: write it in g/mL"),
        Arguments.of(
            "{\"weight\": \"252 g\"}",
            "{\"weight\": \"252 g\", \"density\": \"0.86 g/mL\"}",
            "vessel.fill: a weight stands alone"),
        Arguments.of(
            "\"8 %\"",
            "\"8 %\", \"way\": \"from bottle\"",
            "recipe.parts[1].way: 'from bottle' is none of poured, by pieces, from the bottle"),
        Arguments.of("\"8 %\"", "\"8\"", "recipe.parts[1].share: '8' is no share: write per cent"),
        Arguments.of(
            "\"8 %\", \"of\": \"wax\"",
            "\"8 %\"", "recipe.parts[1].of: missing: give what the share is of"),
        Arguments.of(
            "\"8 %\", \"of\": \"wax\"",
            "\"8 %\", \"of\": \"waxes\"", "recipe.parts[1].of: 'waxes'"),
        Arguments.of("\"kind\": \"oil\"", "\"kind\": \"oils\"", "nearest is 'oil'"),
        Arguments.of("\"fill\"", "\"fil\"", "vessel.fil: no such field; nearest is \"fill\""),
        Arguments.of("\"batch\"", "\"Batch\"", "Batch: no such field; nearest is \"batch\""),
        Arguments.of(
            "\"vessels\": 3", "\"vessels\": 0", "batch: a batch has 1 to 500 vessels, not 0"),
        Arguments.of(
            "\"vessels\": 3", "\"vessels\": 3.5", "batch.vessels: 3.5 is not a whole number"),
        Arguments.of(
            "\"vessels\": 3",
            "\"vessels\": \"3\"",
            "batch.vessels: \"3\" is not a whole number, without quotes"),
        Arguments.of("\"vessels\": 3", "\"vessels\": 99999999999", "beyond any count"),
        Arguments.of("\"vessels\": 3", "\"vessels\": null", "batch.vessels: null"),
        Arguments.of(
            "\"vessels\": 3",
            "\"vessels\": 3, \"charges\": \"many\"",
            "batch.charges: 'many' is not 'fewest'"),
        Arguments.of("\"vessels\": 3", "\"vessels\": 3, \"charges\": 0", "batch.charges: 0"),
        Arguments.of("\"version\": 1", "\"version\": 0", "recipe: versions are counted from 1"),
        Arguments.of(
            "\"class\": \"II\"",
            "\"class\": \"2\"",
            "scales[0].class: '2' is none of I, II, III, IIII"),
        Arguments.of(
            "[{\"name\": \"Pot A\", \"empty\": \"450 g\"}]",
            "[]",
            "batch: a batch needs 1 to 20 pots"),
        Arguments.of(
            "[{\"name\": \"Pot A\", \"empty\": \"450 g\"}]", "[7]", "pots[0]: not an object"),
        Arguments.of(
            "[{\"name\": \"Pot A\", \"empty\": \"450 g\"}]", "{}", "pots: {} is not a list"),
        Arguments.of(
            "\"id\": \"harbour-lane\"",
            "\"id\": \"\"",
            "recipe.id: empty: give a short lasting name"),
        Arguments.of(
            "\"division\": \"0.1 g\"",
            "\"division\": \"0.1 mL\"",
            "scales[0].division: '0.1 mL' is a volume"));
  }

  @ParameterizedTest(name = "{2}")
  @MethodSource("whatTheSchemaSeesToo")
  void a_bad_file_names_the_field_and_the_fix_and_is_not_as_the_schema_says(
      String right, String wrong, String words) {
    String text = PlanFile.text(right, wrong);
    assertThat(refusal(text)).contains(words).doesNotContain("\n");
    assertThat(isAsTheSchemaSays(text)).as(text).isFalse();
  }

  /** What a schema cannot say. */
  static Stream<Arguments> whatOnlyTheReaderSees() {
    return Stream.of(
        Arguments.of(
            "\"100 %\"", "\"90 %\"", "recipe: the waxes of harbour-lane sum to 90.00 % of the wax"),
        Arguments.of(
            "\"8 %\", \"of\": \"wax\"",
            "\"8 %\", \"of\": \"oil\"", "recipe.parts[1].of: a share of the oil needs"),
        Arguments.of(
            "\"100 %\", \"of\": \"wax\"",
            "\"100 %\", \"of\": \"oil\"", "recipe.parts[0].of: only an oil"),
        Arguments.of(
            "\"100 %\", \"of\": \"wax\"",
            "\"100 %\", \"of\": \"total\"", "recipe.parts[0]: a wax states its share of the wax"),
        Arguments.of(
            "\"8 %\", \"of\": \"wax\"",
            "\"95 %\", \"of\": \"total\"", "recipe: less than a tenth of the total is wax"),
        Arguments.of(
            "\"8 %\", \"of\": \"wax\"",
            "\"100 %\", \"of\": \"total\"", "recipe: nothing is left for the wax"),
        Arguments.of(
            "\"8 %\", \"of\": \"wax\"",
            "\"101 %\", \"of\": \"total\"",
            "recipe.parts[1]: a load of the total is at most 100 %"),
        Arguments.of("\"8 %\"", "\"1/0\"", "recipe.parts[1].share: a share of nothing"),
        Arguments.of("\"8 %\"", "\"0 %\"", "recipe.parts[1]: a share under 0.0001 %"),
        Arguments.of("\"3 g\"", "\"0 g\"", "vessel: a tolerance of nothing"),
        Arguments.of("Quay Cedar", "Lane Soy 1", "recipe: two parts are called 'Lane Soy 1'"),
        Arguments.of("\"252 g\"", "\"252 kg\"", "more than 100000 g"),
        Arguments.of("\"252 g\"", "\"6 kg\"", "vessel: a fill weight is between 0.1 g and 5000 g"),
        Arguments.of("\"252 g\"", "\"0 g\"", "vessel: a fill weight is between"),
        Arguments.of(
            "{\"weight\": \"252 g\"}",
            "{\"capacity\": \"300 mL\", \"density\": \"8.6 g/mL\"}",
            "vessel.fill.density: a density of wax or oil lies between 0.5 and 1.5 g/mL"),
        Arguments.of(
            "\"vessels\": 3",
            "\"vessels\": 3, \"charges\": 4",
            "batch: 4 charges are more than 3 vessels"),
        Arguments.of(
            "\"vessels\": 3",
            "\"vessels\": 3, \"vessels\": 4",
            "not JSON: Duplicate field 'vessels'"),
        Arguments.of("\"vessels\": 3}", "\"vessels\": 3},", "not JSON"),
        Arguments.of("\"0.1 g\"", "\"0 g\"", "scales[0]: a division is above zero"),
        Arguments.of("\"0.1 g\"", "\"1 kg\"", "scales[0]: a capacity is at least 10 divisions"),
        Arguments.of("\"450 g\"", "\"0 g\"", "pots[0]: an empty pot weighs more than nothing"));
  }

  @ParameterizedTest(name = "{2}")
  @MethodSource("whatOnlyTheReaderSees")
  void what_contradicts_itself_is_told_too(String right, String wrong, String words) {
    assertThat(refusal(PlanFile.text(right, wrong))).contains(words).doesNotContain("\n");
  }

  @Test
  void an_unknown_oil_share_and_a_sum_off_100_percent_are_told() {
    String oils = PlanFile.text(
        "\"8 %\", \"of\": \"wax\"", "\"90 %\", \"of\": \"oil\"",
        "\"parts\": [", "\"oilLoad\": {\"share\": \"8 %\", \"of\": \"wax\"}, \"parts\": [");
    assertThat(refusal(oils))
        .isEqualTo("recipe.parts: the oils sum to 90 % of the oil: make it 100 %");
    assertThat(refusal(oils.replace("\"90 %\", \"of\": \"oil\"", "\"8 %\", \"of\": \"wax\"")))
        .contains("recipe.parts[1].of: say \"oil\"");
  }

  @Test
  void two_pots_of_one_name_and_one_sensitiser_of_two_categories_are_refused() {
    assertThat(
            refusal(
                PlanFile.text(
                    "[{\"name\": \"Pot A\", \"empty\": \"450 g\"}]",
                    "[{\"name\": \"Pot A\", \"empty\": \"450 g\"}, {\"name\": \"Pot A\", \"empty\": \"460 g\"}]")))
        .contains("two are called 'Pot A'");
    String twice = PlanFile.text(
        "\"tolerance\": \"1 %\"},",
            "\"tolerance\": \"1 %\", \"sensitisers\": [{\"name\": \"x\", \"category\": \"1\", \"content\": \"1 %\"}]},",
        "\"tolerance\": \"1 %\"}\n",
            "\"tolerance\": \"1 %\", \"sensitisers\": [{\"name\": \"x\", \"category\": \"1A\", \"content\": \"1 %\"}]}\n");
    assertThat(refusal(twice)).contains("recipe: the sensitiser 'x' has two categories");
  }

  @ParameterizedTest
  @CsvSource({
    "'', not a plan file",
    "'[]', not a plan file",
    "'{}', recipe: missing",
    "'{', not JSON",
    "'nul', not JSON"
  })
  void what_is_no_plan_at_all_is_told(String text, String words) {
    assertThat(refusal(text)).contains(words).doesNotContain("\n").doesNotContain("REDACTED");
  }

  @ParameterizedTest
  @CsvSource({
    "'{\"waterWeight\": \"290 g\", \"density\": \"0.87 g/mL\"}', 252.3",
    "'{\"waterWeight\": \"10 oz\", \"density\": \"0.9 g/mL\"}', 255.145708125",
    "'{\"capacity\": \"300 mL\", \"density\": \"0.84 g/mL\"}', 252",
    "'{\"capacity\": \"0.3 L\", \"density\": \"0.84 g/mL\"}', 252",
    "'{\"capacity\": \"10 US fl oz\", \"density\": \"0.86 g/mL\"}', 254.3323542375",
    "'{\"capacity\": \"10 imp fl oz\", \"density\": \"0.86 g/mL\"}', 244.3523375",
    "'{\"weight\": \"9 oz\"}', 255.145708125"
  })
  void a_fill_is_a_weight_or_a_capacity_with_its_density(String fill, String grams) {
    String text = PlanFile.text("{\"weight\": \"252 g\"}", fill);
    assertThat(isAsTheSchemaSays(text)).isTrue();
    PlanOrder order = PlanFile.order("{\"weight\": \"252 g\"}", fill);
    assertThat(order.vessel().fill().mass()).isEqualTo(Mass.ofGrams(grams));
  }

  /** Cut, doubled and swapped bytes: read or refused in one line, never anything else. */
  @Test
  void damaged_files_are_read_or_refused_and_never_anything_else() {
    Random random = new Random(20261125);
    List<String> refusals = new ArrayList<>();
    for (int run = 0; run < 3000; run++) {
      StringBuilder text = new StringBuilder(PlanFile.TEXT);
      for (int changes = 1 + random.nextInt(3); changes > 0; changes--) {
        int at = random.nextInt(text.length());
        switch (random.nextInt(3)) {
          case 0 -> text.deleteCharAt(at);
          case 1 -> text.insert(at, text.charAt(random.nextInt(text.length())));
          default -> text.setCharAt(at, text.charAt(random.nextInt(text.length())));
        }
      }
      try {
        WorkshopPlan.of(RecipeJson.read(text.toString()));
      } catch (UnreadablePlan wrong) {
        refusals.add(wrong.getMessage());
      }
    }
    assertThat(refusals).hasSizeGreaterThan(1000).allMatch(words -> !words.contains("\n"));
  }

  @Test
  void a_refusal_keeps_long_names_short() {
    String text = PlanFile.text("\"fill\"", "\"" + "x".repeat(5000) + "\"");
    assertThat(refusal(text)).hasSizeLessThan(300);
    assertThatThrownBy(() -> RecipeJson.read(text)).isInstanceOf(UnreadablePlan.class);
  }

  static Stream<PlanOrder> orders() {
    return Stream.of(
        PlanFile.order(),
        PlanFile.order("\"vessels\": 3", "\"vessels\": 3, \"charges\": 2, \"cureMargin\": \"1/7\""),
        PlanFile.order(
            "\"vessels\": 3",
            "\"vessels\": 3, \"charges\": \"fewest\", \"cureMargin\": \"120 g\","
                + " \"loss\": {\"perPot\": \"8 g\", \"perVessel\": \"0.01 oz\"}",
            "{\"weight\": \"252 g\"}",
            "{\"capacity\": \"10.1234 US fl oz\", \"density\": \"0.86 g/mL\"}",
            "\"3 g\"",
            "{\"under\": \"2 g\", \"over\": \"1.5 %\"}, \"spread\": \"6 g\"",
            "\"scales\"",
            "\"cup\": {\"empty\": \"40 g\", \"room\": {\"waterWeight\": \"200 g\", \"density\": \"1 g/mL\"}}, \"scales\"",
            "\"parts\"",
            "\"waits\": {\"melt\": \"25 min\"}, \"trim\": \"3/16 in\","
                + " \"testedLoad\": {\"share\": \"2/27\", \"of\": \"total\", \"reason\": \"so\"}, \"parts\"",
            "\"8 %\", \"of\": \"wax\"",
            "\"8.125 %\", \"of\": \"total\", \"sensitisers\":"
                + " [{\"name\": \"x\", \"category\": \"1A\", \"content\": \"0.01 %\", \"specificLimit\": \"1/3000\"}]"));
  }

  @ParameterizedTest
  @MethodSource("orders")
  void what_is_written_is_read_back_the_same_and_is_as_the_schema_says(PlanOrder order)
      throws UnreadablePlan {
    String written = RecipeWriterJson.text(order);
    assertThat(isAsTheSchemaSays(written)).as(written).isTrue();
    assertThat(RecipeJson.read(written)).isEqualTo(order);
  }
}
