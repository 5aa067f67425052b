package candlebench.station.journal;

import candlebench.station.guidance.BenchProgress;

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
}
