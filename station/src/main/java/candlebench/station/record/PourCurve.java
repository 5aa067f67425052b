package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.Trace;
import java.util.List;
import java.util.Optional;

/**
 * The course of one weighing as a small picture: time to the right, net weight upwards, with the target and its tolerance. Whole
 * numbers throughout, as the coordinates of an SVG path in a view box of {@link #WIDTH} by {@link #HEIGHT}.
 *
 * @param path the course, such as {@code M0 600L40 580}
 * @param targetY the height of the target's line; {@code overY} and {@code underY} those of the tolerance's ends
 * @param seconds how long it took, in tenths: {@code "12.4"}
 */
public record PourCurve(String path, int targetY, int overY, int underY, String seconds) {
  public static final int WIDTH = 2400;
  public static final int HEIGHT = 600;

  /** Room above the highest thing shown, as a share of it. */
  private static final int HEADROOM = 20;

  /** The picture of a weighing; none where nothing was traced, as of an entry by hand. */
  public static Optional<PourCurve> of(WeightAccepted weight) {
    List<Trace.Point> points = weight.trace();
    if (points.size() < 2) return Optional.empty();
    long target = milligrams(weight.target());
    long over = milligrams(weight.target().plus(weight.tolerance().over()));
    long under = milligrams(weight.target().minus(weight.tolerance().under()));
    long highest = points.stream().mapToLong(Trace.Point::milligrams).max().orElse(0);
    long top = Math.max(1, Math.max(highest, over));
    Scale scale = new Scale(top + top / HEADROOM, Math.max(1, lastMillis(points)));
    StringBuilder path = new StringBuilder();
    for (Trace.Point point : points)
      path.append(path.length() == 0 ? 'M' : 'L')
          .append(scale.x(point.millis()))
          .append(' ')
          .append(scale.y(point.milligrams()));
    long tenths = (lastMillis(points) + 50) / 100;
    return Optional.of(new PourCurve(
        path.toString(),
        scale.y(target),
        scale.y(over),
        scale.y(under),
        tenths / 10 + "." + tenths % 10));
  }

  private static int lastMillis(List<Trace.Point> points) {
    return points.get(points.size() - 1).millis();
  }

  private static long milligrams(Mass mass) {
    return mass.picograms() / 1_000_000_000L;
  }

  private record Scale(long topMilligrams, long lastMillis) {

    int x(long millis) {
      return (int) (millis * WIDTH / lastMillis);
    }

    /** Downwards from the top, as pictures count; what lies below zero is drawn at the foot. */
    int y(long milligrams) {
      long height = Math.max(0, Math.min(topMilligrams, milligrams)) * HEIGHT / topMilligrams;
      return (int) (HEIGHT - height);
    }
  }
}
