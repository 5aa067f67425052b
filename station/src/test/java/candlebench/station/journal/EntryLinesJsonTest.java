package candlebench.station.journal;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.guidance.EventSamples;
import candlebench.station.guidance.GuidanceEvent;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class EntryLinesJsonTest {
  private static final String WALL = "2026-11-25T09:00:00+01:00";
  private static final String SCHEMA_TEXT =
      new String(EntryLinesJson.schema(), StandardCharsets.UTF_8);
  private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(
          SpecificationVersion.DRAFT_2020_12)
      .getSchema(SCHEMA_TEXT, InputFormat.JSON);

  private static List<JournalEntry> journal() throws JournalFailed {
    MemoryJournal journal = new MemoryJournal(Purpose.RECORD);
    for (GuidanceEvent event : EventSamples.ALL)
      journal.append(WALL, List.of(EntryJson.text(event)));
    return journal.entries();
  }

  private static List<String> faults(String line) {
    return SCHEMA.validate(line, InputFormat.JSON).stream()
        .map(Object::toString)
        .toList();
  }

  @Test
  void every_line_of_every_kind_of_entry_is_as_the_schema_says() throws JournalFailed {
    for (JournalEntry entry : journal())
      assertThat(faults(EntryLinesJson.line(entry)))
          .as(EntryLinesJson.line(entry))
          .isEmpty();
    assertThat(faults(EntryLinesJson.head(Purpose.PRACTICE, 7, Chain.START))).isEmpty();
  }

  @Test
  void the_schema_names_every_kind_and_every_field_of_it() throws Exception {
    ObjectMapper json = new ObjectMapper();
    JsonNode defs = json.readTree(SCHEMA_TEXT).get("$defs");
    for (GuidanceEvent event : EventSamples.ALL) {
      EntryText text = EntryJson.text(event);
      List<String> fields = new ArrayList<>();
      json.readTree(text.body()).fieldNames().forEachRemaining(fields::add);
      List<String> documented = new ArrayList<>();
      defs.path(text.kind()).path("properties").fieldNames().forEachRemaining(documented::add);
      assertThat(documented).as(text.kind()).containsExactlyElementsOf(fields);
    }
  }

  @Test
  void a_line_with_a_field_more_a_field_less_or_a_number_for_a_mass_is_not_as_the_schema_says()
      throws JournalFailed {
    String line = EntryLinesJson.line(journal().get(4));
    assertThat(line).contains("\"kind\":\"weight-accepted\"");
    assertThat(faults(line.replace("\"net\":\"60.5\"", "\"net\":\"60.5\",\"extra\":1")))
        .isNotEmpty();
    assertThat(faults(line.replace("\"net\":\"60.5\",", ""))).isNotEmpty();
    assertThat(faults(line.replace("\"net\":\"60.5\"", "\"net\":60.5"))).isNotEmpty();
    assertThat(faults(line.replace("weight-accepted", "batch-done"))).isNotEmpty();
  }

  @Test
  void the_chain_can_be_checked_from_the_lines_alone() throws JournalFailed, IOException {
    ObjectMapper json = new ObjectMapper();
    Chain chain = new Chain(Purpose.RECORD);
    String before = Chain.START;
    for (JournalEntry entry : journal()) {
      String line = EntryLinesJson.line(entry);
      JsonNode read = json.readTree(line);
      int body = line.indexOf(",\"event\":") + 9;
      JournalEntry again = new JournalEntry(
          read.get("entry").asLong(),
          read.get("wall").asText(),
          read.get("kind").asText(),
          line.substring(body, line.lastIndexOf(",\"previous\":")),
          read.get("previous").asText(),
          read.get("hash").asText());
      assertThat(chain.fault(again.sequence() - 1, before, again)).isEmpty();
      before = again.hash();
    }
  }
}
