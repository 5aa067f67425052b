package candlebench.simulator;

import java.util.SplittableRandom;

/**
 * What one maker's hands are like. Each pour then varies around it.
 *
 * @param reactionSeconds usual time from a cue to the start of the movement
 * @param timingBias how early (below zero) or late the maker usually is at a foreseen moment, in seconds
 * @param timingDeviation standard deviation around it, in seconds
 * @param fallSeconds usual time in which the stream falls from 90 to 10 % when the wrist turns back
 * @param pace how fast the maker handles things, 1 being usual, more being slower
 * @param flowFactor how strongly this maker pours, 1 being usual
 * @param slowShare of this maker's pours, how many are slow throughout, between a thin stream and a free one
 * @param dropGrams one drop of this maker's bottle
 * @param dropsPerSecond how fast the drops follow one another
 */
public record MakerTraits(
    double reactionSeconds,
    double timingBias,
    double timingDeviation,
    double fallSeconds,
    double pace,
    double flowFactor,
    double slowShare,
    double dropGrams,
    double dropsPerSecond) {

  /**
   * From a cue to the wrist: 231 ms for a simple reaction to a sign seen (1,469 people, "Factors influencing simple reaction time",
   * 2015), 283 ms for a choice by ear ("Measurement of auditory reaction time", 1990), and some attention elsewhere on the bench:
   * 0.35 s is our assumption, as are the spreads. A careful study finds no difference between senses, so there is none here.
   */
  static final double REACTION_SECONDS = 0.35;

  static final double REACTION_BETWEEN = 0.28;
  static final double REACTION_WITHIN = 0.15;

  /**
   * People time a moment they can foresee far better than they react to a sign ("Coincidence-anticipation accuracy", abstract; whose
   * subjects met moving lights, not bottles, and did worse where the moment sometimes failed to come). The size is our assumption.
   */
  static final double TIMING_LEAST = 0.05;

  static final double TIMING_MOST = 0.10;

  /**
   * Hand pours in the published logs named at {@link PourKind} seemed to fall from 90 to 10 % in 0.35, 0.70 and 1.05 s (10, 50 and 90 % of
   * 13), seen through their scales and a slope over half a second, which alone makes 0.4 s of a stream cut at once. With these figures
   * pours of the model look alike when seen in the same way.
   */
  static final double FALL_SECONDS = 0.50;

  static final double FALL_BETWEEN = 0.35;
  static final double FALL_WITHIN = 0.35;

  /** How often people pour slowly by choice is in no source found. */
  static final double SLOW_MOST = 0.15;

  /** A drop weighs 0.033 g in the mean, 0.015 to 0.045 g by oil ("Drop size", an aromatherapy institute: three studies of 20 drops). */
  static final double DROP_LEAST = 0.015;

  static final double DROP_MOST = 0.045;
  static final double DROP_WITHIN = 0.10;

  /** A maker with nothing unusual. */
  public static MakerTraits usual() {
    return new MakerTraits(REACTION_SECONDS, 0, 0.07, FALL_SECONDS, 1, 1, 0, 0.030, 1.3);
  }

  /** One maker out of many. */
  public static MakerTraits drawn(SplittableRandom random) {
    return new MakerTraits(
        around(REACTION_SECONDS, REACTION_BETWEEN, random),
        0.03 * random.nextGaussian(),
        TIMING_LEAST + (TIMING_MOST - TIMING_LEAST) * random.nextDouble(),
        around(FALL_SECONDS, FALL_BETWEEN, random),
        around(1, 0.3, random),
        around(1, 0.15, random),
        SLOW_MOST * random.nextDouble(),
        DROP_LEAST + (DROP_MOST - DROP_LEAST) * random.nextDouble(),
        around(1.3, 0.15, random));
  }

  /** The same maker, pouring slowly by choice more or less often. */
  public MakerTraits withSlowShare(double share) {
    return new MakerTraits(
        reactionSeconds,
        timingBias,
        timingDeviation,
        fallSeconds,
        pace,
        flowFactor,
        share,
        dropGrams,
        dropsPerSecond);
  }

  /** A log-normal draw with this median and, roughly, this relative spread. */
  static double around(double median, double spread, SplittableRandom random) {
    return median * Math.exp(spread * random.nextGaussian());
  }
}
