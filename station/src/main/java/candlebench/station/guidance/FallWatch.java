package candlebench.station.guidance;

import candlebench.shared.Mass;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Notices that something was taken away while something is to go in: a whole second lies below what had been there for a whole second.
 * So knocks, swings and the blow of a piece are none.
 *
 * <p>A hand is none either: it leaves by as much as it had come, or leaves the load where it had been at rest, or comes back by as much
 * as it had lifted. So a fall is open for the time that a hand stays.
 *
 * @param recent a point each {@link #EVERY} for about the last six seconds, oldest first
 * @param rests where the load came to rest so far
 * @param rest where it was last at rest
 * @param open the fall that a hand may still undo
 * @param from what would be there but for the fall, with the reading that ends the wait for a hand
 */
record FallWatch(
    List<Point> recent, List<Mass> rests, Mass rest, Optional<Fall> open, Optional<Mass> from) {

  /** Less than this is wiped up beside it, and nothing to ask about. */
  static final Mass LEAST = Mass.ofGrams("5");

  private static final Mass SAME = Mass.ofGrams("1");
  private static final long EVERY = 150_000_000L;
  private static final long STOOD = 1_000_000_000L;
  private static final long LOOK_BACK = 6_000_000_000L;

  /** An elbow or a cable stays for four seconds at most (an assumption, as of the simulated bench); a fall is noticed after one. */
  private static final long PATIENCE = 3_900_000_000L;

  /** The blow of a piece is over by then, as a scale's filter shows it. */
  private static final long BLOW = 600_000_000L;

  /** A hand comes or goes within so much time, by a scale's filter. */
  private static final long AT_ONCE = 1_000_000_000L;

  private static final int MOST_RESTS = 32;

  /**
   * A net weight that was seen.
   *
   * @param low the least of the second that it ends, where there was so much
   */
  record Point(long nanos, Mass net, Optional<Mass> low) {}

  /** A fall, from what had been there, by so much. */
  record Fall(long nanos, Mass was, Mass by) {}

  /** Begins with what stands there. */
  static FallWatch at(Mass net) {
    return new FallWatch(List.of(), List.of(), net, Optional.empty(), Optional.empty());
  }

  /** With one more reading; more than was wanted never was there, but leant on it or will be taken back. */
  FallWatch seen(long nanos, Mass net, Mass wanted, Pan pan) {
    if (!recent.isEmpty() && nanos - recent.get(recent.size() - 1).nanos() < EVERY)
      return new FallWatch(recent, rests, rest, open, Optional.empty());
    List<Point> points = new ArrayList<>(recent);
    while (!points.isEmpty() && nanos - points.get(0).nanos() > LOOK_BACK) points.remove(0);
    int second = beginOf(nanos - STOOD, points);
    boolean whole = second >= 0;
    Mass low = net;
    Mass high = net;
    for (Point point : points.subList(Math.max(0, second), points.size())) {
      if (point.net().isLessThan(low)) low = point.net();
      if (point.net().isMoreThan(high)) high = point.net();
    }
    List<Point> earlier = List.copyOf(points.subList(0, Math.max(0, second)));
    points.add(new Point(nanos, net, whole ? Optional.of(low) : Optional.empty()));
    Optional<Fall> still = open.filter(fall -> !isUndone(fall, points));
    boolean over = still.filter(fall -> nanos - fall.nanos() >= PATIENCE).isPresent();
    Mass least = low;
    Mass most = high;
    boolean rested = whole && !pan.differs(high.minus(low), 1);
    return new FallWatch(
        List.copyOf(points),
        rested ? with(least) : rests,
        rested ? least : rest,
        over
            ? Optional.empty()
            : whole ? still.or(() -> fall(earlier, points, most, wanted)) : still,
        over ? still.map(fall -> net.plus(fall.by())) : Optional.empty());
  }

  /** The newest point at or before a moment, or -1. */
  private static int beginOf(long moment, List<Point> points) {
    int at = points.size() - 1;
    while (at >= 0 && points.get(at).nanos() > moment) at--;
    return at;
  }

  private List<Mass> with(Mass level) {
    if (isKnown(level) || rests.size() == MOST_RESTS) return rests;
    List<Mass> more = new ArrayList<>(rests);
    more.add(level);
    return List.copyOf(more);
  }

  private boolean isKnown(Mass level) {
    return rests.stream().anyMatch(known -> !known.minus(level).abs().isMoreThan(SAME));
  }

  /** A fall below the most that was there for a second, if no hand had come by as much. */
  private Optional<Fall> fall(List<Point> earlier, List<Point> points, Mass now, Mass wanted) {
    long nanos = points.get(points.size() - 1).nanos();
    return Stream.concat(Stream.of(rest), earlier.stream().flatMap(point -> point.low().stream()))
        .max(Mass::compareTo)
        .filter(was -> !was.isMoreThan(wanted))
        .filter(was -> was.minus(now).isMoreThan(LEAST) && !isKnown(now))
        .map(was -> new Fall(nanos, was, atLeast(was.minus(now), steepest(newest(points)))))
        .filter(fall -> !came(earlier, fall.by(), Mass.ZERO));
  }

  private static Mass atLeast(Mass by, Optional<Mass> drop) {
    return drop.filter(more -> more.isMoreThan(by)).orElse(by);
  }

  private static List<Point> newest(List<Point> points) {
    long since = points.get(points.size() - 1).nanos() - STOOD - AT_ONCE;
    return points.subList(beginOf(since, points) + 1, points.size());
  }

  /** The most that it fell at once: a stream that ran on meanwhile hides little of it. */
  private static Optional<Mass> steepest(List<Point> points) {
    Optional<Mass> most = Optional.empty();
    for (int i = 0; i < points.size(); i++)
      for (int j = i + 1; j < points.size() && isAtOnce(points.get(i), points.get(j)); j++) {
        Mass drop = points.get(i).net().minus(points.get(j).net());
        if (most.filter(before -> !drop.isMoreThan(before)).isEmpty()) most = Optional.of(drop);
      }
    return most;
  }

  /** Whether what had been there is there again, or more, and came at once. */
  private static boolean isUndone(Fall fall, List<Point> points) {
    List<Point> since = points.subList(beginOf(fall.nanos() - STOOD, points) + 1, points.size());
    return came(since, fall.by(), fall.was().minus(SAME));
  }

  /** Whether about so much came at once, and did not fall back as the blow of a piece does. */
  private static boolean came(List<Point> points, Mass much, Mass least) {
    Mass share = much.times(1, 20);
    Mass off = share.isMoreThan(SAME) ? share : SAME;
    for (int i = 0; i < points.size(); i++)
      for (int j = i + 1; j < points.size() && isAtOnce(points.get(i), points.get(j)); j++) {
        Mass then = points.get(j).net();
        Mass came = then.minus(points.get(i).net());
        if (!came.minus(much).abs().isMoreThan(off)
            && !then.isLessThan(least)
            && stays(points, j, off)) return true;
      }
    return false;
  }

  private static boolean stays(List<Point> points, int from, Mass off) {
    Point came = points.get(from);
    if (points.get(points.size() - 1).nanos() - came.nanos() < BLOW) return false;
    return points.subList(from, points.size()).stream()
        .filter(point -> point.nanos() - came.nanos() <= BLOW)
        .noneMatch(point -> came.net().minus(point.net()).isMoreThan(off));
  }

  private static boolean isAtOnce(Point first, Point then) {
    return then.nanos() - first.nanos() <= AT_ONCE;
  }
}
