package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.batch.planning.AccuracyClass;
import candlebench.station.guidance.GuidanceEvent.ScaleChecked;
import java.util.Optional;

/**
 * A scale tried with a known mass, and whether it showed it as well as it should: within what a scale of class III may be off in use
 * (OIML R 76-1:2006, Table 6 and 3.5.2), its step taken for its verification interval, for the record knows no plate.
 *
 * @param wall when, ISO 8601 with offset
 */
public record ScaleCheck(long entry, String wall, ScaleChecked checked) {

  /** Throws {@link IllegalArgumentException} if the entry is none. */
  public static ScaleCheck of(Recorded recorded) {
    if (recorded.event() instanceof ScaleChecked checked)
      return new ScaleCheck(recorded.entry(), recorded.wall(), checked);
    throw new IllegalArgumentException("entry " + recorded.entry() + " is no check of a scale");
  }

  /** Shown less known: too much is positive. */
  public Mass difference() {
    return checked.shown().minus(checked.known());
  }

  /** How far it may be off, either way. */
  public Mass allowed() {
    Mass step = WeighingLine.stepOf(checked.indication()).step();
    return AccuracyClass.III.errorInService(checked.known(), step);
  }

  /**
   * The coarsest class of weight that this check may be made with: one off by a third at most of what the scale may be off when it is
   * verified, which is half of {@link #allowed()}. None for a known mass that is no weight of the table.
   */
  public Optional<WeightClass> weightAsked() {
    return WeightClass.coarsestFor(checked.known(), allowed().times(1, 2));
  }

  public boolean isWithin() {
    return !difference().abs().isMoreThan(allowed());
  }
}
