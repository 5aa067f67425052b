package candlebench.station.journal;

import static candlebench.station.journal.JournalContract.WALL;
import static candlebench.station.journal.JournalContract.text;

import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** What somebody may do to a record's file behind the program's back, with every trigger out of the way. */
final class Tampering {

  /** One way to do it. */
  interface Way {
    void with(Tampering hands) throws Exception;
  }

  /** How many entries the record has before anything is done to it. */
  static final int ENTRIES = 20;

  final Path file;
  final List<JournalEntry> written;

  private Tampering(Path file, List<JournalEntry> written) {
    this.file = file;
    this.written = written;
  }

  /** A sound record of a purpose, closed. */
  static Tampering of(Path file, Purpose purpose) throws JournalFailed {
    List<JournalEntry> written = new ArrayList<>();
    try (SqliteJournal journal = SqliteJournal.open(file, purpose)) {
      List<EntryText> texts = new ArrayList<>();
      for (int i = 1; i <= ENTRIES; i++) texts.add(text("step", i));
      written.addAll(journal.append(WALL, texts));
    }
    return new Tampering(file, written);
  }

  Tampering copyTo(Path other) throws Exception {
    return new Tampering(Files.copy(file, other), new ArrayList<>(written));
  }

  JournalEntry entry(int sequence) {
    return written.get(sequence - 1);
  }

  /** An entry with a hash as it should be, in a chain of a purpose. */
  static JournalEntry forged(Purpose purpose, JournalEntry after, int number) {
    return new Chain(purpose).next(after.sequence(), after.hash(), WALL, text("step", number));
  }

  /** A whole record of good hashes that goes another way from an entry on; from the first one, where that is 1. */
  List<JournalEntry> anewFrom(Purpose purpose, int sequence) {
    List<JournalEntry> anew = new ArrayList<>(written.subList(0, sequence - 1));
    while (anew.size() < ENTRIES) {
      JournalEntry last = anew.isEmpty()
          ? new JournalEntry(0, WALL, "", "", "", Chain.START)
          : anew.get(anew.size() - 1);
      anew.add(forged(purpose, last, 900 + anew.size()));
    }
    return anew;
  }

  void dropTriggers() throws Exception {
    sql(
        "DROP TRIGGER IF EXISTS entry_follows_the_last",
        "DROP TRIGGER IF EXISTS entry_is_never_changed",
        "DROP TRIGGER IF EXISTS entry_is_never_erased",
        "DROP TRIGGER IF EXISTS purpose_is_never_changed",
        "DROP TRIGGER IF EXISTS purpose_is_never_erased");
  }

  void set(String column, String value, int sequence) throws Exception {
    dropTriggers();
    sql("UPDATE entry SET " + column + " = '" + value + "' WHERE sequence = " + sequence);
  }

  void erase(int first, int last) throws Exception {
    dropTriggers();
    sql("DELETE FROM entry WHERE sequence BETWEEN " + first + " AND " + last);
  }

  /** Makes these the entries, under the numbers 1, 2, 3 and so on, whatever they said of themselves. */
  void fillWith(List<JournalEntry> entries) throws Exception {
    erase(1, Integer.MAX_VALUE);
    put(1, entries);
  }

  void put(int sequence, JournalEntry entry) throws Exception {
    put(sequence, List.of(entry));
  }

  /** Entries in place of what stands under the numbers from one on, whatever they said of themselves. */
  void put(int first, List<JournalEntry> entries) throws Exception {
    dropTriggers();
    try (Connection connection = connection();
        PreparedStatement insert =
            connection.prepareStatement("INSERT OR REPLACE INTO entry VALUES (?, ?, ?, ?, ?, ?)")) {
      for (int i = 0; i < entries.size(); i++) {
        JournalEntry entry = entries.get(i);
        insert.setLong(1, first + i);
        insert.setString(2, entry.wall());
        insert.setString(3, entry.kind());
        insert.setString(4, entry.body());
        insert.setString(5, entry.previous());
        insert.setString(6, entry.hash());
        insert.executeUpdate();
      }
    }
  }

  void sql(String... lines) throws Exception {
    try (Connection connection = connection();
        Statement statement = connection.createStatement()) {
      for (String line : lines) statement.executeUpdate(line);
    }
  }

  void cutFile(double share) throws Exception {
    try (FileChannel open = FileChannel.open(file, StandardOpenOption.WRITE)) {
      open.truncate((long) (open.size() * share));
    }
  }

  void zero(long from, int length) throws Exception {
    try (FileChannel open = FileChannel.open(file, StandardOpenOption.WRITE)) {
      open.write(ByteBuffer.allocate(length), from);
    }
  }

  /** The page on which the entries begin. */
  long pageOfEntries() throws Exception {
    try (Connection connection = connection()) {
      long page = JournalDatabase.number(
          connection, "SELECT rootpage FROM sqlite_schema WHERE name = 'entry'");
      return (page - 1) * JournalDatabase.number(connection, "PRAGMA page_size");
    }
  }

  /** Twenty more entries, of which the log that held them is thrown away before it is folded into the file. */
  void loseLog() throws Exception {
    Path kept = file.resolveSibling("kept.db");
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      for (int i = 1; i <= ENTRIES; i++)
        written.addAll(journal.append(WALL, List.of(text("step", ENTRIES + i))));
      Files.copy(file, kept);
    }
    Files.delete(file);
    Files.move(kept, file);
  }

  private Connection connection() throws Exception {
    return DriverManager.getConnection("jdbc:sqlite:" + file + "?synchronous=OFF");
  }
}
