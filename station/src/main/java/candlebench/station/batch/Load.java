package candlebench.station.batch;

/**
 * A share with its meaning: of the wax, or of the total.
 *
 * @param share zero or more; of the total at most one
 */
public record Load(Fraction share, LoadBasis basis) {

  public Load {
    if (share.isNegative())
      throw new IllegalArgumentException("a load is zero or more, not " + share);
    if (basis == LoadBasis.OF_TOTAL && share.compareTo(Fraction.ONE) > 0)
      throw new IllegalArgumentException("a load of the total is at most 100 %, not " + share);
  }

  public static Load ofWax(String percent) {
    return new Load(Fraction.percent(percent), LoadBasis.OF_WAX);
  }

  public static Load ofTotal(String percent) {
    return new Load(Fraction.percent(percent), LoadBasis.OF_TOTAL);
  }

  /** The same load said the other way, where this part alone is added to the wax: f/(1+f), or f/(1-f). */
  public Load otherWay() {
    return switch (basis) {
      case OF_WAX -> new Load(share.dividedBy(Fraction.ONE.plus(share)), LoadBasis.OF_TOTAL);
      case OF_TOTAL -> new Load(share.dividedBy(Fraction.ONE.minus(share)), LoadBasis.OF_WAX);
    };
  }
}
