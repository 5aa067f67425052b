package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Loss;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.MixSpilt;
import candlebench.station.guidance.GuidanceEvent.VesselsLeftOut;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What stays behind, learnt from finished batches: the straight line of least squares through what each lost by its vessels, with so
 * much per pot and so much per vessel. Where all had as many vessels, all of it is per pot.
 *
 * <p>Batches with a spill, with a vessel left out or short for want of mix, with a weight entered by hand, or of which more came out than
 * went in, say nothing and are left out. What was left over in the pot counts as lost.
 *
 * @param batches how many it was learnt from
 */
public record LossLearnt(Loss loss, int batches) {
  /** Fewer say too little (common practice, no source). */
  static final int FEWEST = 3;

  /** One finished batch. */
  record Sample(int vessels, Mass lost) {}

  /** None where too few batches of the recipe can be learnt from. */
  public static Optional<LossLearnt> of(String recipe, Iterable<BatchRecord> records) {
    List<Sample> samples = new ArrayList<>();
    for (BatchRecord each : records)
      if (each.recipe().id().equals(recipe)) sample(each).ifPresent(samples::add);
    return samples.size() < FEWEST
        ? Optional.empty()
        : Optional.of(new LossLearnt(fitted(samples), samples.size()));
  }

  static Optional<Sample> sample(BatchRecord batch) {
    boolean says = batch.batch().end() == BatchProgress.End.DONE
        && batch.fills().size() == batch.vessels()
        && batch.standing().stream().allMatch(line -> line.counts().how() != How.BY_HAND)
        && batch.standing().stream()
            .noneMatch(line -> line.isVessel() && line.counts().reason().equals("short"))
        && batch.entries().stream()
            .noneMatch(
                each -> each.event() instanceof MixSpilt || each.event() instanceof VesselsLeftOut);
    Mass lost = batch.weighedIn().minus(batch.filled());
    return says && !lost.isNegative()
        ? Optional.of(new Sample(batch.vessels(), lost))
        : Optional.empty();
  }

  /** L = p + v n. A negative p or v is none, and the other one alone is fitted. */
  static Loss fitted(List<Sample> samples) {
    BigInteger count = BigInteger.valueOf(samples.size());
    BigInteger n = BigInteger.ZERO;
    BigInteger nn = BigInteger.ZERO;
    BigInteger lost = BigInteger.ZERO;
    BigInteger nLost = BigInteger.ZERO;
    for (Sample each : samples) {
      BigInteger vessels = BigInteger.valueOf(each.vessels());
      BigInteger mass = BigInteger.valueOf(each.lost().picograms());
      n = n.add(vessels);
      nn = nn.add(vessels.multiply(vessels));
      lost = lost.add(mass);
      nLost = nLost.add(vessels.multiply(mass));
    }
    BigInteger spread = count.multiply(nn).subtract(n.multiply(n));
    Mass mean = rounded(lost, count);
    if (spread.signum() == 0) return new Loss(mean, Mass.ZERO);
    BigInteger slope = count.multiply(nLost).subtract(n.multiply(lost));
    if (slope.signum() < 0) return new Loss(mean, Mass.ZERO);
    BigInteger start = lost.multiply(nn).subtract(n.multiply(nLost));
    return start.signum() < 0
        ? new Loss(Mass.ZERO, rounded(nLost, nn))
        : new Loss(rounded(start, spread), rounded(slope, spread));
  }

  private static Mass rounded(BigInteger numerator, BigInteger denominator) {
    return new Fraction(numerator, denominator).of(new Mass(1));
  }
}
