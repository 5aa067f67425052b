package candlebench.station.batch.planning;

/** How grave a finding is. */
public enum Severity {
  /** The batch is not to be made like this. */
  REFUSED,
  /** It can be made; the maker should know this first. */
  WARNED,
  /** Nothing is wrong; it is said so that nobody has to guess. */
  NOTED
}
