package candlebench.station.batch;

import candlebench.shared.Mass;
import java.time.Duration;

/** One step of a batch, as the plan lays it out. Parts and vessels are numbered from zero. */
public sealed interface Step {

  /** Vessels wicked, counted and set out, before anything melts. */
  record Prepare(int vessels) implements Step {}

  /** The empty pot is put on the scale and its own weight noted. */
  record PlacePot() implements Step {}

  /** A part goes into the pot, up to the target that follows from what is really there. */
  record AddPart(int part) implements Step {}

  /** The cup that a part was weighed in is tipped into the pot, and weighed back. */
  record TipCup(int part) implements Step {}

  /**
   * A remedy: more of a part, as much as puts the load right for what is really in the pot.
   *
   * @param over the part that was poured over
   */
  record AddMore(int part, int over) implements Step {}

  /** A remedy: some of the mix is taken out of the pot and set aside. */
  record SplitOff(Mass amount) implements Step {}

  /** The pot is off the scale while its wax melts. */
  record Melt(Duration time) implements Step {}

  /** The pot comes back and is weighed again. */
  record ReturnPot() implements Step {}

  /** Stirring, on or off the scale. */
  record Mix(Duration time) implements Step {}

  /** A vessel is put on the scale, filled and lifted off. */
  record FillVessel(int vessel) implements Step {}
}
