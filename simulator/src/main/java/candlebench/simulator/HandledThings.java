package candlebench.simulator;

import candlebench.shared.Mass;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Puts things on a pan and lifts them off, as hands do: a touch before, a set-down, a release.
 *
 * <p>A hand on a vessel makes swings of tens of grams at 3 to 4 a second, and lets go within half a second (published brew log of a 1 kg
 * cell, mortenfyhn/coffee-scales, GPL-3.0: figures only). How long handling takes is common practice, no source.
 */
final class HandledThings {
  private static final String WHO = "maker's hand";
  private static final String SPOON = "spoon";
  private static final double REACH_SECONDS = 1.2;
  private static final double TOUCH_SECONDS = 0.5;
  private static final double TOUCH_GRAMS = 25;
  private static final double TOUCH_HERTZ = 3.5;

  private enum Move {
    NONE,
    PLACING,
    LIFTING
  }

  private final MakerTraits traits;
  private final Slips slips;
  private final SplittableRandom random;
  private Optional<Held> held = Optional.empty();
  private Move move = Move.NONE;
  private boolean hotOne;
  private long moveAt;
  private long touchFrom;
  private long touchUntil;
  private double touchGrams;
  private long spoonGoesAt = Long.MAX_VALUE;

  HandledThings(MakerTraits traits, Slips slips, SplittableRandom random) {
    this.traits = traits;
    this.slips = slips;
    this.random = random;
  }

  Optional<Held> held() {
    return held;
  }

  void take(String thing, Mass mass, boolean hot) {
    if (held.isPresent())
      throw new IllegalStateException(
          "the maker holds " + held.get().thing() + " already: put it aside first");
    held = Optional.of(new Held(thing, mass, hot));
  }

  void putAside() {
    held = Optional.empty();
  }

  /** Reaches out to put down what is held, unless that is under way or nothing is held. */
  void place(long nanos) {
    if (move == Move.NONE && held.isPresent()) reach(Move.PLACING, nanos);
  }

  /** Reaches out to lift the thing that stands there, unless that is under way or there is none. */
  void lift(long nanos, Pan pan) {
    if (move == Move.NONE && held.isEmpty() && pan.receiver().isPresent())
      reach(Move.LIFTING, nanos);
  }

  void advanceTo(long nanos, Pan pan) {
    if (move != Move.NONE && nanos >= moveAt) finish(nanos, pan);
    touch(nanos, pan);
    if (nanos >= spoonGoesAt) {
      spoonGoesAt = Long.MAX_VALUE;
      if (pan.holds(SPOON)) pan.liftOff(SPOON);
    }
  }

  private void reach(Move next, long nanos) {
    move = next;
    moveAt = nanos + nanos(MakerTraits.around(REACH_SECONDS * traits.pace(), 0.3, random));
    touchGrams = TOUCH_GRAMS * (0.5 + random.nextDouble());
    long before = next == Move.LIFTING ? nanos(TOUCH_SECONDS) : 0;
    touchFrom = moveAt - before;
    touchUntil =
        next == Move.PLACING ? moveAt + nanos(TOUCH_SECONDS * (0.5 + random.nextDouble())) : moveAt;
  }

  private void finish(long nanos, Pan pan) {
    if (move == Move.PLACING) held.ifPresent(thing -> putDown(thing, nanos, pan));
    else
      pan.receiver()
          .ifPresent(thing -> held = Optional.of(new Held(thing, pan.liftOff(thing), hotOne)));
    move = Move.NONE;
  }

  private void putDown(Held thing, long nanos, Pan pan) {
    held = Optional.empty();
    hotOne = thing.hot();
    if (slips.spoonShare() > 0 && random.nextDouble() < slips.spoonShare() && !pan.holds(SPOON)) {
      pan.putOn(SPOON, PouringHand.grams(20 + 20 * random.nextDouble()));
      spoonGoesAt = nanos + nanos(5 + 55 * random.nextDouble());
    }
    if (thing.hot()) pan.putOnHot(thing.thing(), thing.mass());
    else pan.putOn(thing.thing(), thing.mass());
  }

  private void touch(long nanos, Pan pan) {
    if (touchUntil == 0) return;
    if (nanos >= touchUntil) {
      touchUntil = 0;
      pan.lean(WHO, 0);
    } else if (nanos >= touchFrom) {
      double seconds = (nanos - touchFrom) / 1e9;
      pan.lean(WHO, touchGrams * (1 + Math.sin(2 * Math.PI * TOUCH_HERTZ * seconds)) / 2 + 0.1);
    }
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
