package candlebench.station.batch;

/** How a part comes onto the scale. */
public enum Way {
  /** A stream that can be foreseen. */
  POURED,
  /** Solid pieces, each a jump: nothing can be foreseen but about one piece more. */
  BY_PIECES
}
