package candlebench.station.guidance.pour;

import java.util.ArrayList;
import java.util.List;

/**
 * The newest readings of a free stream. Immutable; times in seconds.
 *
 * <p>A free stream wavers by a quarter within half a second, and held-up readings come in bursts: what it brings next is foretold by
 * what it brought over most of a second, from end to end. A line fitted through it takes a burst for a flood.
 */
record FreeRun(List<Point> points) {
  static final FreeRun NONE = new FreeRun(List.of());

  /** Long against the wavering of a hand, short against a change of mind; the best of 0.7, 0.9 and 1.3 s in simulated pours. */
  private static final double WINDOW = 0.7;

  /** How little the usual stream of this maker counts once the window is full, as a share of the stream. */
  private static final double WAVER = 0.05;

  private static final double SHORTEST = 0.25;

  record Point(double at, double grams) {}

  FreeRun {
    points = List.copyOf(points);
  }

  FreeRun and(double at, double grams) {
    List<Point> kept = new ArrayList<>(points);
    while (kept.size() > 1 && at - kept.get(1).at() >= WINDOW) kept.remove(0);
    kept.add(new Point(at, grams));
    return new FreeRun(kept);
  }

  /** Grams a second, as far as the readings tell, the rest as usual. */
  double flow(Habit usual) {
    if (points.isEmpty()) return usual.usual();
    Point first = points.get(0);
    Point last = points.get(points.size() - 1);
    double seconds = last.at() - first.at();
    if (seconds < SHORTEST) return usual.usual();
    double seen = (last.grams() - first.grams()) / seconds;
    double doubt = WAVER * Math.max(seen, 1) * WINDOW / Math.min(seconds, WINDOW);
    double trust = usual.uncertainty() * usual.uncertainty();
    return (seen * trust + usual.usual() * doubt * doubt) / (trust + doubt * doubt);
  }
}
