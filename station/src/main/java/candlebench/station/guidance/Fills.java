package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.batch.Loss;
import candlebench.station.batch.VesselKind;

/** The mix that is left, against the vessels that are left. */
final class Fills {

  private Fills() {}

  /** The fill to pour into a vessel: its fill weight, or evenly less for all that are left where that stays within tolerance. */
  static Mass target(BatchProgress batch, int vessel) {
    VesselKind kind = batch.started().recipe().vessel();
    Mass even = evenFill(batch, vessel);
    boolean less = even.isLessThan(kind.fill());
    boolean allowed = !even.isLessThan(kind.fill().minus(kind.tolerance().under()));
    return less && allowed ? even : kind.fill();
  }

  /** What each vessel from this one on could get, if all got the same. */
  static Mass evenFill(BatchProgress batch, int vessel) {
    int left = batch.started().vessels() - vessel;
    Loss loss = batch.started().recipe().loss();
    return batch
        .mixLeft()
        .minus(loss.perPot())
        .minus(loss.perVessel().times(left))
        .times(1, left);
  }

  /** Whether there is not enough mix for all the vessels left, even at the least that their tolerance allows. */
  static boolean tooLittle(BatchProgress batch, int vessel) {
    VesselKind kind = batch.started().recipe().vessel();
    return evenFill(batch, vessel).isLessThan(kind.fill().minus(kind.tolerance().under()));
  }
}
