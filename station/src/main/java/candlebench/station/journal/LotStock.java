package candlebench.station.journal;

import candlebench.shared.Mass;

/**
 * How a lot stands, by weight.
 *
 * @param received what came in; zero where no delivery was written down or nobody said how much
 * @param used what went into pots, by actual weights
 */
public record LotStock(String material, String lot, Mass received, Mass used, int batches) {

  /** Whether anything can be said of what is left. */
  public boolean isCounted() {
    return !received.isZero();
  }

  /** What should be left; below zero where more was used than came in. */
  public Mass left() {
    return received.minus(used);
  }
}
