package candlebench.station.batch;

/** What kind of thing a part is. The shares of all parts of kind wax are of the wax, and sum to one. */
public enum PartKind {
  WAX,
  OIL,
  ADDITIVE,
  DYE
}
