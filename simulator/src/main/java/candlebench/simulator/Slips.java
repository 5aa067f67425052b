package candlebench.simulator;

/**
 * How often a maker slips, each kind with its own share, zero being off. How often real makers do is in no source found.
 *
 * @param lateShare of cues, how many are answered two to six times as late as usual
 * @param missedShare of cues, how many are not taken in at all until they have stood for 3 to 6 s
 * @param spillShare of pours, how many go partly on the bare pan first, wiped up half a minute later at the latest
 * @param spoonShare of pots put on, how many have a spoon beside them, taken away within a minute
 */
public record Slips(double lateShare, double missedShare, double spillShare, double spoonShare) {

  public static Slips none() {
    return new Slips(0, 0, 0, 0);
  }

  /** A tired evening: every slip now and then. */
  public static Slips tired() {
    return new Slips(0.05, 0.01, 0.03, 0.03);
  }
}
