package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.planning.LoadUncertainty.Net;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * One pot's worth: how much of what, on which scale.
 *
 * @param batch the same as the bench makes it
 * @param scale the one that the whole pot stands on
 * @param cure the room asked for to cure an over-pour
 */
public record PlannedCharge(
    Pot pot,
    int vessels,
    BatchPlan batch,
    BenchScale scale,
    List<PlannedWeighing> weighings,
    Mass cure,
    List<Finding> findings) {

  static PlannedCharge of(PlanOrder order, Pot pot, int vessels) {
    BatchPlan batch = order.charge(vessels);
    ScaleChoice choice = new ScaleChoice(order, pot, batch.targets());
    List<PlannedWeighing> weighings = choice.weighings();
    PlannedCharge charge = new PlannedCharge(
        pot, vessels, batch, choice.forPot(), weighings, order.cure().of(batch.total()), List.of());
    List<Finding> findings = new ArrayList<>(charge.aboutRoom());
    findings.addAll(choice.findings());
    return new PlannedCharge(
        pot, vessels, batch, choice.forPot(), weighings, charge.cure(), List.copyOf(findings));
  }

  /** What it weighs without its pot. */
  public Mass contents() {
    return batch.total();
  }

  /** What stands on the scale once all is in. */
  public Mass gross() {
    return pot.empty().plus(contents());
  }

  /** What scale and pot still take, whichever has less; negative where it is too much already. */
  public Mass roomLeft() {
    Mass onScale = scale.capacity().minus(gross());
    Optional<Mass> inPot = pot.room().map(room -> room.mass().minus(contents()));
    return inPot.filter(left -> left.isLessThan(onScale)).orElse(onScale);
  }

  /** How far the heaviest oil, or where there is none the heaviest part, may be poured over and still be cured with the room left. */
  public Optional<Mass> curable() {
    if (roomLeft().isNegative()) return Optional.empty();
    return heaviest().map(way -> Fraction.ratio(way.exact(), contents()).of(roomLeft()));
  }

  private Optional<PlannedWeighing> heaviest() {
    Comparator<PlannedWeighing> oilsFirst =
        Comparator.comparing(way -> way.part().isOil());
    return weighings.stream()
        .filter(way -> !way.part().isWax())
        .max(oilsFirst.thenComparing(PlannedWeighing::exact));
  }

  boolean hasRoom() {
    return findings.stream()
        .noneMatch(finding -> finding.refuses() && finding.rule().isAboutRoom());
  }

  boolean hasRoomForCure() {
    return hasRoom() && !roomLeft().isLessThan(cure);
  }

  public boolean isRefused() {
    return findings.stream().anyMatch(Finding::refuses);
  }

  private String subject() {
    return pot.name() + " for " + Wording.count(vessels, "vessel", "vessels");
  }

  private List<Finding> aboutRoom() {
    List<Finding> found = new ArrayList<>();
    String sum = "Pot " + Wording.grams(pot.empty()) + " + contents " + Wording.grams(contents())
        + " = " + Wording.grams(gross()) + " on " + scale.words();
    if (!scale.carries(gross()))
      found.add(
          Finding.refused(
              Rule.SCALE_CAPACITY,
              subject(),
              sum + ": " + Wording.grams(gross().minus(scale.capacity()))
                  + " too much. Taring the pot away adds no room. Fill fewer vessels from one pot, or use a larger scale."));
    if (!pot.holds(contents()))
      found.add(Finding.refused(
          Rule.POT_ROOM,
          subject(),
          "Contents of " + Wording.grams(contents()) + " are more than the pot's room of "
              + Wording.grams(pot.room().orElseThrow().mass())
              + ". Fill fewer vessels from one pot, or use a larger pot."));
    if (found.isEmpty() && roomLeft().isLessThan(cure)) found.add(littleRoom(sum));
    return found;
  }

  private Finding littleRoom(String sum) {
    Optional<Mass> inPot = pot.room().map(room -> room.mass().minus(contents()));
    String where = inPot.filter(roomLeft()::equals).isPresent() ? "in the pot" : "on the scale";
    String over = heaviest()
        .flatMap(way -> curable()
            .map(most -> " An over-pour of " + way.part().name() + " by more than "
                + Wording.grams(most) + " could then not be cured."))
        .orElse("");
    return Finding.warned(
        Rule.CURE_MARGIN,
        subject(),
        sum + ": " + Wording.grams(roomLeft()) + " are left " + where
            + ", and a cure of more than " + Wording.grams(roomLeft())
            + " of wax would not fit (asked for: " + Wording.grams(cure) + ")." + over);
  }

  /** How surely each load will be known, by part, in their order. */
  public List<LoadUncertainty> uncertainties() {
    return uncertainties(PanReading::variance);
  }

  /** The same by rounding and repeatability alone, as if the scales were without error. */
  public List<LoadUncertainty> uncertaintiesOfReading() {
    return uncertainties(PanReading::ofReadingAlone);
  }

  private List<LoadUncertainty> uncertainties(Function<PanReading, BigDecimal> variance) {
    List<PanReading> readings = new ArrayList<>();
    List<Net> nets = new ArrayList<>();
    Optional<BenchScale> potStandsOn = Optional.empty();
    for (PlannedWeighing way : weighings) {
      boolean goesOn =
          way.into() == Into.POT && potStandsOn.filter(way.scale()::equals).isPresent();
      if (!goesOn) readings.add(new PanReading(way.scale(), way.before()));
      readings.add(new PanReading(way.scale(), way.after()));
      int after = readings.size() - 1;
      nets.add(new Net(way.exact(), way.part().isWax(), after - 1, after));
      potStandsOn = way.into() == Into.POT ? Optional.of(way.scale()) : Optional.empty();
    }
    List<BigDecimal> variances = readings.stream().map(variance).toList();
    return IntStream.range(0, nets.size())
        .mapToObj(part -> LoadUncertainty.of(part, nets, variances))
        .toList();
  }
}
