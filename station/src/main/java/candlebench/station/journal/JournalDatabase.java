package candlebench.station.journal;

import candlebench.station.journal.JournalFailed.Trouble;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.sqlite.SQLiteConfig;

/** How a journal's file is opened: settings that hold per connection, the mark of what it is, and its schema brought up to date. */
final class JournalDatabase {

  /** The schema, one resource for each version. A released one is never changed: a change is one more. */
  static final List<String> MIGRATIONS = List.of("001-entries.sql");

  /** Marks the file as a journal of this program: "CBj1" in ASCII. */
  private static final int APPLICATION_ID = 0x43426A31;

  /** How long a writer waits for a reader's short lock while the log is folded into the file. */
  private static final int BUSY_TIMEOUT_MILLIS = 2_000;

  private JournalDatabase() {}

  /** Opens for writing, creating the file or bringing its schema up to date where needed. */
  static Connection forWriting(Path file, Purpose purpose) throws JournalFailed {
    return forWriting(file, purpose, MIGRATIONS);
  }

  /** The same for a program that knows these versions of the schema. */
  static Connection forWriting(Path file, Purpose purpose, List<String> migrations)
      throws JournalFailed {
    try {
      Connection connection = connect(file, false);
      try {
        refuseForeign(connection, file, migrations.size());
        require(connection, file, "journal_mode", "WAL", "wal");
        require(connection, file, "synchronous", "FULL", "2");
        // On macOS a plain sync leaves the data in the drive's cache; elsewhere this changes
        // nothing.
        require(connection, file, "fullfsync", "1", "1");
        require(connection, file, "checkpoint_fullfsync", "1", "1");
        require(connection, file, "trusted_schema", "0", "0");
        migrate(connection, purpose, migrations);
        if (purpose(connection, file) != purpose)
          throw SqliteTrouble.of(file, Trouble.OTHER_PURPOSE);
        return connection;
      } catch (SQLException | JournalFailed refused) {
        connection.close();
        throw refused;
      }
    } catch (SQLException refused) {
      throw SqliteTrouble.of(file, refused);
    }
  }

  /** Opens for reading only; the file must be there. A writer at work is not disturbed. */
  static Connection forReading(Path file) throws JournalFailed {
    if (!Files.exists(file))
      throw new JournalFailed(
          Trouble.NOT_A_RECORD,
          "there is no record at " + file + ": name the data folder it is in");
    try {
      Connection connection = connect(file, true);
      try {
        refuseForeign(connection, file, MIGRATIONS.size());
        require(connection, file, "trusted_schema", "0", "0");
        if (number(connection, "PRAGMA user_version") == 0)
          throw SqliteTrouble.of(file, Trouble.NOT_A_RECORD);
        return connection;
      } catch (SQLException | JournalFailed refused) {
        connection.close();
        throw refused;
      }
    } catch (SQLException refused) {
      throw SqliteTrouble.of(file, refused);
    }
  }

  static Purpose purpose(Connection connection, Path file) throws SQLException, JournalFailed {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT word FROM purpose")) {
      if (row.next())
        for (Purpose purpose : Purpose.values())
          if (purpose.word().equals(row.getString(1))) return purpose;
      throw SqliteTrouble.of(file, Trouble.NOT_A_RECORD);
    }
  }

  static long number(Connection connection, String query) throws SQLException {
    return Long.parseLong(text(connection, query));
  }

  /** A connection to a file by its name as a URI, so that no character of a folder's name is read as a setting. */
  static Connection connect(Path file, boolean readOnly) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(readOnly);
    config.setBusyTimeout(BUSY_TIMEOUT_MILLIS);
    return config.createConnection(
        "jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath());
  }

  private static void refuseForeign(Connection connection, Path file, int newest)
      throws SQLException, JournalFailed {
    long mark = number(connection, "PRAGMA application_id");
    boolean fresh = mark == 0 && number(connection, "SELECT count(*) FROM sqlite_schema") == 0;
    if (mark != APPLICATION_ID && !fresh) throw SqliteTrouble.of(file, Trouble.NOT_A_RECORD);
    if (number(connection, "PRAGMA user_version") > newest)
      throw SqliteTrouble.of(file, Trouble.NEWER);
  }

  /** Takes the steps that are missing, each whole or not at all. */
  private static void migrate(Connection connection, Purpose purpose, List<String> migrations)
      throws SQLException {
    int version = (int) number(connection, "PRAGMA user_version");
    connection.setAutoCommit(false);
    for (; version < migrations.size(); version++) {
      execute(connection, resource(migrations.get(version)));
      if (version == 0) {
        execute(connection, "PRAGMA application_id = " + APPLICATION_ID);
        try (PreparedStatement mark =
            connection.prepareStatement("INSERT INTO purpose VALUES (1, ?)")) {
          mark.setString(1, purpose.word());
          mark.executeUpdate();
        }
      }
      execute(connection, "PRAGMA user_version = " + (version + 1));
      connection.commit();
    }
    connection.setAutoCommit(true);
  }

  private static void require(
      Connection connection, Path file, String pragma, String wanted, String answer)
      throws SQLException, JournalFailed {
    execute(connection, "PRAGMA " + pragma + " = " + wanted);
    String actual = text(connection, "PRAGMA " + pragma);
    if (!actual.equals(answer))
      throw new JournalFailed(
          Trouble.DISK,
          file + " cannot be written safely here: " + pragma + " is " + actual + " where " + answer
              + " is needed; put the data folder on a local disk");
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  private static String text(Connection connection, String query) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      if (!row.next()) throw new SQLException("no answer to " + query);
      return row.getString(1);
    }
  }

  private static String resource(String name) {
    try (InputStream in = JournalDatabase.class.getResourceAsStream(name)) {
      if (in == null) throw new IllegalStateException("the program lacks its own file " + name);
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new IllegalStateException("the program cannot read its own file " + name, unreadable);
    }
  }
}
