package candlebench.station.guidance.pour;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import java.util.Arrays;
import java.util.Optional;

/**
 * Watches one pour towards its target. Immutable: each reading gives the next watch.
 *
 * <p>"Stop" is said when what is on the pan by the line through the last {@link #WINDOW_NANOS}, plus the flow times the learnt delay,
 * reaches the target. A falling stream needs no correction of its own: leaving the lip slowly, its impact equals the weight of the
 * liquid in the air (elementary mechanics).
 */
public final class PourWatch {
  private static final long WINDOW_NANOS = 800_000_000L;

  /** At a few readings a second a line still needs three of them. */
  private static final int FEWEST_POINTS = 3;

  private static final long OLDEST_NANOS = 2_000_000_000L;
  private static final int MOST_POINTS = 64;

  /** One drop of oil: 0.033 g, the mean of three published studies of dropper bottles. */
  private static final double DROP_GRAMS = 0.033;

  private static final int MOST_DROPS = 30;
  private static final double SLOW_SECONDS = 2.5;
  private static final double SLOW_SHARE = 0.1;

  /** Less than this is no stream but creep and noise. */
  private static final double LEAST_FLOW = 0.25;

  private final PourKind kind;
  private final double target;
  private final double under;
  private final double step;
  private final StopDelay delay;
  private final long[] nanos;
  private final double[] grams;
  private final FlowLine line;
  private final Stop stop;
  private final boolean slow;

  /** The moment at which "stop" was first said in this run of the stream: when, at what weight, at what flow. */
  private record Stop(long nanos, double grams, double flow) {
    static final Stop NONE = new Stop(0, 0, 0);
  }

  private PourWatch(
      PourKind kind,
      double target,
      double under,
      double step,
      StopDelay delay,
      long[] nanos,
      double[] grams,
      FlowLine line,
      Stop stop,
      boolean slow) {
    this.slow = slow;
    this.kind = kind;
    this.target = target;
    this.under = under;
    this.step = step;
    this.delay = delay;
    this.nanos = nanos;
    this.grams = grams;
    this.line = line;
    this.stop = stop;
  }

  public static PourWatch begin(
      PourKind kind, Mass target, Tolerance tolerance, Division division, StopDelay delay) {
    return new PourWatch(
        kind,
        target.roughGrams(),
        tolerance.under().roughGrams(),
        division.step().roughGrams(),
        delay,
        new long[0],
        new double[0],
        FlowLine.NONE,
        Stop.NONE,
        false);
  }

  /** The next reading: what is poured so far, by the clock that never goes back. */
  public PourWatch seen(long atNanos, Mass net) {
    int from = firstKept(atNanos);
    int kept = nanos.length - from;
    long[] times = Arrays.copyOfRange(nanos, from, nanos.length + 1);
    double[] weights = Arrays.copyOfRange(grams, from, grams.length + 1);
    times[kept] = atNanos;
    weights[kept] = net.roughGrams();
    FlowLine fitted = FlowLine.through(times, weights, kept + 1);
    return new PourWatch(
        kind,
        target,
        under,
        step,
        delay,
        times,
        weights,
        fitted,
        stopAfter(atNanos, fitted),
        slow || isNear(fitted, atNanos, atNanos, target - net.roughGrams()));
  }

  private int firstKept(long atNanos) {
    int from = Math.max(0, nanos.length + 1 - MOST_POINTS);
    while (from < nanos.length && atNanos - nanos[from] > OLDEST_NANOS) from++;
    while (nanos.length - from >= FEWEST_POINTS && atNanos - nanos[from] > WINDOW_NANOS) from++;
    return from;
  }

  private Stop stopAfter(long atNanos, FlowLine fitted) {
    if (fitted.gramsPerSecond() < leastFlow()) return stop;
    boolean now = secondsToStop(fitted, atNanos, atNanos) <= 0;
    if (!now) return Stop.NONE;
    return stop == Stop.NONE ? new Stop(atNanos, fitted.grams(), fitted.gramsPerSecond()) : stop;
  }

  /** What to say at a moment at or after the newest reading. */
  public PourCue cue(long atNanos) {
    if (nanos.length == 0) return new PourCue(PourCue.Kind.POUR, target, -1, 0);
    double toGo = target - grams[grams.length - 1];
    if (line.gramsPerSecond() < leastFlow()) return atRest(toGo);
    double seconds = secondsToStop(line, nanos[nanos.length - 1], atNanos);
    if (seconds <= 0) return new PourCue(PourCue.Kind.STOP, toGo, -1, 0);
    boolean nearNow = slow || isNear(line, nanos[nanos.length - 1], atNanos, toGo);
    return new PourCue(
        nearNow ? PourCue.Kind.SLOW : PourCue.Kind.POUR, toGo, (long) (seconds * 1e9), 0);
  }

  private PourCue atRest(double toGo) {
    if (toGo <= under + step / 2) return new PourCue(PourCue.Kind.HOLD_STILL, toGo, -1, 0);
    long drops = Math.round(toGo / DROP_GRAMS);
    if (kind.byDrops() && drops <= MOST_DROPS)
      return new PourCue(PourCue.Kind.DROPS, toGo, -1, (int) drops);
    return new PourCue(
        slow || toGo < SLOW_SHARE * target ? PourCue.Kind.SLOW : PourCue.Kind.POUR, toGo, -1, 0);
  }

  /** Once near, a stream stays near: what has slowed down is not told to hurry again. */
  private boolean isNear(FlowLine fitted, long newest, long atNanos, double toGo) {
    if (toGo < SLOW_SHARE * target) return true;
    return fitted.gramsPerSecond() >= leastFlow()
        && secondsToStop(fitted, newest, atNanos) < SLOW_SECONDS;
  }

  private double secondsToStop(FlowLine fitted, long newest, long atNanos) {
    double missing = target - fitted.grams();
    return missing / fitted.gramsPerSecond() - delay.seconds() - (atNanos - newest) / 1e9;
  }

  private double leastFlow() {
    return Math.max(LEAST_FLOW, step);
  }

  /** The flow now, in grams a second, by the line. */
  public double flow() {
    return line.gramsPerSecond();
  }

  /** What this pour shows of the delay, once its end is settled; empty where "stop" was never said to a running stream. */
  public Optional<Double> delayShown(Mass settled) {
    if (stop == Stop.NONE || stop.flow() < leastFlow()) return Optional.empty();
    return Optional.of(Math.max(0, (settled.roughGrams() - stop.grams()) / stop.flow()));
  }
}
