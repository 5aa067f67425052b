package candlebench.station.journal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;

/**
 * The one connection that writes entries. After a failure it is of no more use: the driver closes a statement that failed, and a full
 * disk ends a transaction by itself; then it is closed and another one opened.
 */
final class EntryWriter implements AutoCloseable {

  /** The most pages SQLite ever gives a file. */
  static final long NO_LIMIT = 4_294_967_294L;

  private final Connection connection;
  private final PreparedStatement begin;
  private final PreparedStatement insert;
  private final PreparedStatement commit;

  private EntryWriter(Connection connection) throws SQLException {
    this.connection = connection;
    this.begin = connection.prepareStatement("BEGIN IMMEDIATE");
    this.insert = connection.prepareStatement(
        "INSERT INTO entry (sequence, wall, kind, body, previous, hash) VALUES (?, ?, ?, ?, ?, ?)");
    this.commit = connection.prepareStatement("COMMIT");
  }

  static EntryWriter open(Path file, Purpose purpose, long mostPages)
      throws JournalFailed, SQLException {
    Connection connection = JournalDatabase.forWriting(file, purpose);
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA max_page_count = " + mostPages);
      return new EntryWriter(connection);
    } catch (SQLException refused) {
      connection.close();
      throw refused;
    }
  }

  /** Writes entries in one transaction, which is on disk when this returns. */
  void write(List<JournalEntry> entries, Runnable beforeCommit) throws SQLException {
    begin.execute();
    for (JournalEntry entry : entries) {
      insert.setLong(1, entry.sequence());
      insert.setString(2, entry.wall());
      insert.setString(3, entry.kind());
      insert.setString(4, entry.body());
      insert.setString(5, entry.previous());
      insert.setString(6, entry.hash());
      insert.executeUpdate();
    }
    beforeCommit.run();
    commit.execute();
  }

  /** The last entry, if there is one. */
  Optional<JournalEntry> last() throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(
            "SELECT sequence, wall, kind, body, previous, hash FROM entry ORDER BY sequence DESC LIMIT 1")) {
      return row.next() ? Optional.of(JournalFile.entry(row)) : Optional.empty();
    }
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException leftOpen) {
      // What was committed is on disk, what was not is undone; the system closes the rest with the
      // process.
    }
  }
}
