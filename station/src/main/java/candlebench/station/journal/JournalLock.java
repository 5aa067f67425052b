package candlebench.station.journal;

import candlebench.station.journal.JournalFailed.Trouble;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * Keeps a second program from writing to the same journal, while readers stay free.
 *
 * <p>It is an exclusive lock on an empty file beside the journal. The system frees it when the process ends, however it ends. The
 * database takes it rather than a lock of Java's: that one would be lost in this process as soon as anybody else in it opened and
 * closed the same file.
 */
final class JournalLock implements AutoCloseable {
  private final Connection connection;

  private JournalLock(Connection connection) {
    this.connection = connection;
  }

  static JournalLock on(Path journal) throws JournalFailed {
    Path file = journal.resolveSibling(journal.getFileName() + ".lock");
    try {
      Connection connection = JournalDatabase.connect(file, false);
      try (Statement statement = connection.createStatement()) {
        statement.execute("PRAGMA busy_timeout = 0");
        statement.execute("BEGIN EXCLUSIVE");
        return new JournalLock(connection);
      } catch (SQLException refused) {
        connection.close();
        throw refused;
      }
    } catch (SQLiteException refused) {
      if (refused.getResultCode() == SQLiteErrorCode.SQLITE_BUSY)
        throw SqliteTrouble.of(journal, Trouble.HELD);
      throw SqliteTrouble.of(journal, refused);
    } catch (SQLException refused) {
      throw SqliteTrouble.of(journal, refused);
    }
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException leftHeld) {
      // The system frees it with the process.
    }
  }
}
