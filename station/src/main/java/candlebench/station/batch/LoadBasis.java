package candlebench.station.batch;

/** What a load is a share of. Both are in print for the same words; a load is never stated without it. */
public enum LoadBasis {
  OF_WAX,
  OF_TOTAL
}
