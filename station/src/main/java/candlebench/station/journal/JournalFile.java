package candlebench.station.journal;

import candlebench.station.journal.JournalFailed.Trouble;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Objects;
import java.util.function.Consumer;

/** A journal's file opened for reading only, whether or not a bench is writing to it. */
public final class JournalFile implements AutoCloseable {
  private final Path file;
  private final Connection connection;
  private final Purpose purpose;

  private JournalFile(Path file, Connection connection, Purpose purpose) {
    this.file = file;
    this.connection = connection;
    this.purpose = purpose;
  }

  public static JournalFile open(Path file) throws JournalFailed {
    Connection connection = JournalDatabase.forReading(file);
    try {
      return new JournalFile(file, connection, JournalDatabase.purpose(connection, file));
    } catch (SQLException refused) {
      close(connection);
      throw SqliteTrouble.of(file, refused);
    } catch (JournalFailed refused) {
      close(connection);
      throw refused;
    }
  }

  public Purpose purpose() {
    return purpose;
  }

  /**
   * Hands on the entries from a sequence number on as they stand, unchecked, in the order of their numbers; for an audit, which has
   * to see what is wrong. Damage that the database itself meets ends it with the number of the last entry that could be read.
   */
  public void scan(long from, Consumer<JournalEntry> reader) throws JournalFailed {
    scan(from, Long.MAX_VALUE, reader);
  }

  private void scan(long from, long to, Consumer<JournalEntry> reader) throws JournalFailed {
    long last = from - 1;
    try (PreparedStatement select = connection.prepareStatement(
        "SELECT sequence, wall, kind, body, previous, hash FROM entry WHERE sequence BETWEEN ? AND ? ORDER BY sequence")) {
      select.setLong(1, from);
      select.setLong(2, to);
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          JournalEntry entry = entry(row);
          last = entry.sequence();
          reader.accept(entry);
        }
      }
    } catch (SQLException refused) {
      JournalFailed failed = SqliteTrouble.of(file, refused);
      throw new JournalFailed(
          failed.trouble(), "after entry " + last + ": " + failed.getMessage(), refused);
    }
  }

  /** The entry that stands last, unchecked; one of number zero and the first hash of all where there is none. */
  public JournalEntry last() throws JournalFailed {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(
            "SELECT sequence, wall, kind, body, previous, hash FROM entry ORDER BY sequence DESC LIMIT 1")) {
      return row.next() ? entry(row) : new JournalEntry(0, "", "", "", "", Chain.START);
    } catch (SQLException refused) {
      throw SqliteTrouble.of(file, refused);
    }
  }

  /** Hands on the entries from a sequence number to another, each checked against the one before it. */
  public void read(long from, long to, Consumer<JournalEntry> reader) throws JournalFailed {
    long first = Math.max(1, from);
    Strict strict = new Strict(new Chain(purpose), first, reader);
    try {
      scan(Math.max(1, first - 1), to, strict);
    } catch (Broken broken) {
      throw new JournalFailed(
          Trouble.DAMAGED,
          broken.getMessage() + "; in "
              + SqliteTrouble.of(file, Trouble.DAMAGED).getMessage());
    }
  }

  /**
   * Writes a copy of the whole journal as it stands to a new file, while a bench may go on writing to this one. The copy is on disk
   * when this returns; a file of that name is left alone and refused.
   */
  public void copyTo(Path target) throws JournalFailed {
    Path whole = target.toAbsolutePath();
    if (Files.exists(whole))
      throw new JournalFailed(
          Trouble.DENIED, whole + " is there already, and was left as it is: name a new file");
    Path part = whole.resolveSibling(whole.getFileName() + ".part");
    try {
      Files.deleteIfExists(part);
      try (PreparedStatement copy = connection.prepareStatement("VACUUM INTO ?")) {
        copy.setString(1, part.toString());
        copy.executeUpdate();
      }
      try (FileChannel written = FileChannel.open(part, StandardOpenOption.WRITE)) {
        written.force(true);
      }
      Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE);
    } catch (SQLException refused) {
      throw SqliteTrouble.of(whole, refused);
    } catch (IOException refused) {
      throw new JournalFailed(
          Trouble.DISK,
          "the copy to " + whole + " did not succeed: " + refused.getMessage()
              + "; the record itself is as it was: choose another place",
          refused);
    }
  }

  @Override
  public void close() {
    close(connection);
  }

  private static void close(Connection connection) {
    try {
      connection.close();
    } catch (SQLException nothingToSave) {
      // A connection that only read has nothing to lose.
    }
  }

  static JournalEntry entry(ResultSet row) throws SQLException {
    return new JournalEntry(
        row.getLong(1), text(row, 2), text(row, 3), text(row, 4), text(row, 5), text(row, 6));
  }

  private static String text(ResultSet row, int column) throws SQLException {
    return Objects.requireNonNullElse(row.getString(column), "");
  }

  /** Lets entries through while each follows the one before it. */
  private static final class Strict implements Consumer<JournalEntry> {
    private final Chain chain;
    private final long first;
    private final Consumer<JournalEntry> reader;
    private long last;
    private String lastHash = Chain.START;

    Strict(Chain chain, long first, Consumer<JournalEntry> reader) {
      this.chain = chain;
      this.first = first;
      this.reader = reader;
      this.last = Math.max(0, first - 2);
    }

    @Override
    public void accept(JournalEntry entry) {
      boolean unknownBefore = last > 0 && lastHash.equals(Chain.START);
      String before = unknownBefore ? entry.previous() : lastHash;
      chain.fault(last, before, entry).ifPresent(words -> {
        throw new Broken(words);
      });
      last = entry.sequence();
      lastHash = entry.hash();
      if (entry.sequence() >= first) reader.accept(entry);
    }
  }

  /** Carries the words out of the reader; never leaves this class. */
  private static final class Broken extends RuntimeException {
    Broken(String words) {
      super(words, null, false, false);
    }
  }
}
