package candlebench.station.guidance;

import candlebench.shared.Mass;
import java.util.ArrayList;
import java.util.List;

/**
 * The course of a pour, thinned for its picture: at most {@link #MOST} points, whatever it lasts.
 *
 * @param startNanos of the first point
 * @param everyMillis points closer than this are left out; doubles whenever there are too many
 */
public record Trace(long startNanos, int everyMillis, List<Point> points) {
  public static final int MOST = 240;
  static final Trace EMPTY = new Trace(0, 50, List.of());

  /** A point: time since the start, and the net weight then in milligrams, for a picture only. */
  public record Point(int millis, int milligrams) {}

  Trace and(long nanos, Mass net) {
    if (points.isEmpty()) return new Trace(nanos, everyMillis, List.of(point(0, net)));
    long millis = (nanos - startNanos) / 1_000_000;
    if (millis > Integer.MAX_VALUE || millis - points.get(points.size() - 1).millis() < everyMillis)
      return this;
    List<Point> more = new ArrayList<>(points);
    more.add(point((int) millis, net));
    return more.size() < MOST
        ? new Trace(startNanos, everyMillis, more)
        : new Trace(startNanos, everyMillis * 2, thinned(more));
  }

  /** Whether it never rose by more than so much. */
  boolean isFlat(Mass most) {
    int milligrams = point(0, most).milligrams();
    return points.stream().allMatch(point -> point.milligrams() <= milligrams);
  }

  private static Point point(int millis, Mass net) {
    return new Point(millis, (int) (net.picograms() / 1_000_000_000L));
  }

  private static List<Point> thinned(List<Point> points) {
    List<Point> kept = new ArrayList<>();
    for (int i = 0; i < points.size(); i += 2) kept.add(points.get(i));
    return kept;
  }
}
