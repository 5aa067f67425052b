package candlebench.station.batch;

/** How a part is weighed. */
public enum Way {
  /** A stream into the pot, which can be foreseen. */
  POURED,
  /** Solid pieces, each a jump: nothing can be foreseen but about one piece more. */
  BY_PIECES,
  /** Its bottle stands on the scale and grows lighter: what it loses is what went into the pot beside it. */
  FROM_BOTTLE,
  /** Into a cup on a scale fine enough for it; the cup is tipped into the pot and weighed back, so that what clings to it is counted. */
  IN_CUP;

  /** How a part is weighed where its recipe does not say. */
  public static Way usual(PartKind kind) {
    return kind == PartKind.WAX ? BY_PIECES : POURED;
  }
}
