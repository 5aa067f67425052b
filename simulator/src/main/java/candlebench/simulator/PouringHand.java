package candlebench.simulator;

import candlebench.shared.Mass;
import java.util.SplittableRandom;

/** A hand with something to pour from: turns a stream up and down at the speed of a wrist, wavers, lets drops fall. */
final class PouringHand {
  private static final double LIP_METRES_PER_SECOND = 0.25;
  /** The published hand pours swing by half their flow once or twice a second; seen over half a second that is this much, this fast. */
  private static final double WAVER = 0.25;

  private static final double WAVER_SECONDS = 0.5;
  private static final double THIN_WAVER = 0.10;

  /** In a turn shaped as half a cosine, the flow falls from 90 to 10 % in this share of it. */
  private static final double FALL_SHARE = (Math.acos(-0.8) - Math.acos(0.8)) / Math.PI;

  private static final double AFTER_DRIP_CHANCE = 0.3;

  private final MakerTraits traits;
  private final SplittableRandom random;
  private double from;
  private double to;
  private long turnStart;
  private long turnNanos = 1;
  private double waver;
  private double waverSize = WAVER;
  private long nanos;
  private long dripAt = Long.MAX_VALUE;

  PouringHand(MakerTraits traits, SplittableRandom random, long nanos) {
    this.traits = traits;
    this.random = random;
    this.nanos = nanos;
  }

  /** Turns the stream to this many grams a second, at this maker's speed as drawn for this turn. */
  void turnTo(double gramsPerSecond, long moment) {
    if (gramsPerSecond == to) return;
    from = base(moment);
    to = gramsPerSecond;
    turnStart = moment;
    double fall = MakerTraits.around(traits.fallSeconds(), MakerTraits.FALL_WITHIN, random);
    turnNanos = Math.max(1, Math.round(fall / FALL_SHARE * 1e9));
    boolean dripsAfterwards = to == 0 && from > 0 && random.nextDouble() < AFTER_DRIP_CHANCE;
    dripAt = dripsAfterwards
        ? moment + turnNanos + Math.round(1e9 * random.nextDouble())
        : Long.MAX_VALUE;
  }

  void thin(double gramsPerSecond, long moment) {
    turnTo(gramsPerSecond, moment);
    waverSize = THIN_WAVER;
  }

  void free(double gramsPerSecond, long moment) {
    turnTo(gramsPerSecond, moment);
    waverSize = WAVER;
  }

  void close(long moment) {
    turnTo(0, moment);
  }

  /** One drop, now. */
  void drop(Pan pan) {
    pan.add(grams(MakerTraits.around(traits.dropGrams(), MakerTraits.DROP_WITHIN, random)));
  }

  /** Whether anything flows or is about to. */
  boolean isPouring() {
    return to > 0 || base(nanos) > 0;
  }

  boolean isClosing() {
    return to == 0;
  }

  /** Sets the pan's flow for the time from this moment on. */
  void advanceTo(long moment, Pan pan) {
    double seconds = (moment - nanos) / 1e9;
    nanos = moment;
    if (moment >= dripAt) {
      dripAt = Long.MAX_VALUE;
      drop(pan);
    }
    double base = base(moment);
    if (base == 0) {
      if (pan.flow() != 0) pan.flow(0, 0);
      return;
    }
    double kept = Math.exp(-seconds / WAVER_SECONDS);
    waver = kept * waver + waverSize * Math.sqrt(1 - kept * kept) * random.nextGaussian();
    pan.flow(base * Math.exp(waver), LIP_METRES_PER_SECOND);
  }

  private double base(long moment) {
    double turned = (double) (moment - turnStart) / turnNanos;
    if (turned >= 1) return to;
    return from + (to - from) * (1 - Math.cos(Math.PI * Math.max(0, turned))) / 2;
  }

  static Mass grams(double grams) {
    return new Mass(Math.round(grams * 1e12));
  }
}
