package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.journal.Checkpoint;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.MemoryJournal;
import candlebench.station.journal.Projections;
import candlebench.station.journal.Purpose;
import candlebench.station.record.BatchScript;
import candlebench.station.record.Recorded;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecollectionTest {

  @TempDir
  Path folder;

  private static MemoryJournal journal(String... codes) throws JournalFailed {
    MemoryJournal journal = new MemoryJournal(Purpose.RECORD);
    for (String code : codes)
      for (Recorded each : BatchScript.candles(code, 2, Map.of()).entries())
        journal.append(each.wall(), List.of(EntryJson.text(each.event())));
    return journal;
  }

  private Checkpoint checkpoint(MemoryJournal journal) throws JournalFailed {
    try (Projections projections = Projections.open(folder.resolve("projections"), journal)) {
      return projections.checkpoint();
    }
  }

  @Test
  void a_bench_that_goes_on_from_a_checkpoint_knows_what_one_knows_that_read_everything()
      throws JournalFailed {
    MemoryJournal journal = journal("20261125-1", "20261125-2", "20261126-3");
    Checkpoint from = checkpoint(journal);
    assertThat(from.entries()).isPositive();
    Recollection whole = Recollection.of(journal);
    Recollection resumed = Recollection.of(journal, from);
    assertThat(resumed.progress()).isEqualTo(whole.progress());
    assertThat(resumed.last()).isEqualTo(whole.last());
  }

  @Test
  void a_checkpoint_of_another_journal_is_not_trusted() throws JournalFailed {
    Checkpoint foreign = checkpoint(journal("20261125-1", "20261125-2", "20261126-3"));
    MemoryJournal journal = journal("20270101-1", "20270101-2", "20270102-3");
    assertThat(Recollection.of(journal, foreign).progress())
        .isEqualTo(Recollection.of(journal).progress());
  }
}
