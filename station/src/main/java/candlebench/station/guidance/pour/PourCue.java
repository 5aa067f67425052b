package candlebench.station.guidance.pour;

/**
 * What the stream should do now.
 *
 * @param gramsToGo what is missing to the target as far as it can be known; negative when over
 * @param stopInNanos the foreseen time until "stop"; meaningful where {@code kind} is SLOW and the thin stream is seen, else -1
 * @param drops how many drops are missing; meaningful where {@code kind} is DROPS, else 0
 */
public record PourCue(Kind kind, double gramsToGo, long stopInNanos, int drops) {
  public enum Kind {
    POUR,
    SLOW,
    STOP,
    DROPS,
    HOLD_STILL
  }
}
