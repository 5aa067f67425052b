package candlebench.station.journal;

import candlebench.station.guidance.BenchProgress;
import java.util.ArrayList;
import java.util.List;

/**
 * Where a bench may go on from instead of reading its journal from the first entry: what it knew once so many entries were written.
 * The next entry is the start of a batch, so that nothing of an earlier batch has to be known.
 *
 * @param entries how many entries are folded in
 * @param hash the hash of the last of them, by which a checkpoint of another history is known
 * @param bench what the bench knew then; without its batch
 */
public record Checkpoint(long entries, String hash, BenchProgress bench) {

  /** The beginning. */
  public static final Checkpoint START = new Checkpoint(0, Chain.START, BenchProgress.EMPTY);

  /** Whether a journal holds the entry up to which this was folded. */
  public boolean isOf(Journal journal) throws JournalFailed {
    if (entries == 0) return true;
    if (entries > journal.length()) return false;
    List<JournalEntry> there = new ArrayList<>();
    journal.read(entries, entries, there::add);
    return there.size() == 1 && there.get(0).hash().equals(hash);
  }
}
