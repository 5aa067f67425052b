package candlebench.simulator;

import java.util.SplittableRandom;

/** Feels what presses on a pan: noise, then the indicator's filter; creep, wander and the walk of a hot pot on top. */
final class LoadCell {
  private final CellTraits traits;
  private final Pan pan;
  private final SplittableRandom random;
  private long nanos;
  private double noise;
  private double air;
  private double wander;
  private double warmth;
  private double creep;
  private double filtered;

  private long stepNanos = -1;
  private Fading noiseFades;
  private Fading airFades;
  private Fading wanderFades;
  private double warmthGain;
  private double creepGain;
  private double filterGain;
  private double bypassGain;

  LoadCell(CellTraits traits, Pan pan, SplittableRandom random) {
    this.traits = traits;
    this.pan = pan;
    this.random = random;
    this.nanos = pan.nanos();
    filtered = pan.pressure();
    creep = traits.creepShare() * filtered;
    noise = traits.noiseGrams() * random.nextGaussian();
    wander = traits.wanderGrams() * random.nextGaussian();
  }

  /** What the cell feels at a moment, in grams, after the filter. */
  double feel(long moment) {
    prepare(moment - nanos);
    nanos = moment;
    pan.advanceTo(moment);
    noise = noiseFades.next(noise, traits.noiseGrams(), random);
    if (pan.draughtGrams() > 0 || Math.abs(air) > 1e-6)
      air = airFades.next(air, pan.draughtGrams(), random);
    if (traits.wanderGrams() > 0) wander = wanderFades.next(wander, traits.wanderGrams(), random);
    double pressure = pan.pressure();
    warmth += ((pan.isHot() ? 1 : 0) - warmth) * warmthGain;
    creep += (traits.creepShare() * pressure - creep) * creepGain;
    double felt = pressure + noise + air + wander + creep - warmth * traits.hotGrams();
    filter(felt, pan.takeBlows());
    return filtered;
  }

  private void filter(double felt, double blow) {
    double change = felt - filtered;
    boolean bypass = traits.bypassGrams() > 0 && Math.abs(change) > traits.bypassGrams();
    double gain = bypass ? bypassGain : filterGain;
    filtered += change * gain + blow * gain / (stepNanos / 1e9);
  }

  /** The factors of a step, worked out anew only when the step's length changes. */
  private void prepare(long step) {
    if (step == stepNanos) return;
    stepNanos = step;
    double seconds = step / 1e9;
    noiseFades = Fading.over(seconds, CellTraits.NOISE_SECONDS);
    airFades = Fading.over(seconds, CellTraits.DRAUGHT_SECONDS);
    wanderFades = Fading.over(seconds, CellTraits.WANDER_SECONDS);
    warmthGain = gain(seconds, CellTraits.HOT_SECONDS);
    creepGain = gain(seconds, CellTraits.CREEP_SECONDS);
    filterGain = gain(seconds, traits.filterSeconds());
    bypassGain = gain(seconds, traits.filterSeconds() / CellTraits.BYPASS_FACTOR);
  }

  private static double gain(double seconds, double constant) {
    return constant == 0 ? 1 : -Math.expm1(-seconds / constant);
  }

  /** One step of a first-order noise: what is kept of the old value, and how much is new. */
  private record Fading(double kept, double fresh) {
    static Fading over(double seconds, double constant) {
      double kept = Math.exp(-seconds / constant);
      return new Fading(kept, Math.sqrt(1 - kept * kept));
    }

    double next(double old, double deviation, SplittableRandom random) {
      return kept * old + (deviation == 0 ? 0 : fresh * deviation * random.nextGaussian());
    }
  }
}
