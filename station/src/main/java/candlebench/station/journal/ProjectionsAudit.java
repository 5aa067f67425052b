package candlebench.station.journal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Compares the lists that lie beside a journal with what the journal says, folded anew elsewhere. They are no record, but pages and a
 * starting bench read them. A bench at work is not disturbed: a copy of them is looked at, brought up to date first.
 */
public final class ProjectionsAudit {
  private static final List<String> TABLES =
      List.of("batch", "later", "lot_use", "lot_received", "scale_check");

  private ProjectionsAudit() {}

  /** What is wrong with the lists beside a sound journal, in words, if anything. */
  public static Optional<String> of(Path journal) throws JournalFailed {
    Path beside = Projections.beside(journal);
    if (!Files.exists(beside)) return Optional.empty();
    try {
      Path folder = Files.createTempDirectory("candlebench-audit");
      try {
        return compared(journal, beside, folder);
      } finally {
        remove(folder);
      }
    } catch (IOException | SQLException refused) {
      throw new JournalFailed(
          JournalFailed.Trouble.DISK,
          "the lists in " + beside + " cannot be compared with the record: " + refused.getMessage()
              + "; they are no record: stop the bench, delete them, and they are built anew",
          refused);
    }
  }

  private static Optional<String> compared(Path journal, Path beside, Path folder)
      throws SQLException, JournalFailed {
    Path kept = folder.resolve("kept");
    Path anew = folder.resolve("anew");
    try (Connection connection = JournalDatabase.connect(beside, true);
        PreparedStatement copy = connection.prepareStatement("VACUUM INTO ?")) {
      copy.setString(1, kept.toString());
      copy.executeUpdate();
    }
    try (JournalFile file = JournalFile.open(journal)) {
      Journal reading = new Reading(file, file.last());
      for (Path each : List.of(kept, anew))
        try (Projections projections = Projections.open(each, reading)) {
          projections.catchUp();
        }
    }
    return differing(kept, anew)
        .map(what -> "the lists in " + beside + " do not say what the record says (" + what
            + "): they are no record; stop the bench, delete that file, and it is built anew");
  }

  private static Optional<String> differing(Path kept, Path anew) throws SQLException {
    try (ProjectionTables one = ProjectionTables.open(kept);
        ProjectionTables other = ProjectionTables.open(anew)) {
      for (int age = 0; age < 2; age++)
        if (!one.checkpoint(age).equals(other.checkpoint(age))) return Optional.of("checkpoint");
    }
    try (Connection connection = JournalDatabase.connect(kept, false)) {
      try (PreparedStatement attach = connection.prepareStatement("ATTACH ? AS anew")) {
        attach.setString(1, anew.toString());
        attach.executeUpdate();
      }
      for (String table : TABLES)
        if (rowsOnlyIn("main." + table, "anew." + table, connection)
                + rowsOnlyIn("anew." + table, "main." + table, connection)
            > 0) return Optional.of(table);
    }
    return Optional.empty();
  }

  private static long rowsOnlyIn(String one, String other, Connection connection)
      throws SQLException {
    return JournalDatabase.number(
        connection,
        "SELECT count(*) FROM (SELECT * FROM " + one + " EXCEPT SELECT * FROM " + other + ")");
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) Files.delete(each);
    } catch (UncheckedIOException unreadable) {
      throw unreadable.getCause();
    }
  }

  /** A journal's file as it stood at its last entry; nothing is added to it. */
  private record Reading(JournalFile file, JournalEntry last) implements Journal {

    @Override
    public Purpose purpose() {
      return file.purpose();
    }

    @Override
    public List<JournalEntry> append(String wall, List<EntryText> texts) {
      throw new UnsupportedOperationException("an audit adds nothing");
    }

    @Override
    public void read(long from, long to, Consumer<JournalEntry> reader) throws JournalFailed {
      file.read(from, Math.min(to, last.sequence()), reader);
    }

    @Override
    public long length() {
      return last.sequence();
    }

    @Override
    public String head() {
      return last.hash();
    }

    @Override
    public void close() {
      file.close();
    }
  }
}
