package candlebench.station.journal;

import java.util.List;
import java.util.function.Consumer;

/** The record: entries are added, never changed, and an entry is on disk before {@link #append} returns. */
public interface Journal extends AutoCloseable {

  /** Whether this is the record or practice. */
  Purpose purpose();

  /**
   * Adds entries together: all of them or none. One thread writes.
   *
   * @param wall the time to write beside them, ISO 8601 with offset
   * @return the entries as written
   * @throws JournalFailed if they could not be made safe; then nothing was added, and the journal may be tried again
   */
  List<JournalEntry> append(String wall, List<EntryText> texts) throws JournalFailed;

  /**
   * Reads all entries from a sequence number on, in order, checking the chain on the way. Safe from any thread; sees what was
   * written when it began.
   */
  default void read(long from, Consumer<JournalEntry> reader) throws JournalFailed {
    read(from, Long.MAX_VALUE, reader);
  }

  /** The same, up to and including an entry. */
  void read(long from, long to, Consumer<JournalEntry> reader) throws JournalFailed;

  /** How many entries there are. Safe from any thread. */
  long length();

  /** The hash of the last entry, or of all zeros where there is none. Safe from any thread. */
  String head();

  @Override
  void close();
}
