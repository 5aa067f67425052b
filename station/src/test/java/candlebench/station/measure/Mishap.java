package candlebench.station.measure;

import candlebench.shared.Mass;
import candlebench.simulator.Pan;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleQuirks.Quirk;
import candlebench.simulator.Surroundings;
import candlebench.simulator.Surroundings.Disturbance;
import java.util.SplittableRandom;

/**
 * One thing that may fool a bench while something is poured, drawn by seed; or nothing. What happens once happens at a share of the
 * target, also drawn.
 */
final class Mishap {
  private static final double STEP_SECONDS = 0.02;

  /** What may happen. Sizes without a source are assumptions. */
  enum Kind {
    NOTHING,
    KNOCK,
    /** An elbow or a sleeve, 2 to 200 g, for 0.5 to 4 s. */
    LEANING_HAND,
    DRAUGHT,
    HANDLED,
    /** 15 to 35 g for 1.5 to 4.5 s. */
    SPOON,
    /** The same until two seconds after the bench asks about it, a minute at most. */
    SPOON_FORGOTTEN,
    /** A piece of a gram falls in from 20 cm. */
    PIECE_FALLS,
    /** The scale walks by 0.3 g under a hot pot. */
    HOT_DRIFT,
    ZERO_TRACKING,
    NO_FLAG,
    LYING_FLAG,
    REPEATED_FRAMES,
    /** 0.05 g/s for 4 to 12 s, on top of what is poured. */
    CREEPING_STREAM,
    /** No reading for 1.2 to 4 s. */
    OLD_READINGS,
    /** 0.007 to 0.02 g/s by evaporation (two published recordings). */
    SLOW_LOSS
  }

  private final Kind kind;
  private final SplittableRandom random;
  private final double share;
  private final double size;
  private boolean happened;
  private Surroundings around = new Surroundings(0, 0, 0);
  private long until;

  private Mishap(Kind kind, SplittableRandom random) {
    this.kind = kind;
    this.random = random;
    share = 0.2 + 0.8 * random.nextDouble();
    size = random.nextDouble();
  }

  static Mishap none() {
    return new Mishap(Kind.NOTHING, new SplittableRandom(0));
  }

  static Mishap drawn(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Kind[] all = Kind.values();
    return new Mishap(all[1 + random.nextInt(all.length - 1)], random);
  }

  Kind kind() {
    return kind;
  }

  /** The scale as it is with this. */
  ScaleQuirks on(ScaleQuirks quirks) {
    return switch (kind) {
      case ZERO_TRACKING -> quirks.with(Quirk.TRACKS_ZERO).with(Quirk.TRACKS_TARED_ZERO);
      case NO_FLAG -> quirks.with(Quirk.NEVER_SAYS_STABLE);
      case LYING_FLAG -> quirks.without(Quirk.NEVER_SAYS_STABLE).with(Quirk.ALWAYS_SAYS_STABLE);
      case REPEATED_FRAMES -> quirks.with(Quirk.REPEATS_CONVERSIONS);
      default -> quirks;
    };
  }

  boolean isHot() {
    return kind == Kind.HOT_DRIFT;
  }

  /** The bench asks the maker about what stands there, who looks, and takes away what does not belong there. */
  void asked(long nanos) {
    if (kind == Kind.SPOON_FORGOTTEN) until = Math.min(until, nanos + nanos(2));
  }

  /** Whether the bench is being disturbed at this moment, so that nothing is settled. */
  boolean isDisturbing(long nanos) {
    return around.isDisturbing(nanos);
  }

  /** Whether nothing comes from the scale. */
  boolean silences(long nanos) {
    return kind == Kind.OLD_READINGS && happened && nanos < until;
  }

  void advanceTo(long nanos, double poured, Task task, Pan pan) {
    if (!happened && poured >= share * task.target().roughGrams()) {
      happened = true;
      happen(nanos, task, pan);
    }
    if (!happened) return;
    around.advanceTo(nanos, pan);
    goOn(nanos, pan);
  }

  private void happen(long nanos, Task task, Pan pan) {
    around = new Surroundings(0, random.nextLong(), nanos);
    switch (kind) {
      case KNOCK -> around.disturb(Disturbance.KNOCK, nanos);
      case LEANING_HAND -> around.disturb(Disturbance.LEAN, nanos);
      case DRAUGHT -> around.disturb(Disturbance.DRAUGHT, nanos);
      case HANDLED -> around.disturb(Disturbance.HANDLED, nanos);
      case SPOON -> spoon(nanos, 1.5, 4.5, pan);
      case SPOON_FORGOTTEN -> spoon(nanos, 60, 60, pan);
      case PIECE_FALLS ->
        pan.drop(
            Mass.ofGrams("0.05").times(Math.min(20, Math.round(task.target().roughGrams()))), 0.2);
      case CREEPING_STREAM -> until = nanos + nanos(4 + 8 * size);
      case OLD_READINGS -> until = nanos + nanos(1.2 + 2.8 * size);
      case NOTHING, HOT_DRIFT, ZERO_TRACKING, NO_FLAG, LYING_FLAG, REPEATED_FRAMES, SLOW_LOSS -> {}
    }
  }

  private void spoon(long nanos, double least, double most, Pan pan) {
    pan.lean("spoon", 15 + 20 * random.nextDouble());
    until = nanos + nanos(least + (most - least) * size);
  }

  private void goOn(long nanos, Pan pan) {
    boolean spoon = kind == Kind.SPOON || kind == Kind.SPOON_FORGOTTEN;
    if (spoon && nanos >= until) pan.lean("spoon", 0);
    if (kind == Kind.CREEPING_STREAM && nanos < until) add(0.05, pan);
    if (kind == Kind.SLOW_LOSS) add(-0.007 - 0.013 * size, pan);
  }

  private static void add(double gramsPerSecond, Pan pan) {
    pan.add(new Mass(Math.round(gramsPerSecond * STEP_SECONDS * 1e12)));
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
