package candlebench.station.guidance.pour;

/**
 * Something a maker does again and again, learnt from where pours really ended: how much it usually is, how sure that is, and how much
 * one time differs from another.
 *
 * @param usual the mean
 * @param doubt the standard deviation of that mean: large before anything is learnt
 * @param spread the standard deviation of one time around it
 */
public record Habit(double usual, double doubt, double spread) {
  /** One freak pour moves the usual by less than a fifth. */
  private static final double MOST_CHANGE = 0.18;

  private static final double FREAK = 2.5;
  private static final double SPREAD_SHARE = 0.12;
  private static final double MOST_SURPRISE = 4;

  /** Never surer than after a dozen pours: makers change. */
  private static final double LEAST_DOUBT = 0.28;

  public Habit {
    if (!(usual > 0) || !(doubt >= 0) || !(spread > 0))
      throw new IllegalArgumentException(
          "a habit is above zero and varies; usual " + usual + " and spread " + spread + " do not");
  }

  /** How far the next time may lie from the usual, as a standard deviation. */
  double uncertainty() {
    return Math.hypot(doubt, spread);
  }

  /** Learns from one more time, within bounds. */
  Habit learn(double shown, double least, double most) {
    double total = uncertainty();
    double off = clamp(clamp(shown, least, most) - usual, -FREAK * total, FREAK * total);
    double share = doubt * doubt / (total * total);
    double change = clamp(share * off, -MOST_CHANGE * usual, MOST_CHANGE * usual);
    double surprise = Math.min(off * off / (total * total), MOST_SURPRISE);
    double newSpread = spread * Math.sqrt(1 + SPREAD_SHARE * (surprise - 1));
    // Not surer of a maker who may be slower still; one who may be quicker only costs drops.
    boolean heldBack = change < share * off;
    double newDoubt = heldBack ? doubt : doubt * Math.sqrt(1 - share);
    return new Habit(
        clamp(usual + change, least, most), Math.max(newDoubt, LEAST_DOUBT * newSpread), newSpread);
  }

  static double clamp(double value, double low, double high) {
    return Math.max(low, Math.min(high, value));
  }
}
