package candlebench.station.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.EventSamples;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.record.BatchScript;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class EntryJsonTest {

  static Stream<GuidanceEvent> events() {
    return EventSamples.ALL.stream();
  }

  private static JournalEntry entry(EntryText text) {
    return new JournalEntry(7, "2026-11-25T09:00:00+01:00", text.kind(), text.body(), "", "");
  }

  @ParameterizedTest
  @MethodSource("events")
  void every_event_comes_back_as_it_was_written(GuidanceEvent event) throws JournalFailed {
    assertThat(EntryJson.event(entry(EntryJson.text(event)))).isEqualTo(event);
  }

  @Test
  void no_kind_of_event_is_left_out() {
    assertThat(EventSamples.ALL.stream().map(Object::getClass).distinct())
        .hasSameElementsAs(Arrays.asList(GuidanceEvent.class.getPermittedSubclasses()));
  }

  @Test
  void masses_are_exact_decimal_text() {
    EntryText text = EntryJson.text(EventSamples.WEIGHT);
    assertThat(text.kind()).isEqualTo("weight-accepted");
    assertThat(text.body())
        .contains("\"target\":\"60.48\"")
        .contains("\"indication\":\"810.7 g\"")
        .contains("\"place\":\"part 2\"");
  }

  @Test
  void the_same_event_is_the_same_bytes_whatever_order_its_lots_came_in() {
    GuidanceEvent.BatchStarted started = new BatchScript()
        .start("20261125-1", HarbourLane.CANDLE, 2, Map.of("d", "4", "b", "2", "a", "1", "c", "3"))
        .bench()
        .batch()
        .orElseThrow()
        .started();
    assertThat(EntryJson.text(started).body())
        .endsWith("\"lots\":{\"a\":\"1\",\"b\":\"2\",\"c\":\"3\",\"d\":\"4\"}}");
  }

  @Test
  void an_entry_of_an_unknown_kind_or_with_a_field_missing_is_named_by_its_number() {
    assertThatThrownBy(() -> EntryJson.event(entry(new EntryText("moon-landed", "{}"))))
        .isInstanceOf(JournalFailed.class)
        .hasMessageContaining("Entry 7")
        .hasMessageContaining("moon-landed");
    assertThatThrownBy(() -> EntryJson.event(entry(new EntryText("batch-done", "{}"))))
        .isInstanceOf(JournalFailed.class)
        .hasMessageContaining("Entry 7");
  }
}
