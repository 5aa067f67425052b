package candlebench.station.batch.planning;

/** What a part is weighed in. */
public enum Into {
  /** Straight into the pot, on top of what is there. */
  POT,
  /** Into a cup, which is tipped into the pot and weighed back. */
  CUP
}
