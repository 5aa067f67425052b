package candlebench.simulator;

/**
 * How a load cell and its indicator's filter behave.
 *
 * @param noiseGrams standard deviation of the cell's noise before the filter
 * @param filterSeconds time constant of the indicator's low-pass filter; zero is none
 * @param bypassGrams a change larger than this passes the filter eight times faster; zero is never. A slow pour stays inside the
 *     limit and so gets the slowest filter (indicator manuals bypass at 2 to 18 divisions)
 * @param creepShare what the reading creeps on under load in the end, as a share of the load; OIML R 60 5.5.1 lets a cell of 3,000
 *     steps creep by 0.7 of its permissible error in 30 min, about 2 in 10,000 at full load
 * @param wanderGrams standard deviation of the slow wander of the reading as the room and the cell change
 * @param hotGrams how far the reading walks under a hot pot; its size is in no source found, an assumption
 */
public record CellTraits(
    double noiseGrams,
    double filterSeconds,
    double bypassGrams,
    double creepShare,
    double wanderGrams,
    double hotGrams) {

  /**
   * Neighbouring noise samples of a raw cell at 11.7 a second are correlated by 0.46: it fades by 1/e in 0.110 s. Measured from a
   * published brew log of a 1 kg cell with an HX711 converter (mortenfyhn/coffee-scales, GPL-3.0: figures only).
   */
  static final double NOISE_SECONDS = 1 / 11.7 / -Math.log(0.46);

  static final double CREEP_SECONDS = 400;
  static final double WANDER_SECONDS = 150;
  static final double HOT_SECONDS = 120;
  static final double DRAUGHT_SECONDS = 0.7;
  static final double BYPASS_FACTOR = 8;

  /** The raw cell of the published log, after a cold start: no filter, noise of 0.020 g, a slow wander. */
  public static CellTraits rawOneKilogram() {
    return new CellTraits(0.020, 0, 0, 0.0001, 0.07, 0.3);
  }

  /** A bench scale of 3 kg by 0.1 g with a filter of a third of a second, quick on steps over 18 divisions. */
  public static CellTraits benchThreeKilograms() {
    return new CellTraits(0.05, 0.35, 1.8, 0.0001, 0.02, 0.3);
  }

  /** A balance of 500 g by 0.01 g. */
  public static CellTraits balanceFiveHundredGrams() {
    return new CellTraits(0.006, 0.5, 0, 0.00005, 0.004, 0.1);
  }

  /** A kitchen scale of 5 kg by 1 g: slow, but quick on large steps. */
  public static CellTraits kitchenFiveKilograms() {
    return new CellTraits(0.2, 0.8, 10, 0.0003, 0.2, 1);
  }

  public CellTraits withNoise(double grams) {
    return new CellTraits(grams, filterSeconds, bypassGrams, creepShare, wanderGrams, hotGrams);
  }

  public CellTraits withFilter(double seconds) {
    return new CellTraits(noiseGrams, seconds, bypassGrams, creepShare, wanderGrams, hotGrams);
  }

  public CellTraits withBypass(double grams) {
    return new CellTraits(noiseGrams, filterSeconds, grams, creepShare, wanderGrams, hotGrams);
  }

  /** Neither creep, nor wander, nor a walk under heat. */
  public CellTraits withoutDrift() {
    return new CellTraits(noiseGrams, filterSeconds, bypassGrams, 0, 0, 0);
  }
}
