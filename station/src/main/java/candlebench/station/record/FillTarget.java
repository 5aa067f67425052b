package candlebench.station.record;

import candlebench.shared.Mass;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * What to aim each vessel at, so that the next batch keeps to its label in 39 of 40 cases, by the maker's own pouring so far.
 *
 * <p>Fills scatter, and may lie off their target on the whole. From the offsets of past fills (net less target) of mean b and standard
 * deviation s, m of them, the mean of the next n lies above the label with a chance of 97.5 % if aimed at
 * label − b + t·s·√(1/n + 1/m), and a single one above T1 if aimed at T1 − b + t·s·√(1 + 1/m): the one-sided prediction limits of a
 * normal sample, with t the 97.5 % quantile of Student's t of m − 1 degrees of freedom (NIST/SEMATECH e-Handbook 1.3.6.7.2 and
 * 7.1.4). The greater of the two counts. This is an estimate, not a verdict.
 */
public record FillTarget(Mass aim, Mass overLabel, Rule rule) {

  /** Which rule of the average system asks for the most. */
  public enum Rule {
    MEAN_NOT_BELOW_LABEL,
    SINGLE_NOT_BELOW_T1
  }

  /** Fewer fills than this say too little about a maker (common practice, no source). */
  public static final int FEWEST_FILLS = 5;

  private static final MathContext DIGITS = new MathContext(20, RoundingMode.HALF_EVEN);

  /** Student's t, 97.5 %, for 1, 2, … 30 degrees of freedom; for more, the value for 30 errs to the safe side. */
  private static final String[] T975 = {
    "12.706", "4.303", "3.182", "2.776", "2.571", "2.447", "2.365", "2.306", "2.262", "2.228",
    "2.201", "2.179", "2.160", "2.145", "2.131", "2.120", "2.110", "2.101", "2.093", "2.086",
    "2.080", "2.074", "2.069", "2.064", "2.060", "2.056", "2.052", "2.048", "2.045", "2.042"
  };

  /**
   * @param offsets of past fills: net less target
   * @param next how many vessels the next batch has
   * @return none where too few were filled to say
   */
  public static Optional<FillTarget> of(Mass label, Spread offsets, int next) {
    if (next < 1) throw new IllegalArgumentException("a batch has at least one vessel: " + next);
    if (offsets.count() < FEWEST_FILLS) return Optional.empty();
    Mass bias = offsets.mean().orElseThrow();
    Mass forMean = label.minus(bias).plus(margin(offsets, share(next)));
    Optional<Mass> forSingle = TolerableError.of(label)
        .map(error -> label.minus(error).minus(bias).plus(margin(offsets, BigDecimal.ONE)));
    return Optional.of(
        forSingle.filter(aim -> aim.isMoreThan(forMean)).isPresent()
            ? new FillTarget(
                forSingle.get(), forSingle.get().minus(label), Rule.SINGLE_NOT_BELOW_T1)
            : new FillTarget(forMean, forMean.minus(label), Rule.MEAN_NOT_BELOW_LABEL));
  }

  /** t·s·√(share + 1/m), rounded up to a picogram. */
  private static Mass margin(Spread offsets, BigDecimal share) {
    BigDecimal t = new BigDecimal(T975[Math.min(offsets.count() - 1, T975.length) - 1]);
    BigDecimal root = share.add(share(offsets.count())).sqrt(DIGITS);
    BigDecimal margin = t.multiply(root)
        .multiply(new BigDecimal(offsets.deviation().orElseThrow().picograms()));
    return new Mass(margin.setScale(0, RoundingMode.CEILING).longValueExact());
  }

  private static BigDecimal share(int count) {
    return BigDecimal.ONE.divide(BigDecimal.valueOf(count), DIGITS);
  }
}
