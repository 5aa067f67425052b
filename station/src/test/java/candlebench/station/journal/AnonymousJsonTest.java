package candlebench.station.journal;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.station.guidance.EventSamples;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.MakerCommand;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is sent to others names nobody, and is still what it was. */
class AnonymousJsonTest {
  private static final String SECRET = "Zz secret";

  /** Text that stays as it is: words of our own, codes, and what belongs to a recipe or a pot. */
  private static final Set<String> STAY = Set.of(
      "batch",
      "choice",
      "code",
      "command",
      "commandId",
      "material",
      "name",
      "pot",
      "process",
      "product",
      "what");

  private final AnonymousJson anonymous = new AnonymousJson();

  static Stream<GuidanceEvent> events() {
    return EventSamples.ALL.stream();
  }

  @ParameterizedTest
  @MethodSource("events")
  void an_event_stays_readable_and_is_the_same_the_second_time(GuidanceEvent event)
      throws Exception {
    EntryText hidden = anonymous.entry(EntryJson.text(event));
    GuidanceEvent read =
        EntryJson.event(new JournalEntry(1, "", hidden.kind(), hidden.body(), "", ""));
    assertThat(EntryJson.text(read)).isEqualTo(hidden);
    assertThat(anonymous.entry(EntryJson.text(event))).isEqualTo(hidden);
    assertThat(hidden.body()).doesNotContain("Robin", "bench scale", "lot 7", "W-12");
  }

  @Test
  void what_names_nobody_is_the_same_bytes() {
    for (GuidanceEvent event : EventSamples.ALL) {
      EntryText text = EntryJson.text(event);
      if (Stream.of("person", "lot", "scaleName", "reason", "note", "text", "corrected")
          .noneMatch(text.toString()::contains))
        assertThat(anonymous.entry(text)).isEqualTo(text);
    }
  }

  @Test
  void every_field_in_which_a_maker_writes_is_hidden_in_commands() {
    Mass some = Mass.ofGrams("12");
    List<MakerCommand> commands = List.of(
        new MakerCommand.StartBatch("recipe", 1, SECRET, Map.of("wax", SECRET)),
        new MakerCommand.Choose("keep", SECRET),
        new MakerCommand.EnterByHand(some, SECRET),
        new MakerCommand.Abandon(SECRET),
        new MakerCommand.ReceiveLot("wax", SECRET, some, SECRET, SECRET),
        new MakerCommand.ChangeLot("wax", SECRET),
        new MakerCommand.CheckScale(SECRET, some, SECRET),
        new MakerCommand.Note("20261125-1", SECRET, SECRET),
        new MakerCommand.Correct(
            "20261125-1", 7, Correctable.LOT, "wax", SECRET, SECRET, SECRET, SECRET));
    for (MakerCommand command : commands)
      assertThat(anonymous.line(CommandJson.text(command))).doesNotContain(SECRET);
    MakerCommand weight =
        new MakerCommand.Correct("20261125-1", 7, Correctable.WEIGHT, "", "56.2", "56.1", "", "");
    assertThat(anonymous.line(CommandJson.text(weight))).isEqualTo(CommandJson.text(weight));
  }

  /** A text that comes new into an event has to be named here or hidden there. */
  @Test
  void no_text_of_an_event_is_forgotten() throws Exception {
    Set<String> open = new TreeSet<>();
    for (GuidanceEvent event : EventSamples.ALL) {
      JsonNode tree = EntryJson.JSON.readTree(EntryJson.text(event).body());
      for (RecordComponent part : event.getClass().getRecordComponents()) {
        if (part.getType() != String.class) continue;
        ObjectNode filled = tree.deepCopy();
        filled.set(part.getName(), TextNode.valueOf(SECRET));
        if (anonymous.line(filled.toString()).contains(SECRET)) open.add(part.getName());
      }
    }
    assertThat(STAY)
        .as("may a maker write in it? Hide it in AnonymousJson; else name it here")
        .containsAll(open);
  }

  @Test
  void no_text_of_a_command_is_forgotten() {
    Set<String> open = new TreeSet<>();
    for (Class<?> command : MakerCommand.class.getPermittedSubclasses()) {
      ObjectNode filled = EntryJson.JSON.createObjectNode().put("entry", 7).put("what", "NOTE");
      for (RecordComponent part : command.getRecordComponents())
        if (part.getType() == String.class) filled.put(part.getName(), SECRET + part.getName());
      String hidden = anonymous.line(filled.toString());
      for (RecordComponent part : command.getRecordComponents())
        if (hidden.contains(SECRET + part.getName() + "\"")) open.add(part.getName());
    }
    open.remove("recipe");
    assertThat(STAY)
        .as("may a maker write in it? Hide it in AnonymousJson; else name it here")
        .containsAll(open);
  }
}
