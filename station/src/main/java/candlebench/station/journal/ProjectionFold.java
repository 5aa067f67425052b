package candlebench.station.journal;

import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.LotReceived;
import candlebench.station.guidance.GuidanceEvent.Noted;
import candlebench.station.guidance.GuidanceEvent.ScaleChecked;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.PotEntries;
import candlebench.station.record.Recorded;
import candlebench.station.record.ScaleCheck;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Goes through a journal's entries from where it was last, and keeps the tables of projections up to date. What is in memory here is
 * only ever what follows from the newest checkpoint and the entries after it.
 */
final class ProjectionFold {

  /** So many entries are read and committed together. */
  private static final int ENTRIES_AT_ONCE = 4_000;

  private final Journal journal;
  private final ProjectionTables tables;
  private long last;
  private BenchProgress bench;
  private PotEntries batches;
  private Checkpoint newest;
  private Checkpoint older;

  ProjectionFold(Journal journal, ProjectionTables tables) throws SQLException {
    this.journal = journal;
    this.tables = tables;
    goBack();
  }

  /** Reads what was added. On a failure nothing is kept but what was committed, and the rest is read again next time. */
  void catchUp() throws SQLException, JournalFailed {
    long end = journal.length();
    while (last < end) {
      List<JournalEntry> entries = new ArrayList<>();
      journal.read(last + 1, Math.min(end, last + ENTRIES_AT_ONCE), entries::add);
      tables.begin();
      try {
        for (JournalEntry entry : entries) take(entry);
        keepBatch();
        tables.checkpoint(0, newest);
        tables.checkpoint(1, older);
        tables.commit();
      } catch (SQLException | JournalFailed | RuntimeException refused) {
        tables.rollback();
        goBack();
        throw refused;
      }
    }
  }

  /** The record of a batch, read again from the journal. */
  BatchRecord record(BatchRow row) throws SQLException, JournalFailed {
    List<JournalEntry> entries = new ArrayList<>();
    journal.read(row.first(), row.last(), entries::add);
    for (long later : tables.later(row.first())) journal.read(later, later, entries::add);
    List<Recorded> recorded = new ArrayList<>();
    for (JournalEntry entry : entries) recorded.add(recorded(entry));
    return BatchRecord.of(PotEntries.of(row.code(), recorded));
  }

  /** A scale's last check before an entry, as the journal has it. */
  Optional<ScaleCheck> lastCheck(String scale, long before) throws SQLException, JournalFailed {
    Optional<Long> entry = tables.lastCheck(scale, before);
    List<JournalEntry> entries = new ArrayList<>();
    if (entry.isPresent()) journal.read(entry.get(), entry.get(), entries::add);
    for (JournalEntry each : entries) return Optional.of(ScaleCheck.of(recorded(each)));
    return Optional.empty();
  }

  private void goBack() throws SQLException {
    newest = tables.checkpoint(0);
    older = tables.checkpoint(1);
    last = newest.entries();
    bench = newest.bench();
    batches = new PotEntries();
  }

  private void take(JournalEntry entry) throws SQLException, JournalFailed {
    Recorded recorded = recorded(entry);
    GuidanceEvent event = recorded.event();
    if (event instanceof BatchStarted) {
      keepBatch();
      atStart(entry);
    }
    bench = bench.after(event);
    last = entry.sequence();
    batches.and(recorded);
    if (event instanceof LotReceived received) tables.write(recorded, received);
    if (event instanceof ScaleChecked checked) tables.write(entry.sequence(), checked);
    if (event instanceof Corrected corrected) later(entry, corrected.batch());
    if (event instanceof Noted noted) later(entry, noted.batch());
  }

  /**
   * The checkpoint moves on where nothing else runs or waits for its pot, but for the batch that it stands at, which is read again after
   * every start.
   */
  private void atStart(JournalEntry entry) {
    if (newest.entries() == entry.sequence() - 1 || !bench.isQuiet()) return;
    older = newest;
    newest = new Checkpoint(
        entry.sequence() - 1,
        entry.previous(),
        BenchProgress.betweenBatches(bench.taught(), bench.zeros(), bench.habits(), bench.begun()));
  }

  private void keepBatch() throws SQLException {
    for (List<Recorded> batch : batches.all()) tables.write(BatchRecord.of(batch), last);
  }

  /** Something is said of a batch; where another has begun since, its record is folded again. */
  private void later(JournalEntry entry, String code) throws SQLException, JournalFailed {
    Optional<BatchRow> row = tables.batch(code);
    if (row.isEmpty() || batches.has(code)) return;
    tables.writeLater(entry.sequence(), row.get().first());
    tables.write(record(row.get()), row.get().last());
  }

  private static Recorded recorded(JournalEntry entry) throws JournalFailed {
    return new Recorded(entry.sequence(), entry.wall(), EntryJson.event(entry));
  }
}
