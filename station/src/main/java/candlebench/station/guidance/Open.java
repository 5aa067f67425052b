package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.BottleWeighed;
import candlebench.station.guidance.GuidanceEvent.CupTared;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.GuidanceEvent.WaitStarted;
import java.util.Optional;

/**
 * What is open within the step at hand; all of it is settled when the step ends.
 *
 * @param waiting the wait that runs
 * @param over the over-pour that waits for a choice
 * @param vessel the vessel that stands on the scale
 * @param bottle the bottle that stands on the scale, to be weighed by what it loses
 * @param cup the cup that stands on a scale, or waits to be tipped into the pot
 * @param filled whether that vessel's fill was taken, so that it can be lifted off
 * @param left what stood at rest on the pan when that was last noted
 * @param held whether the weight was taken and taken back, so that the same weight is not simply taken again
 */
public record Open(
    Optional<WaitStarted> waiting,
    Optional<OverPoured> over,
    Optional<VesselTared> vessel,
    Optional<BottleWeighed> bottle,
    Optional<CupTared> cup,
    boolean filled,
    Optional<Mass> left,
    boolean held) {

  static final Open NOTHING = new Open(
      Optional.empty(),
      Optional.empty(),
      Optional.empty(),
      Optional.empty(),
      Optional.empty(),
      false,
      Optional.empty(),
      false);

  Open waiting(WaitStarted started) {
    return new Open(Optional.of(started), over, vessel, bottle, cup, filled, left, held);
  }

  Open over(Optional<OverPoured> poured) {
    return new Open(waiting, poured, vessel, bottle, cup, filled, left, held);
  }

  static Open vessel(VesselTared tared) {
    return new Open(
        Optional.empty(),
        Optional.empty(),
        Optional.of(tared),
        Optional.empty(),
        Optional.empty(),
        false,
        Optional.empty(),
        false);
  }

  static Open bottle(BottleWeighed weighed) {
    return new Open(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(weighed),
        Optional.empty(),
        false,
        Optional.empty(),
        false);
  }

  static Open cup(CupTared tared) {
    return new Open(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(tared),
        false,
        Optional.empty(),
        false);
  }

  /** Whether what stands on the pan is the pot, and neither vessel, bottle nor cup. */
  boolean isAboutPot() {
    return vessel.isEmpty() && bottle.isEmpty() && cup.isEmpty();
  }

  Open vesselFilled() {
    return new Open(waiting, Optional.empty(), vessel, bottle, cup, true, Optional.empty(), false);
  }

  Open left(Mass gross) {
    return new Open(waiting, over, vessel, bottle, cup, filled, Optional.of(gross), held);
  }

  Open heldBack() {
    return new Open(waiting, over, vessel, bottle, cup, filled, left, true);
  }
}
