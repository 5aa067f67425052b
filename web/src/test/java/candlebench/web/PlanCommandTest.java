package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.batch.planning.RecipeJson;
import candlebench.station.batch.planning.WorkshopPlan;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** What the plan command tells of its files is what they are. */
class PlanCommandTest {

  private static String resource(String name) throws Exception {
    try (InputStream in = PlanCommand.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void the_help_names_every_field_of_the_schema() throws Exception {
    String help = new CommandLine(new PlanCommand()).getUsageMessage();
    JsonNode schema = new ObjectMapper()
        .readTree(resource("/candlebench/station/batch/planning/plan-file.schema.json"));
    int fields = 0;
    for (JsonNode properties : schema.findValues("properties"))
      for (var names = properties.fieldNames(); names.hasNext(); fields++) {
        String name = names.next();
        if (!name.equals("$schema")) assertThat(help).containsPattern("\\b" + name + "\\b");
      }
    assertThat(fields).isGreaterThan(40);
  }

  @Test
  void the_example_uses_every_way_there_is_and_is_planned() throws Exception {
    WorkshopPlan plan = WorkshopPlan.of(RecipeJson.read(resource("/plan-example.json")));
    assertThat(plan.isRefused()).isFalse();
    assertThat(plan.charges()).hasSize(2);
    assertThat(plan.sensitisers()).hasSize(2);
    assertThat(resource("/plan-example.json")).contains("Harbour Lane Workshop (invented)");
  }
}
