package candlebench.station.record;

import candlebench.shared.Division;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Place;
import java.util.List;
import java.util.Map;

/**
 * One weighing of a batch: as it was written, what became of it, and what it counts as.
 *
 * @param entry the number of its entry
 * @param written as it was written, for ever
 * @param counts the same with its corrections
 * @param lots what came from which lot, with corrections
 * @param lotsInUse all lots in use then, by material, with corrections
 * @param corrections those of this entry
 */
public record WeighingLine(
    long entry,
    String wall,
    WeightAccepted written,
    WeightAccepted counts,
    Standing standing,
    List<LotShare> lots,
    Map<String, String> lotsInUse,
    List<Correction> corrections) {

  /** What became of a weighing. None is ever erased. */
  public enum Standing {
    STANDS,
    TAKEN_BACK,
    REOPENED
  }

  WeighingLine now(Standing then) {
    return new WeighingLine(entry, wall, written, counts, then, lots, lotsInUse, corrections);
  }

  public boolean stands() {
    return standing == Standing.STANDS;
  }

  public Place place() {
    return written.place();
  }

  /** Whether it put a part of the recipe, by its number, into the pot. */
  public boolean isOfPart(int part) {
    boolean intoPot = place().kind() == Place.Kind.PART || place().kind() == Place.Kind.MORE;
    return intoPot && place().number() == part;
  }

  public boolean isVessel() {
    return place().kind() == Place.Kind.VESSEL;
  }

  public Mass net() {
    return counts.net();
  }

  /** Net less target: over is positive. */
  public Mass difference() {
    return counts.net().minus(counts.target());
  }

  /** The step of the last digit that the scale showed. */
  public Division division() {
    return stepOf(written);
  }

  static Division stepOf(WeightAccepted weight) {
    return stepOf(weight.indication());
  }

  static Division stepOf(Indication shown) {
    return Division.ofDecimals(shown.decimals(), shown.unit().orElse(MassUnit.GRAM));
  }
}
