package candlebench.station;

import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.journal.Checkpoint;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.EntryText;
import candlebench.station.journal.Journal;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.JournalFailed;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What reached a bench of late, and all that is needed to play it again elsewhere and see the same entries come of it.
 *
 * @param config of the bench
 * @param known what the bench knew before the entries that are here
 * @param entries of the journal after that, in order
 * @param written how many entries the journal held for certain when the last of the inputs had been dealt with
 * @param inputs a dump of the trace of inputs
 */
public record Diagnosis(
    StationConfig config,
    Checkpoint known,
    List<JournalEntry> entries,
    long written,
    String inputs) {
  private static final long A_TICK_MILLIS = 500;

  /** A bench that was stopped by an error has no more ticks; its trace is complete. */
  private static final int TICKS_WAITED = 3;

  public Diagnosis {
    entries = List.copyOf(entries);
  }

  /** What a replay came to: how much was played, and where it first went another way, in words. */
  public record Outcome(int pieces, int entries, Optional<String> difference) {}

  /**
   * Taken from a running bench, or one that an error of ours has stopped.
   *
   * @param near a checkpoint of its journal; one that is too young is not used
   */
  public static Diagnosis of(Station station, Checkpoint near) throws JournalFailed {
    Journal journal = station.journal();
    long written = journal.length();
    String inputs;
    try {
      // What led to the entries counted is in the trace once a tick that came later is in it.
      long ticks = station.trace().ticks() + 1;
      for (int i = 0;
          i < TICKS_WAITED && !station.trace().awaitTickAfter(ticks, A_TICK_MILLIS);
          i++) continue;
      StringBuilder dump = new StringBuilder();
      station.trace().dump(dump);
      inputs = dump.toString();
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
      throw new JournalFailed(JournalFailed.Trouble.DISK, "the program is being ended");
    } catch (IOException impossible) {
      throw new AssertionError("a dump into memory", impossible);
    }
    long oldest = Replay.oldest(inputs).orElse(written);
    Knowing knowing = new Knowing(near.entries() <= oldest ? near : Checkpoint.START, oldest);
    journal.read(knowing.from.entries() + 1, knowing::read);
    if (knowing.unreadable.isPresent()) throw knowing.unreadable.get();
    return new Diagnosis(station.config(), knowing.from, knowing.entries, written, inputs);
  }

  /** Plays the inputs again and compares what comes of them with the entries, byte for byte. */
  public Outcome replayed() throws JournalFailed {
    List<BenchProgress> after = new ArrayList<>(List.of(known.bench()));
    for (JournalEntry entry : entries)
      after.add(after.get(after.size() - 1).after(EntryJson.event(entry)));
    List<Replay.Piece> pieces =
        Replay.of(inputs, config, entry -> after.get(Math.toIntExact(entry - known.entries())));
    int played = pieces.stream().mapToInt(piece -> piece.entries().size()).sum();
    return new Outcome(pieces.size(), played, difference(pieces));
  }

  private Optional<String> difference(List<Replay.Piece> pieces) {
    for (Replay.Piece piece : pieces) {
      long number = piece.from();
      for (EntryText played : piece.entries()) {
        Optional<JournalEntry> recorded = entry(++number);
        if (recorded.filter(entry -> isSame(entry, played)).isEmpty())
          return Optional.of("entry " + number + " was recorded as "
              + recorded.map(entry -> entry.kind() + " " + entry.body()).orElse("nothing")
              + ", and the replay gives " + played.kind() + " " + played.body());
      }
    }
    // A lost beginning comes last if at all: then the trace's end says nothing of the journal's.
    boolean lost = inputs.lines().filter(line -> line.startsWith("#")).count() > pieces.size();
    for (int i = 0; i < pieces.size(); i++) {
      boolean last = i == pieces.size() - 1;
      if (last && lost) break;
      long end = pieces.get(i).end();
      long least = last ? written : pieces.get(i + 1).from();
      if (end < least)
        return Optional.of("the replay ends at entry " + end + ", and entry " + least
            + " was recorded: "
            + entry(end + 1).map(JournalEntry::kind).orElse("it is missing here"));
    }
    return Optional.empty();
  }

  private Optional<JournalEntry> entry(long number) {
    int index = Math.toIntExact(number - known.entries() - 1);
    return index >= 0 && index < entries.size()
        ? Optional.of(entries.get(index))
        : Optional.empty();
  }

  private static boolean isSame(JournalEntry entry, EntryText played) {
    return entry.kind().equals(played.kind()) && entry.body().equals(played.body());
  }

  /** Reads entries on from a checkpoint, which moves on to the start of the batch that ran, or ran last, where the trace begins. */
  private static final class Knowing {
    private final long oldest;
    private final List<JournalEntry> entries = new ArrayList<>();
    private Checkpoint from;
    private BenchProgress progress;
    private String hash;
    private Optional<JournalFailed> unreadable = Optional.empty();

    Knowing(Checkpoint near, long oldest) {
      this.oldest = oldest;
      from = near;
      progress = near.bench();
      hash = near.hash();
    }

    void read(JournalEntry entry) {
      if (unreadable.isPresent()) return;
      try {
        if (entry.sequence() <= oldest) fold(entry);
        entries.add(entry);
        hash = entry.hash();
      } catch (JournalFailed failed) {
        unreadable = Optional.of(failed);
      }
    }

    private void fold(JournalEntry entry) throws JournalFailed {
      GuidanceEvent event = EntryJson.event(entry);
      if (event instanceof GuidanceEvent.BatchStarted && progress.isQuiet()) {
        entries.clear();
        from = new Checkpoint(
            entry.sequence() - 1,
            hash,
            BenchProgress.betweenBatches(
                progress.taught(), progress.zeros(), progress.habits(), progress.begun()));
      }
      progress = progress.after(event);
    }
  }
}
