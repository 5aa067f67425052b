package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/**
 * What is in the pot, and what was weighed so far.
 *
 * @param pot the pot, once its own weight is known
 * @param tare its own weight
 * @param gross the pot and all in it, as last known on the pan
 * @param weighed whether that is off the scale, and not a sum with a weight entered by hand
 * @param inPot what is really there of each part, by its number
 * @param weights all weights taken, in order
 */
public record Charge(
    Optional<PotTared> pot,
    Mass tare,
    Mass gross,
    boolean weighed,
    Map<Integer, Mass> inPot,
    List<WeightAccepted> weights) {

  static final Charge EMPTY =
      new Charge(Optional.empty(), Mass.ZERO, Mass.ZERO, false, Map.of(), List.of());

  public Charge {
    inPot = Map.copyOf(inPot);
    weights = List.copyOf(weights);
  }

  Charge tared(PotTared tared) {
    return new Charge(
        Optional.of(tared),
        tared.tare(),
        tared.tare(),
        tared.how() != GuidanceEvent.How.BY_HAND,
        Map.of(),
        weights);
  }

  Charge accepted(WeightAccepted weight) {
    List<WeightAccepted> more = new ArrayList<>(weights);
    more.add(weight);
    boolean byHand = weight.how() == GuidanceEvent.How.BY_HAND;
    return switch (weight.place().kind()) {
      case VESSEL -> new Charge(pot, tare, gross, weighed, inPot, more);
      case PART, MORE ->
        new Charge(
            pot, tare, weight.gross(), !byHand, with(weight.place().number(), weight.net()), more);
      case SPLIT_OFF ->
        new Charge(
            pot, tare, weight.gross(), !byHand, scaled(contents().minus(weight.net())), more);
    };
  }

  /** What its bottle lost, or what was weighed into a cup, goes into the pot, which stands elsewhere. */
  Charge fromElsewhere(WeightAccepted weight) {
    List<WeightAccepted> more = new ArrayList<>(weights);
    more.add(weight);
    Mass then = gross.plus(weight.net());
    return new Charge(pot, tare, then, false, with(weight.place().number(), weight.net()), more);
  }

  /** So much of a part stayed in the cup that it was tipped from. */
  Charge clung(int part, Mass stayed) {
    return new Charge(
        pot, tare, gross.minus(stayed), weighed, with(part, stayed.negated()), weights);
  }

  /** The pot was weighed again; what is in it takes up the difference, each part by its share. */
  Charge reweighed(Mass nowGross) {
    if (inPot.isEmpty()) return new Charge(pot, nowGross, nowGross, true, inPot, weights);
    return new Charge(pot, tare, nowGross, true, scaled(nowGross.minus(tare)), weights);
  }

  Charge notWeighed() {
    return new Charge(pot, tare, gross, false, inPot, weights);
  }

  private Map<Integer, Mass> with(int part, Mass net) {
    Map<Integer, Mass> filled = new TreeMap<>(inPot);
    filled.merge(part, net, Mass::plus);
    return filled;
  }

  /** The same parts in the same shares, summing to another mass; the last takes what rounding leaves. */
  private Map<Integer, Mass> scaled(Mass sum) {
    Mass was = contents();
    if (was.isZero()) return inPot;
    UnaryOperator<Mass> scale = Fraction.ratio(sum, was)::of;
    TreeMap<Integer, Mass> parts = new TreeMap<>(inPot);
    parts.replaceAll((part, mass) -> scale.apply(mass));
    Mass left = sum.minus(sum(parts));
    parts.merge(parts.lastKey(), left, Mass::plus);
    return parts;
  }

  /** What went into the pot and is there or in vessels, all parts together. */
  public Mass contents() {
    return sum(inPot);
  }

  /** What went into vessels. */
  public Mass filled() {
    return weights.stream()
        .filter(weight -> weight.place().kind() == Place.Kind.VESSEL)
        .map(WeightAccepted::net)
        .reduce(Mass.ZERO, Mass::plus);
  }

  private static Mass sum(Map<Integer, Mass> masses) {
    return masses.values().stream().reduce(Mass.ZERO, Mass::plus);
  }
}
