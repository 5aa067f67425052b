package candlebench.station.journal;

import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.Noted;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.PotEntries;
import candlebench.station.record.Recorded;
import candlebench.station.record.WeighingsCsv;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Writes a whole journal out, piece by piece as it is read, whatever its size; the last piece is its head. Entries that are added
 * meanwhile are left out.
 */
public final class RecordExport {
  private static final Set<String> SAID_LATER =
      Set.of(EntryJson.kind(Corrected.class), EntryJson.kind(Noted.class));

  /** A journal that can be read from the beginning, more than once. */
  public interface Entries {
    void each(Consumer<JournalEntry> reader) throws JournalFailed;
  }

  private RecordExport() {}

  /** Every entry as JSON Lines. */
  public static void lines(Entries entries, Purpose purpose, Consumer<String> out)
      throws JournalFailed {
    Tail tail = new Tail();
    entries.each(entry -> {
      out.accept(EntryLinesJson.line(entry) + "\n");
      tail.at(entry);
    });
    out.accept(EntryLinesJson.head(purpose, tail.entries, tail.head) + "\n");
  }

  /** The weighings of all batches as a table. */
  public static void table(Entries entries, WeighingsCsv csv, Consumer<String> out)
      throws JournalFailed {
    out.accept(csv.heading());
    Tail tail = batches(entries, batch -> out.accept(csv.rows(batch)));
    out.accept(csv.head(tail.entries, tail.head));
  }

  /** The record of each batch, in the order in which they ended. */
  public static void eachBatch(Entries entries, Consumer<BatchRecord> out) throws JournalFailed {
    batches(entries, out);
  }

  private static Tail batches(Entries entries, Consumer<BatchRecord> out) throws JournalFailed {
    Tail tail = new Tail();
    Map<String, List<JournalEntry>> later = new HashMap<>();
    List<JournalEntry> said = new ArrayList<>();
    entries.each(entry -> {
      if (SAID_LATER.contains(entry.kind())) said.add(entry);
      tail.at(entry);
    });
    for (JournalEntry entry : said)
      later
          .computeIfAbsent(batchOf(EntryJson.event(entry)), none -> new ArrayList<>())
          .add(entry);
    Batches batches = new Batches(later, out);
    entries.each(entry -> {
      if (entry.sequence() <= tail.entries) batches.take(entry);
    });
    batches.end();
    return tail;
  }

  private static String batchOf(GuidanceEvent event) {
    if (event instanceof Corrected corrected) return corrected.batch();
    if (event instanceof Noted noted) return noted.batch();
    throw new AssertionError(event);
  }

  /** Where the journal ended when it was read. */
  private static final class Tail {
    private long entries;
    private String head = Chain.START;

    void at(JournalEntry entry) {
      entries = entry.sequence();
      head = entry.hash();
    }
  }

  /** Gathers the entries of each batch, of several that take turns too, and what was said of it after it was over. */
  private static final class Batches {
    private final Map<String, List<JournalEntry>> later;
    private final Consumer<BatchRecord> out;
    private final PotEntries sorted = new PotEntries();
    private Optional<JournalFailed> unreadable = Optional.empty();

    Batches(Map<String, List<JournalEntry>> later, Consumer<BatchRecord> out) {
      this.later = later;
      this.out = out;
    }

    void take(JournalEntry entry) {
      if (unreadable.isPresent()) return;
      try {
        if (entry.kind().equals(EntryJson.kind(BatchStarted.class))) hand(sorted.ended());
        sorted.and(recorded(entry));
      } catch (JournalFailed failed) {
        unreadable = Optional.of(failed);
      }
    }

    void end() throws JournalFailed {
      if (unreadable.isPresent()) throw unreadable.get();
      hand(sorted.all());
    }

    private void hand(List<List<Recorded>> batches) throws JournalFailed {
      for (List<Recorded> batch : batches) {
        List<Recorded> recorded = new ArrayList<>(batch);
        long last = batch.get(batch.size() - 1).entry();
        String code = ((BatchStarted) batch.get(0).event()).code();
        for (JournalEntry entry : later.getOrDefault(code, List.of()))
          if (entry.sequence() > last) recorded.add(recorded(entry));
        out.accept(BatchRecord.of(recorded));
      }
    }

    private static Recorded recorded(JournalEntry entry) throws JournalFailed {
      return new Recorded(entry.sequence(), entry.wall(), EntryJson.event(entry));
    }
  }
}
