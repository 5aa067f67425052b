package candlebench.station.record;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import java.util.List;
import java.util.Optional;

/**
 * What the vessels of one batch hold against the quantity on their label. One-sided: short is an offence, over is a cost.
 *
 * <p>The packer's rules of the average system (Directive 76/211/EEC; UK SI 2006/659): the mean is not below the label; no more than one
 * in forty is short by more than the tolerable error (below T1); none is short by more than twice that (below T2). A batch of fewer
 * than a hundred is weighed whole, as the bench does anyway, and its mean is then allowed nothing (UK SI 2006/659, Schedule 2, 3.6 and
 * 4.7). In the United States the mean is held to the same, and a single package to the allowable variation instead (NIST Handbook 133,
 * 16 CFR 500.25). Local law decides which of them binds.
 *
 * @param tolerable the tolerable negative error, where the table reaches
 * @param indicativeMav the allowable variation, by the column of the label's unit; partly from memory
 */
public record NetContent(
    Mass label,
    List<Mass> fills,
    Spread spread,
    Optional<Mass> tolerable,
    Optional<Mass> indicativeMav) {

  /** One in so many may be below T1. */
  private static final int ONE_IN = 40;

  public static NetContent of(LabelClaim claim, List<Mass> fills) {
    Mass label = claim.net();
    return new NetContent(
        label,
        List.copyOf(fills),
        Spread.of(fills),
        TolerableError.of(label),
        claim.isInOunces()
            ? AllowableVariation.ofOunces(label)
            : AllowableVariation.ofGrams(label));
  }

  /** How far the mean lies under the label; none where it does not, or where nothing was filled. */
  public Optional<Mass> meanShort() {
    if (!spread.meanIsLessThan(label)) return Optional.empty();
    return spread.mean().map(label::minus);
  }

  public int belowT1() {
    return tolerable.map(error -> shortByMoreThan(error)).orElse(0);
  }

  public int belowT2() {
    return tolerable.map(error -> shortByMoreThan(error.times(2))).orElse(0);
  }

  /** How many vessels lack more than the allowable variation; indicative. */
  public int beyondMav() {
    return indicativeMav.map(this::shortByMoreThan).orElse(0);
  }

  /** How many of this batch may lie below T1: none of fewer than forty. */
  public int allowedBelowT1() {
    return fills.size() / ONE_IN;
  }

  /** Whether all three rules are kept; not where the table does not reach the label, or where nothing was filled. */
  public boolean keepsTheRules() {
    return !fills.isEmpty()
        && tolerable.isPresent()
        && !spread.meanIsLessThan(label)
        && belowT1() <= allowedBelowT1()
        && belowT2() == 0;
  }

  /**
   * Whether a scale is fine enough to check this label: its error at most a fifth of the tolerable one (UK SI 2006/659, Schedule 2,
   * 1.3). A net weight is two rounded readings and errs by up to a division.
   */
  public boolean canBeCheckedIn(Division division) {
    return tolerable
        .filter(error -> division.step().compareTo(error.times(1, 5)) <= 0)
        .isPresent();
  }

  private int shortByMoreThan(Mass error) {
    Mass limit = label.minus(error);
    return (int) fills.stream().filter(fill -> fill.isLessThan(limit)).count();
  }
}
