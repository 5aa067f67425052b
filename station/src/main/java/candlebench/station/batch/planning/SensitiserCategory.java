package candlebench.station.batch.planning;

import candlebench.station.batch.Fraction;

/**
 * The categories of skin sensitisers, each with the shares of the finished mixture from which on (not only above which) it counts.
 *
 * <p>Source: Regulation (EC) 1272/2008 (CLP), Annex I, Table 3.4.5 (the mixture is classified, H317) and Table 3.4.6 (the substance is
 * named on the label, EUH208, Annex II 2.8).
 */
public enum SensitiserCategory {
  ONE("1", Fraction.of(1, 100), Fraction.of(1, 1000)),
  ONE_A("1A", Fraction.of(1, 1000), Fraction.of(1, 10_000)),
  ONE_B("1B", Fraction.of(1, 100), Fraction.of(1, 1000));

  private final String symbol;
  private final Fraction classifiesFrom;
  private final Fraction namedFrom;

  SensitiserCategory(String symbol, Fraction classifiesFrom, Fraction namedFrom) {
    this.symbol = symbol;
    this.classifiesFrom = classifiesFrom;
    this.namedFrom = namedFrom;
  }

  /** As the supplier's sheet writes it: {@code 1B}. */
  public String symbol() {
    return symbol;
  }

  public Fraction classifiesFrom() {
    return classifiesFrom;
  }

  public Fraction namedFrom() {
    return namedFrom;
  }
}
