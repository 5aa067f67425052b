package candlebench.station.batch;

import java.time.Duration;

/**
 * The waits of a recipe; zero leaves a wait out.
 *
 * @param set how long the vessels rest before they are moved or trimmed
 */
public record Waits(Duration melt, Duration mix, Duration set) {
  /** The longest melt or mix: more is surely a slip of the finger (common practice, no source). */
  public static final Duration LONGEST = Duration.ofMinutes(60);

  public static final Waits NONE = new Waits(Duration.ZERO, Duration.ZERO, Duration.ZERO);

  public Waits {
    for (Duration wait : new Duration[] {melt, mix})
      if (wait.isNegative() || wait.compareTo(LONGEST) > 0)
        throw new IllegalArgumentException(
            "melting and mixing take between 0 and 60 minutes, not " + wait.toMinutes());
    if (set.isNegative()) throw new IllegalArgumentException("setting takes zero time or more");
  }
}
