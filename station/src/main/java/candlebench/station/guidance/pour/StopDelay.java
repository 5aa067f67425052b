package candlebench.station.guidance.pour;

import java.util.ArrayList;
import java.util.List;

/**
 * The seconds of flow that still arrive after "stop": scale, screen, reaction and wrist together, learnt for one scale, one maker and
 * one kind of pour.
 *
 * <p>Before anything is learnt: 0.9 s, where the sum of usual delays lies (scale filter 0.2 to 1.0 s, reaction 0.2 to 0.3 s, wrist 0.2
 * to 0.4 s; common practice, no source). One pour moves it by less than a fifth.
 *
 * @param seconds what to count on for the next stop
 * @param shown the last delays shown by pours, oldest first, at most {@link #REMEMBERED}
 */
public record StopDelay(double seconds, List<Double> shown) {
  /** Median of the last 5 to 10 stops is common practice, no source. */
  public static final int REMEMBERED = 8;

  public static final double SHORTEST = 0.25;
  public static final double LONGEST = 2.5;

  /** Nothing learnt yet. */
  public static final StopDelay UNLEARNT = new StopDelay(0.9, List.of());

  private static final double MOST_CHANGE = 0.18;

  public StopDelay {
    shown = List.copyOf(shown);
    if (!(seconds >= SHORTEST && seconds <= LONGEST))
      throw new IllegalArgumentException("a stop takes between 0.25 and 2.5 s, not " + seconds);
  }

  /** Learns from one more pour, of which the flow after "stop" lasted so many seconds at its flow before. */
  public StopDelay learn(double delaySeconds, PourKind kind) {
    double seen = clamp(delaySeconds, SHORTEST, LONGEST);
    List<Double> kept = new ArrayList<>(shown);
    kept.add(seen);
    if (kept.size() > REMEMBERED) kept.remove(0);
    double wanted = quantile(kept, kind.quantile());
    double next = clamp(wanted, seconds * (1 - MOST_CHANGE), seconds * (1 + MOST_CHANGE));
    return new StopDelay(clamp(next, SHORTEST, LONGEST), kept);
  }

  private static double quantile(List<Double> values, double share) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    double at = share * (sorted.length - 1);
    int below = (int) at;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
  }

  private static double clamp(double value, double low, double high) {
    return Math.max(low, Math.min(high, value));
  }
}
