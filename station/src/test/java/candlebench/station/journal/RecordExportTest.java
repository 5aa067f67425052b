package candlebench.station.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.record.BatchScript;
import candlebench.station.record.Recorded;
import candlebench.station.record.WeighingsCsv;
import candlebench.station.record.WeighingsCsv.Decimals;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class RecordExportTest {

  private static MemoryJournal journal() throws JournalFailed {
    MemoryJournal journal = new MemoryJournal(Purpose.RECORD);
    for (String code : List.of("20261125-1", "20261125-2"))
      for (Recorded each : BatchScript.candles(code, 2, Map.of()).entries())
        journal.append(each.wall(), List.of(EntryJson.text(each.event())));
    BatchScript script = new BatchScript();
    journal.append(
        "2026-11-26T09:00:00+01:00",
        List.of(EntryJson.text(new Corrected(
            script.now(),
            "20261125-1",
            4,
            Correctable.WEIGHT,
            "",
            "466.7",
            "466.9",
            "digits swapped",
            "Sascha"))));
    return journal;
  }

  private static List<String> table(MemoryJournal journal) throws JournalFailed {
    StringBuilder out = new StringBuilder();
    RecordExport.table(
        reader -> journal.read(1, reader), new WeighingsCsv(Decimals.POINT), out::append);
    return out.toString().lines().toList();
  }

  @Test
  void the_table_has_every_weighing_of_every_batch_and_a_late_correction_at_its_batch()
      throws JournalFailed {
    MemoryJournal journal = journal();
    List<String> rows = table(journal);
    assertThat(rows.subList(1, rows.size()))
        .extracting(row -> row.split(",")[0] + " " + row.split(",")[1])
        .containsExactly(
            "weighing 20261125-1",
            "weighing 20261125-1",
            "weighing 20261125-1",
            "weighing 20261125-1",
            "correction 20261125-1",
            "weighing 20261125-2",
            "weighing 20261125-2",
            "weighing 20261125-2",
            "weighing 20261125-2",
            "head ");
    assertThat(rows.get(1)).contains(",466.9,").contains(",466.7,");
    assertThat(rows.get(rows.size() - 1)).endsWith(journal.head());
  }

  @Test
  void an_entry_written_while_the_table_is_made_is_left_out() throws JournalFailed {
    MemoryJournal journal = journal();
    List<String> before = table(journal);
    int[] pass = {0};
    StringBuilder out = new StringBuilder();
    RecordExport.table(
        reader -> {
          if (pass[0]++ == 1)
            for (Recorded each : BatchScript.candles("20261127-3", 2, Map.of()).entries())
              journal.append(each.wall(), List.of(EntryJson.text(each.event())));
          journal.read(1, reader);
        },
        new WeighingsCsv(Decimals.POINT),
        out::append);
    assertThat(out.toString().lines().toList()).isEqualTo(before);
  }

  @Test
  void the_lines_are_all_entries_and_the_head() throws JournalFailed {
    MemoryJournal journal = journal();
    List<String> lines = new ArrayList<>();
    RecordExport.lines(reader -> journal.read(1, reader), Purpose.RECORD, lines::add);
    assertThat(lines).hasSize((int) journal.length() + 1);
    assertThat(lines.get(lines.size() - 1)).contains(journal.head()).contains("\"kind\":\"head\"");
  }

  @Test
  void an_entry_that_cannot_be_read_is_named() throws JournalFailed {
    MemoryJournal journal = journal();
    for (Recorded each :
        BatchScript.candles("20261127-3", 2, Map.of()).entries().subList(0, 3))
      journal.append(each.wall(), List.of(EntryJson.text(each.event())));
    journal.append("2026-11-27T09:00:00+01:00", List.of(new EntryText("moon-landed", "{}")));
    assertThatThrownBy(() -> table(journal))
        .isInstanceOf(JournalFailed.class)
        .hasMessageContaining("moon-landed");
  }
}
