package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.guidance.pour.PourKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Notices what no stream can do: a hand, a spoon or a knock moves the weight by more than could be poured in the time.
 *
 * <p>What leapt is not believed, for taking nor for an over-pour, until it is back, or has stood settled for so long that it must be a
 * weight, however it came.
 *
 * @param recent the readings of about the last quarter of a second, oldest first
 * @param from the net weight before the leap that is not over yet
 * @param patience settled for so many nanoseconds, it is believed
 */
record LeapWatch(List<Point> recent, Optional<Mass> from, long patience) {
  private static final long BELIEVED = 3_000_000_000L;

  static final LeapWatch CALM = new LeapWatch(List.of(), Optional.empty(), BELIEVED);

  /** Believes a leap only when it is back where it was. */
  static final LeapWatch STUBBORN = new LeapWatch(List.of(), Optional.empty(), Long.MAX_VALUE);

  private static final long LOOK_BACK = 250_000_000L;
  private static final Mass BACK = Mass.ofGrams("1");

  record Point(long nanos, Mass net) {}

  LeapWatch seen(long nanos, Mass net, PourKind kind, Pan pan) {
    List<Point> kept = new ArrayList<>(recent);
    while (kept.size() > 1 && nanos - kept.get(1).nanos() >= LOOK_BACK) kept.remove(0);
    Optional<Mass> leapt = from.isPresent() ? from : leap(kept, nanos, net, kind, pan);
    if (leapt.filter(before -> isOver(before, net, pan)).isPresent()) leapt = Optional.empty();
    kept.add(new Point(nanos, net));
    return new LeapWatch(List.copyOf(kept), leapt, patience);
  }

  private static Optional<Mass> leap(
      List<Point> kept, long nanos, Mass net, PourKind kind, Pan pan) {
    if (kept.isEmpty()) return Optional.empty();
    Point before = kept.get(0);
    double seconds = Math.max(LOOK_BACK, nanos - before.nanos()) / 1e9;
    double most = mostFlow(kind) * seconds + 3 * pan.division().step().roughGrams();
    return Math.abs(net.minus(before.net()).roughGrams()) > most
        ? Optional.of(before.net())
        : Optional.empty();
  }

  /** Back where it was, or at rest long enough to be believed. */
  private boolean isOver(Mass before, Mass net, Pan pan) {
    Mass off = net.minus(before).abs();
    boolean back = !off.isMoreThan(BACK) || !pan.differs(off, ZeroShift.STEPS);
    return back
        || pan.steady().filter(run -> run.settled() && run.rested() >= patience).isPresent();
  }

  boolean pending() {
    return from.isPresent();
  }

  /** Twice what these pours usually reach: oil 10 g/s, wax 30 g/s (common practice, no source). */
  private static double mostFlow(PourKind kind) {
    return switch (kind) {
      case OIL, TAP -> 25;
      case WAX, VESSEL -> 80;
    };
  }
}
