package candlebench.shared;

/**
 * The allowance under and over a target.
 *
 * @param under how far below the target is still within; zero or more
 * @param over how far above the target is still within; zero or more
 */
public record Tolerance(Mass under, Mass over) {

  public Tolerance {
    if (under.isNegative() || over.isNegative())
      throw new IllegalArgumentException(
          "tolerance is an allowance: give both sides as zero or more");
  }

  public static Tolerance ofGrams(String under, String over) {
    return new Tolerance(Mass.ofGrams(under), Mass.ofGrams(over));
  }

  /** Where a net weight lies; a difference under half a division is none the scale can show, so limits are taken in divisions. */
  public Verdict judge(Mass target, Mass net, Division division) {
    long off = division.stepsIn(net.minus(target));
    if (off < -division.stepsIn(under)) return Verdict.UNDER;
    if (off > division.stepsIn(over)) return Verdict.OVER;
    return Verdict.WITHIN;
  }
}
