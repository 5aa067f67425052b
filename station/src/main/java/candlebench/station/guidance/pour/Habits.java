package candlebench.station.guidance.pour;

import candlebench.station.guidance.pour.PourShown.Of;

/**
 * What is learnt of one maker's pours of one kind at one scale.
 *
 * @param slow seconds for which the free stream still counts in full after "slow": reaction, wrist, scale and screen together
 * @param stop the same of the thin stream after "stop"
 * @param thin the thin stream, in grams a second
 * @param free the free stream
 * @param drop one drop, in grams
 */
public record Habits(Habit slow, Habit stop, Habit thin, Habit free, Habit drop) {
  private static final double SHORTEST = 0.2;
  private static final double LONGEST = 3.5;

  /**
   * Before anything is learnt: a filter of 0.1 to 0.8 s, a reaction of 0.2 to 0.5 s, half the turn of a wrist that lets the stream fall
   * from 90 to 10 % in 0.35 to 1.05 s (13 published recordings of hand pours); the sum is common practice, no source.
   */
  private static final Habit DELAY = new Habit(1.3, 0.3, 0.2);

  /**
   * The mean of 20-drop weighings in three published studies of eye droppers, 0.015 to 0.045 g by oil (summary of an aromatherapy
   * institute, "Drop size").
   */
  private static final Habit DROP = new Habit(0.033, 0.008, 0.003);

  /**
   * Oil from an open bottle runs at 2 to 10 g/s, wax from a pitcher at 10 to 30 g/s and at 2 to 5 g/s to finish (common practice, no
   * source).
   */
  public static Habits unlearnt(PourKind kind) {
    return switch (kind) {
      case OIL, TAP ->
        new Habits(DELAY, DELAY, new Habit(0.95, 0.1, 0.3), new Habit(8, 1.5, 2.5), DROP);
      case WAX, VESSEL ->
        new Habits(DELAY, DELAY, new Habit(3.5, 0.4, 0.9), new Habit(17, 3, 5), DROP);
    };
  }

  public Habits learn(PourShown shown) {
    return new Habits(
        shown.of(Of.SLOW).map(seconds -> slow.learn(seconds, SHORTEST, LONGEST)).orElse(slow),
        shown.of(Of.STOP).map(seconds -> stop.learn(seconds, SHORTEST, LONGEST)).orElse(stop),
        shown.of(Of.THIN).map(flow -> thin.learn(flow, 0.1, 10)).orElse(thin),
        shown.of(Of.FREE).map(flow -> free.learn(flow, 0.5, 60)).orElse(free),
        shown.of(Of.DROP).map(grams -> drop.learn(grams, 0.01, 0.1)).orElse(drop));
  }
}
