package candlebench.station.journal;

import candlebench.station.journal.JournalFailed.Trouble;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** A journal that forgets with the process, for tests. Stricter than the real one: it minds who writes, when, and what. */
public final class MemoryJournal implements Journal {
  private final Purpose purpose;
  private final Chain chain;
  private final List<JournalEntry> entries = new ArrayList<>();
  private Optional<Thread> writer = Optional.empty();
  private Optional<Trouble> trouble = Optional.empty();
  private int refusals;
  private boolean closed;

  public MemoryJournal(Purpose purpose) {
    this.purpose = purpose;
    this.chain = new Chain(purpose);
  }

  /** From now on every append fails so, until {@link #mend}. */
  public synchronized void fail(Trouble with) {
    trouble = Optional.of(with);
  }

  public synchronized void mend() {
    trouble = Optional.empty();
  }

  /** How many appends were refused so far. */
  public synchronized int refusals() {
    return refusals;
  }

  public synchronized List<JournalEntry> entries() {
    return List.copyOf(entries);
  }

  /** The same entries in a journal newly opened, as after a restart. */
  public synchronized MemoryJournal reopened() {
    MemoryJournal again = new MemoryJournal(purpose);
    again.entries.addAll(entries);
    return again;
  }

  @Override
  public Purpose purpose() {
    return purpose;
  }

  @Override
  public synchronized List<JournalEntry> append(String wall, List<EntryText> texts)
      throws JournalFailed {
    refuseClosed();
    OffsetDateTime.parse(wall);
    if (writer.isPresent() && writer.get() != Thread.currentThread())
      throw new AssertionError(
          "one thread writes: " + writer.get() + ", not " + Thread.currentThread());
    writer = Optional.of(Thread.currentThread());
    if (trouble.isPresent()) {
      refusals++;
      throw new JournalFailed(
          trouble.get(), "made to fail: nothing was written; mend it and try again");
    }
    List<JournalEntry> added = new ArrayList<>();
    for (EntryText text : texts) {
      JournalEntry entry = chain.next(entries.size(), head(), wall, text);
      entries.add(entry);
      added.add(entry);
    }
    return List.copyOf(added);
  }

  @Override
  public void read(long from, long to, Consumer<JournalEntry> reader) {
    refuseClosed();
    for (JournalEntry entry : entries())
      if (entry.sequence() >= from && entry.sequence() <= to) reader.accept(entry);
  }

  @Override
  public synchronized long length() {
    return entries.size();
  }

  @Override
  public synchronized String head() {
    return entries.isEmpty() ? Chain.START : entries.get(entries.size() - 1).hash();
  }

  @Override
  public synchronized void close() {
    closed = true;
  }

  private synchronized void refuseClosed() {
    if (closed) throw new AssertionError("the journal is closed: nothing more is written or read");
  }
}
