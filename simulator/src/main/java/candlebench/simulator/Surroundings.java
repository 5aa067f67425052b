package candlebench.simulator;

import java.util.SplittableRandom;

/** What happens around a pan without anybody weighing: knocks, draughts, someone leaning on the bench, a hand on the pot. */
public final class Surroundings {
  private static final String WHO = "somebody";
  private static final double HANDLED_HERTZ = 3.5;

  /** What can happen. Sizes but that of a handled vessel are assumptions; no source was found. */
  public enum Disturbance {
    /** A blow on the bench: swings of 5 to 40 g, gone in half a second. */
    KNOCK,
    /** An elbow, a sleeve or a cable: 2 to 200 g for 0.5 to 4 s. */
    LEAN,
    /** A door or a fan: air that pushes by 0.1 to 0.6 g for 3 to 20 s. */
    DRAUGHT,
    /** A hand on the vessel: swings of up to 50 g, 3 to 4 a second, for 2.5 s, as in the published brew log named at {@link HandledThings}. */
    HANDLED
  }

  private final double perHour;
  private final SplittableRandom random;
  private long next;
  private long knockAt = Long.MAX_VALUE;
  private long leanUntil;
  private double leanGrams;
  private long draughtUntil;
  private double draughtGrams;
  private long handledFrom;
  private long handledUntil;
  private double handledGrams;

  /** Surroundings in which so many things an hour happen, at random. */
  public Surroundings(double perHour, long seed, long nanos) {
    this.perHour = perHour;
    this.random = new SplittableRandom(seed);
    this.next = perHour > 0 ? nanos + untilNext() : Long.MAX_VALUE;
  }

  /** Lets one thing happen from this moment on. */
  public void disturb(Disturbance what, long nanos) {
    switch (what) {
      case KNOCK -> knockAt = nanos;
      case LEAN -> {
        leanGrams = (random.nextBoolean() ? 1 : -1) * 2 * Math.pow(100, random.nextDouble());
        leanUntil = nanos + nanos(0.5 + 3.5 * random.nextDouble());
      }
      case DRAUGHT -> {
        draughtGrams = 0.1 + 0.5 * random.nextDouble();
        draughtUntil = nanos + nanos(3 + 17 * random.nextDouble());
      }
      case HANDLED -> {
        handledGrams = 50 * (0.3 + 0.7 * random.nextDouble());
        handledFrom = nanos;
        handledUntil = nanos + nanos(2.5);
      }
    }
  }

  /** Acts on the pan at a moment. */
  public void advanceTo(long nanos, Pan pan) {
    pan.advanceTo(nanos);
    while (nanos >= next) {
      Disturbance[] all = Disturbance.values();
      disturb(all[random.nextInt(all.length)], next);
      next += untilNext();
    }
    if (nanos >= knockAt) {
      knockAt = Long.MAX_VALUE;
      pan.knock((random.nextBoolean() ? 1 : -1) * (5 + 35 * random.nextDouble()));
    }
    pan.draught(nanos < draughtUntil ? draughtGrams : 0);
    double seconds = (nanos - handledFrom) / 1e9;
    double handled =
        nanos < handledUntil ? handledGrams * Math.sin(2 * Math.PI * HANDLED_HERTZ * seconds) : 0;
    pan.lean(WHO, (nanos < leanUntil ? leanGrams : 0) + handled);
  }

  /** Whether anything is happening at this moment, rings and filters aside. */
  public boolean isDisturbing(long nanos) {
    return nanos < leanUntil
        || nanos < draughtUntil
        || nanos < handledUntil
        || knockAt != Long.MAX_VALUE;
  }

  private long untilNext() {
    return nanos(-Math.log(1 - random.nextDouble()) * 3600 / perHour);
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
