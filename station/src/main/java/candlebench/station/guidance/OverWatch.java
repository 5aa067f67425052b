package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;

/**
 * Notices an over-pour: from a settled value over the limit, or from one that is far over and stays so. A dropped piece, a knock or a
 * draught is over before that.
 *
 * @param sinceNanos since when all readings were far over; meaningful where {@code count} is not zero
 */
record OverWatch(long sinceNanos, int count) {
  static final OverWatch NONE = new OverWatch(0, 0);

  private static final long STAYS = 800_000_000L;
  private static final long PIECES_STAY = 1_500_000_000L;
  private static final int FEWEST = 3;

  OverWatch seen(long nanos, Mass net, Goal goal, Pan pan) {
    if (!net.isMoreThan(far(goal, pan))) return NONE;
    return new OverWatch(count == 0 ? nanos : sinceNanos, count + 1);
  }

  /** Twice the allowance over, 2 % and five steps: no wavering of a scale reaches it. */
  private static Mass far(Goal goal, Pan pan) {
    Mass margin = goal.tolerance().over().times(2);
    Mass share = goal.target().times(1, 50);
    Mass steps = pan.division().steps(5);
    Mass most = margin.isMoreThan(share) ? margin : share;
    return goal.target().plus(most.isMoreThan(steps) ? most : steps);
  }

  /** Over and at rest, by the station's own rule: a flag that is late does not delay bad news. */
  static boolean settledOver(Mass net, Goal goal, Pan pan) {
    return pan.steady().filter(Steady::atRest).isPresent()
        && goal.tolerance().judge(goal.target(), net, pan.division()) == Verdict.OVER;
  }

  boolean stays(long nanos, Goal goal) {
    return count >= FEWEST && nanos - sinceNanos >= (goal.byPieces() ? PIECES_STAY : STAYS);
  }
}
