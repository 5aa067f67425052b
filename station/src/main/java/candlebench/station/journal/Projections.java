package candlebench.station.journal;

import candlebench.station.journal.JournalFailed.Trouble;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.LotUse;
import candlebench.station.record.ScaleCheck;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/**
 * What is found fast because it was folded before: batches, which lot went into which of them, what is left of a lot, and where a
 * starting bench may go on from.
 *
 * <p>It lies in a file of its own beside the journal, which is the only record: throw this file away and it is built anew. Before each
 * answer it reads what was added to the journal since, so nothing has to tell it. Safe from any thread; one at a time is served.
 */
public final class Projections implements AutoCloseable {

  /** The most rows of one answer. */
  public static final int MOST_ROWS = 10_000;

  private final Journal journal;
  private final Path file;
  private final ProjectionTables tables;
  private final ProjectionFold fold;

  private Projections(Journal journal, Path file, ProjectionTables tables, ProjectionFold fold) {
    this.journal = journal;
    this.file = file;
    this.tables = tables;
    this.fold = fold;
  }

  /** Where the projections of a journal's file lie. */
  public static Path beside(Path journal) {
    return journal.resolveSibling(journal.getFileName() + "-projections");
  }

  /** Opens the projections of a journal, and builds them anew where they are of another journal, of another version, or damaged. */
  public static Projections open(Path file, Journal journal) throws JournalFailed {
    try {
      ProjectionTables tables = usable(file, journal);
      return new Projections(journal, file, tables, new ProjectionFold(journal, tables));
    } catch (SQLException refused) {
      throw failed(file, refused);
    }
  }

  private static ProjectionTables usable(Path file, Journal journal)
      throws SQLException, JournalFailed {
    ProjectionTables tables;
    try {
      tables = ProjectionTables.open(file);
    } catch (SQLException damaged) {
      return ProjectionTables.fresh(file);
    }
    try {
      if (tables.checkpoint(0).isOf(journal) && tables.checkpoint(1).isOf(journal)) return tables;
    } catch (SQLException damaged) {
      // Built anew below, as those of another journal are.
    }
    tables.close();
    return ProjectionTables.fresh(file);
  }

  /**
   * Where a starting bench may go on from: the start of the batch before the last, so that what was said shortly before the end is
   * read again too.
   */
  public synchronized Checkpoint checkpoint() throws JournalFailed {
    return asked(() -> tables.checkpoint(1));
  }

  /** Reads what was added to the journal. Every question does so by itself. */
  public synchronized void catchUp() throws JournalFailed {
    asked(() -> Optional.empty());
  }

  /** The newest batches that began before an entry, newest first. */
  public synchronized List<BatchRow> batches(long before, int most) throws JournalFailed {
    return asked(() -> tables.batches(before, Math.min(most, MOST_ROWS)));
  }

  public synchronized Optional<BatchRow> batch(String code) throws JournalFailed {
    return asked(() -> tables.batch(code));
  }

  /** All that the journal says of a batch. */
  public synchronized Optional<BatchRecord> record(String code) throws JournalFailed {
    return asked(() -> {
      Optional<BatchRow> row = tables.batch(code);
      return row.isEmpty() ? Optional.empty() : Optional.of(fold.record(row.get()));
    });
  }

  /** When a scale, by its name, was last tried with a known mass before an entry was written. */
  public synchronized Optional<ScaleCheck> lastCheck(String scale, long before)
      throws JournalFailed {
    return asked(() -> fold.lastCheck(scale, before));
  }

  /** From a lot to its batches and vessels; the material may be empty for any. Newest first. */
  public synchronized List<LotHit> batchesOf(String lot, String material) throws JournalFailed {
    return asked(() -> tables.usesOf(lot, material, MOST_ROWS));
  }

  /** From a batch to its lots; none where there is no such batch. */
  public synchronized List<LotUse> lotsOf(String code) throws JournalFailed {
    return asked(() -> {
      Optional<BatchRow> row = tables.batch(code);
      return row.isEmpty() ? List.of() : tables.usesIn(row.get().first());
    });
  }

  /** What came in of each lot and what went into pots, the newest first. */
  public synchronized List<LotStock> stock(int most) throws JournalFailed {
    return asked(() -> tables.stock(Math.min(most, MOST_ROWS)));
  }

  @Override
  public synchronized void close() {
    tables.close();
  }

  /** A question to the tables. */
  private interface Question<T> {
    T ask() throws SQLException, JournalFailed;
  }

  private <T> T asked(Question<T> question) throws JournalFailed {
    try {
      fold.catchUp();
      return question.ask();
    } catch (SQLException refused) {
      throw failed(file, refused);
    }
  }

  private static JournalFailed failed(Path file, SQLException refused) {
    return new JournalFailed(
        Trouble.DISK,
        "the lists folded from the record cannot be kept in " + file + ": " + refused.getMessage()
            + "; the record itself is untouched: make room or rights there, then ask again",
        refused);
  }
}
