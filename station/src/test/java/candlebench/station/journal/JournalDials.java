package candlebench.station.journal;

import java.lang.reflect.Field;
import java.sql.Connection;
import java.sql.Statement;
import java.util.Optional;

/** Turns a journal's settings to what the program never uses, to see that the tests would notice. */
public final class JournalDials {

  private JournalDials() {}

  /** Has the database sync as named from now on: {@code FULL}, {@code NORMAL} or {@code OFF}. */
  public static void synchronous(SqliteJournal journal, String how) throws Exception {
    try (Statement statement = connection(journal).createStatement()) {
      statement.execute("PRAGMA synchronous = " + how);
    }
  }

  /** Leaves the file no more room than it takes now. */
  public static void fillDisk(SqliteJournal journal) throws Exception {
    journal.allowPages(JournalDatabase.number(connection(journal), "PRAGMA page_count"));
  }

  public static void makeRoom(SqliteJournal journal) {
    journal.allowPages(EntryWriter.NO_LIMIT);
  }

  private static Connection connection(SqliteJournal journal) throws ReflectiveOperationException {
    Object writer = ((Optional<?>) field(journal, "writer")).orElseThrow();
    return (Connection) field(writer, "connection");
  }

  private static Object field(Object of, String name) throws ReflectiveOperationException {
    Field field = of.getClass().getDeclaredField(name);
    field.setAccessible(true);
    return field.get(of);
  }
}
