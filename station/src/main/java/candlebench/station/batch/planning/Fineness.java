package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * Whether a scale is fine enough for a net weight: its step at most a third of the tolerance (common practice, no source), and the
 * weight at least 2 × max(s, 0.41 d) / tolerance, the form of USP &lt;41&gt;, in which 0.41 d stands for the rounding of two readings.
 *
 * @param tolerance as a share of the target, above zero
 */
public record Fineness(BenchScale scale, Mass target, Fraction tolerance) {

  /** Whether the step is at most a third of the tolerance; taken exactly. */
  boolean stepFits() {
    return Fraction.ratio(scale.division().step().times(3), target).compareTo(tolerance) <= 0;
  }

  /** The least net weight for this tolerance, rounded up to a picogram; at most the greatest mass there is. */
  public Mass minimumWeight() {
    BigDecimal least = new BigDecimal(hundredths().multiply(tolerance.denominator()))
        .divide(
            new BigDecimal(BigInteger.valueOf(50).multiply(tolerance.numerator())),
            0,
            RoundingMode.CEILING);
    return new Mass(least.min(BigDecimal.valueOf(Long.MAX_VALUE)).longValueExact());
  }

  boolean heavyEnough() {
    return !target.isLessThan(minimumWeight());
  }

  /** The widest step that the tolerance allows, rounded to a picogram. */
  Mass widestStep() {
    return tolerance.of(target).times(1, 3);
  }

  /** The first rule it breaks. */
  Optional<Rule> broken() {
    if (!stepFits()) return Optional.of(Rule.STEP_WITHIN_TOLERANCE);
    if (!heavyEnough()) return Optional.of(Rule.MINIMUM_WEIGHT);
    return Optional.empty();
  }

  boolean suffices() {
    return broken().isEmpty();
  }

  /** max(s, 0.41 d), in hundredths of a picogram. */
  private BigInteger hundredths() {
    BigInteger scatter =
        BigInteger.valueOf(scale.repeatability().picograms()).multiply(BigInteger.valueOf(100));
    BigInteger rounding =
        BigInteger.valueOf(scale.division().step().picograms()).multiply(BigInteger.valueOf(41));
    return scatter.max(rounding);
  }
}
