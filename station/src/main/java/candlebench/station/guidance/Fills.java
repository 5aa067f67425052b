package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Loss;
import candlebench.station.batch.VesselKind;

/** The mix that is left, against the vessels that are left. */
final class Fills {
  /** Evenly less by a quarter of what the tolerance allows is worth a word (common practice, no source). */
  private static final long WORTH_A_WORD = 4;

  private Fills() {}

  /** The fill to pour into the next vessel: its fill weight, or evenly less for all that are left where that stays within tolerance. */
  static Mass target(BatchProgress batch) {
    VesselKind kind = batch.started().recipe().vessel();
    Mass even = evenFill(batch, batch.vesselsLeft());
    boolean less = even.isLessThan(kind.fill());
    return less && !even.isLessThan(least(kind)) ? even : kind.fill();
  }

  /** Evenly less or not, a vessel is held to the limits of its kind. */
  static Tolerance tolerance(BatchProgress batch) {
    VesselKind kind = batch.started().recipe().vessel();
    Mass less = kind.fill().minus(target(batch));
    return new Tolerance(
        kind.tolerance().under().minus(less), kind.tolerance().over().plus(less));
  }

  /** What each of so many vessels could get, if all got the same. */
  static Mass evenFill(BatchProgress batch, int vessels) {
    Loss loss = batch.started().recipe().loss();
    return batch
        .mixLeft()
        .minus(loss.perPot())
        .minus(loss.perVessel().times(vessels))
        .times(1, vessels);
  }

  static MixStanding standing(BatchProgress batch) {
    VesselKind kind = batch.started().recipe().vessel();
    Mass even = evenFill(batch, batch.vesselsLeft());
    if (even.isLessThan(least(kind))) return MixStanding.TOO_LITTLE;
    Mass unsaid = kind.fill().minus(kind.tolerance().under().times(1, WORTH_A_WORD));
    return even.isLessThan(unsaid) ? MixStanding.EVENLY_LESS : MixStanding.ENOUGH;
  }

  /** How many vessels to leave out, so that the others can be filled; all but one at the most. */
  static int toLeaveOut(BatchProgress batch) {
    Mass least = least(batch.started().recipe().vessel());
    int left = batch.vesselsLeft();
    int out = 0;
    while (out < left - 1 && evenFill(batch, left - out).isLessThan(least)) out++;
    return out;
  }

  private static Mass least(VesselKind kind) {
    return kind.fill().minus(kind.tolerance().under());
  }
}
