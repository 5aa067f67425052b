package candlebench.station.journal;

import candlebench.station.journal.CrashPoints.Point;
import candlebench.station.journal.JournalFailed.Trouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The record in one file of SQLite, kept as a log of entries.
 *
 * <p>What it promises: when {@link #append} returns, its entries are on disk, all of them, and a power cut does not take them back;
 * when it throws, none of them was added. A kill at any instant leaves the entries that had been returned, and either all or none of
 * the append that was under way. Nothing is ever changed or erased: the file itself refuses it, and the chain of hashes shows it if
 * somebody does so behind the file's back. One program writes at a time; any number may read meanwhile.
 *
 * <p>On what it rests: the disk keeps what it said it has synced; the file is on a local disk, not on a network share. What it
 * cannot show by itself: a cut tail, or a record written anew from some entry on. For that, its head is noted elsewhere.
 *
 * <pre>
 * purpose  only_row = 1, word: 'record' or 'practice'
 * entry    sequence 1, 2, 3, …  wall  kind  body (JSON)  previous (hash)  hash
 * record.db  record.db-wal, record.db-shm (while open)  record.db.lock (empty; held while open)
 * </pre>
 */
public final class SqliteJournal implements Journal {

  /** Where the journal ends. */
  private record End(long length, String hash) {
    static End after(JournalEntry last) {
      return new End(last.sequence(), last.hash());
    }
  }

  private final Path file;
  private final Purpose purpose;
  private final Chain chain;
  private final CrashPoints crashPoints;
  private final JournalLock lock;
  private volatile End end = new End(0, Chain.START);

  /** Empty after a failure, until the next append opens it anew. */
  private Optional<EntryWriter> writer = Optional.empty();

  /** Where the journal would end had the last failed append got through after all, as a disk's late error leaves open. */
  private End unconfirmed = end;

  private long mostPages = EntryWriter.NO_LIMIT;

  private SqliteJournal(Path file, Purpose purpose, CrashPoints crashPoints, JournalLock lock) {
    this.file = file;
    this.purpose = purpose;
    this.chain = new Chain(purpose);
    this.crashPoints = crashPoints;
    this.lock = lock;
  }

  /** Opens a journal of a purpose, creating its file and folder where there is none. */
  public static SqliteJournal open(Path file, Purpose purpose) throws JournalFailed {
    return open(file, purpose, CrashPoints.NONE);
  }

  public static SqliteJournal open(Path file, Purpose purpose, CrashPoints crashPoints)
      throws JournalFailed {
    createFolder(file);
    JournalLock lock = JournalLock.on(file);
    try {
      SqliteJournal journal = new SqliteJournal(file, purpose, crashPoints, lock);
      journal.begin();
      return journal;
    } catch (SQLException refused) {
      lock.close();
      throw SqliteTrouble.of(file, refused);
    } catch (JournalFailed refused) {
      lock.close();
      throw refused;
    }
  }

  @Override
  public Purpose purpose() {
    return purpose;
  }

  @Override
  public List<JournalEntry> append(String wall, List<EntryText> texts) throws JournalFailed {
    if (texts.isEmpty()) return List.of();
    List<JournalEntry> entries = new ArrayList<>(texts.size());
    End last = end;
    for (EntryText text : texts) {
      JournalEntry entry = chain.next(last.length(), last.hash(), wall, text);
      entries.add(entry);
      last = End.after(entry);
    }
    try {
      writer().write(entries, () -> crashPoints.at(Point.BEFORE_COMMIT));
      crashPoints.at(Point.AFTER_COMMIT);
      end = last;
      return List.copyOf(entries);
    } catch (SQLException refused) {
      giveUpWriter();
      unconfirmed = last;
      throw SqliteTrouble.of(file, refused);
    }
  }

  @Override
  public void read(long from, long to, Consumer<JournalEntry> reader) throws JournalFailed {
    try (JournalFile reading = JournalFile.open(file)) {
      reading.read(from, to, reader);
    }
  }

  @Override
  public long length() {
    return end.length();
  }

  @Override
  public String head() {
    return end.hash();
  }

  /** Writes a copy of the record as it stands to a new file. Safe from any thread, and the bench goes on meanwhile. */
  public void copyTo(Path target) throws JournalFailed {
    try (JournalFile reading = JournalFile.open(file)) {
      reading.copyTo(target);
    }
  }

  @Override
  public void close() {
    giveUpWriter();
    lock.close();
  }

  /** Bounds the file to so many pages, so that a full disk can be had without one. */
  void allowPages(long most) {
    mostPages = most;
    giveUpWriter();
  }

  private void begin() throws SQLException, JournalFailed {
    EntryWriter first = EntryWriter.open(file, purpose, mostPages);
    try {
      end = endOf(first);
    } catch (SQLException | JournalFailed refused) {
      first.close();
      throw refused;
    }
    writer = Optional.of(first);
  }

  /** The writer at work, or after a failure a new one, if the journal still ends where it did. */
  private EntryWriter writer() throws SQLException, JournalFailed {
    if (writer.isPresent()) return writer.get();
    EntryWriter again = EntryWriter.open(file, purpose, mostPages);
    try {
      End onDisk = endOf(again);
      if (!onDisk.equals(end) && onDisk.equals(unconfirmed))
        throw new JournalFailed(
            Trouble.DISK,
            "the disk kept what it had not confirmed to " + file
                + ": nothing is lost; stop the program and start it again, and it goes on from what is on disk");
      if (!onDisk.equals(end)) throw SqliteTrouble.of(file, Trouble.DAMAGED);
    } catch (SQLException | JournalFailed refused) {
      again.close();
      throw refused;
    }
    writer = Optional.of(again);
    return again;
  }

  private void giveUpWriter() {
    writer.ifPresent(EntryWriter::close);
    writer = Optional.empty();
  }

  private End endOf(EntryWriter writer) throws SQLException, JournalFailed {
    Optional<JournalEntry> last = writer.last();
    if (last.isPresent()
        && !chain.hashAt(last.get().sequence(), last.get()).equals(last.get().hash()))
      throw new JournalFailed(
          Trouble.DAMAGED,
          "entry " + last.get().sequence()
              + " was changed after it was written; in "
              + SqliteTrouble.of(file, Trouble.DAMAGED).getMessage());
    return last.map(End::after).orElse(new End(0, Chain.START));
  }

  private static void createFolder(Path file) throws JournalFailed {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
    } catch (IOException refused) {
      throw new JournalFailed(
          Trouble.DENIED,
          "the data folder for " + file + " cannot be made: " + refused.getMessage()
              + "; name another data folder",
          refused);
    }
  }
}
