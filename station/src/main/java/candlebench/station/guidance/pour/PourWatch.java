package candlebench.station.guidance.pour;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.guidance.pour.PourShown.Of;
import candlebench.station.guidance.pour.TailFit.Prior;
import java.util.Optional;

/**
 * Watches one pour towards its target and says what the stream should do. Immutable: each reading gives the next watch.
 *
 * <p>The rule, in the order of a pour. "Slow" is said while what the free stream still brings in, so many seconds of it as this maker
 * usually needs, leaves a reserve for the thin stream. "Stop" is counted down to, and said when the line through the thin stream, and
 * what it still brings, reach the aim; until the thin stream is seen, nothing is foretold. At rest the rest goes by drops, or in a
 * short thin stream where it is too much for drops. Near enough is "hold still". What a late hand costs decides every margin: short
 * is a drop more, over is a spoilt pot.
 */
public final class PourWatch {
  /** Less than this is no stream but drops, creep and noise, in grams a second. */
  static final double LEAST_STREAM = 0.15;

  /** The display turns to a number half a step early: so many grams more are wanted of drops that come from below. */
  private static final double DROP_OVER = 0.02;

  private static final double LAST_SHARE = 0.2;

  /** Drops that brought less were not let fall. */
  private static final double LEAST_DROP_SHARE = 0.3;

  /** More than this, in grams, takes longer by drops than in a short stream with a look at what it brought. */
  private static final double MOST_BY_DROPS = 0.8;

  /** A thin stream so short cannot be seen in time, and goes by the clock alone, in seconds. */
  private static final double MOST_UNSEEN = 3.2;

  /** A wrist needs so long to open a thin stream at all, in seconds. */
  private static final double OPENING = 0.22;

  /** So long after "slow" has usually taken effect, what is seen counts, whatever was planned. */
  private static final double PATIENCE = 1;

  /**
   * So near, in seconds, the moment of "stop" stands: a maker who times it may turn back a little early, and a stream that fades must
   * not put it off.
   */
  private static final double COMMITTED = 0.6;

  /** A free stream that has not slowed down so long after it should have, in seconds, is stopped at the target at the latest. */
  private static final double LATE = 0.3;

  private static final double NEVER = Double.MAX_VALUE;

  /** What is further away than this is not counted down, in seconds. */
  private static final double LONGEST_COUNTDOWN = 10;

  /** Who has added nothing for so long will not. The lightest drops move a display by 0.1 g in about this time. */
  private static final double NOBODY_ADDS = 5;

  /** Nor who lets several short streams go by that were asked for. */
  private static final double NOBODY_WILL = 9;

  private static final double SHORT_REST = 0.5;
  private static final double LONG_REST = 1;

  private final Margins margins;
  private final long origin;
  private final StreamLine line;
  private final Said said;
  private final boolean thin;
  private final Optional<Said> slow;
  private final Optional<Said> stop;
  private final PourShown shown;
  private final Still still;
  private final FreeRun run;
  private final double due;

  private PourWatch(
      Margins margins,
      long origin,
      StreamLine line,
      Said said,
      boolean thin,
      Optional<Said> slow,
      Optional<Said> stop,
      PourShown shown,
      Still still,
      FreeRun run,
      double due) {
    this.margins = margins;
    this.origin = origin;
    this.line = line;
    this.said = said;
    this.thin = thin;
    this.slow = slow;
    this.stop = stop;
    this.shown = shown;
    this.still = still;
    this.run = run;
    this.due = due;
  }

  /** Begins with the first reading, whatever is poured already. */
  public static PourWatch begin(
      PourKind kind,
      Mass target,
      Tolerance tolerance,
      Division division,
      Habits habits,
      long nanos,
      Mass net) {
    double step = division.step().roughGrams();
    Margins margins = new Margins(
        kind,
        target.roughGrams(),
        tolerance.under().roughGrams(),
        tolerance.over().roughGrams(),
        step,
        habits);
    double grams = net.roughGrams();
    Prior prior = new Prior(grams, step, 0, 0.1, step);
    StreamLine line = StreamLine.begin(0, prior, Expected.REST_FADING, margins.noise());
    return new PourWatch(
            margins,
            nanos,
            line,
            new Said(PourCue.Kind.HOLD_STILL, 0, grams, 0, false, 0),
            false,
            Optional.empty(),
            Optional.empty(),
            PourShown.NOTHING,
            Still.at(0, grams),
            FreeRun.NONE.and(0, grams),
            NEVER)
        .atRest(0, grams);
  }

  /** The next reading: what is poured so far, by the clock that never goes back. */
  public PourWatch seen(long nanos, Mass net) {
    return at(seconds(nanos)).with(seconds(nanos), net.roughGrams());
  }

  private PourWatch with(double at, double grams) {
    StreamLine seen = expected().settledDown(line, at).seen(at, grams, expected()::afterBend);
    return new PourWatch(
            margins,
            origin,
            seen,
            said,
            thin || isThin(seen, at),
            slow,
            stop,
            shown,
            still.and(at, grams, grams - seen.grams(at), seen.flow(), margins.grain()),
            run.and(at, grams),
            due)
        .decided(at)
        .committed(at);
  }

  /** Between two readings, too, the moment comes that was foreseen. */
  private PourWatch at(double moment) {
    double newest = line.newest();
    boolean slows = said.cue() == PourCue.Kind.POUR && line.flow() > LEAST_STREAM;
    double slowAt = slows ? newest + slowIn(newest) : NEVER;
    if (slowAt <= moment) return slowed(slowAt);
    double stopAt = said.cue() == PourCue.Kind.SLOW ? stopAt(newest) : NEVER;
    return stopAt <= moment ? say(PourCue.Kind.STOP, stopAt) : this;
  }

  /** What to say at a moment at or after the newest reading. */
  public PourCue cue(long nanos) {
    double at = seconds(nanos);
    PourWatch now = at(at);
    double toGo = margins.target() - line.grams(at);
    boolean drops = now.said.cue() == PourCue.Kind.DROPS;
    boolean counts = now.said.cue() == PourCue.Kind.SLOW && thin;
    double left = counts ? now.stopAt(line.newest()) - at : NEVER;
    long stopInNanos = left < LONGEST_COUNTDOWN ? Math.round(left * 1e9) : -1;
    return new PourCue(now.said.cue(), toGo, stopInNanos, drops ? now.dropsIn(toGo) : 0);
  }

  /** Whether nothing more is to come: it is near enough, or nobody adds what is still wanted. */
  public boolean isDone() {
    double from = Math.max(said.at(), still.unrisen());
    return said.cue() == PourCue.Kind.HOLD_STILL
        || line.newest() - from >= NOBODY_ADDS
        || line.newest() - still.unrisen() >= NOBODY_WILL;
  }

  /** How long this watch has looked, in nanoseconds. */
  public long sinceBegun(long nanos) {
    return nanos - origin;
  }

  /** What this pour showed of the maker's habits. */
  public PourShown shown() {
    return shown;
  }

  // ---- the rule

  private PourWatch decided(double at) {
    double grams = line.grams(at);
    double toGo = margins.target() - grams;
    boolean streams = line.flow() > LEAST_STREAM;
    return switch (said.cue()) {
      case POUR -> {
        if (toGo < 0) yield say(PourCue.Kind.STOP, at);
        if (streams && slowIn(at) <= 0) yield slowed(at);
        boolean paused = hasRested(at, SHORT_REST) && !margins.isWorthPouringFreely(grams);
        yield paused ? atRest(at, grams) : this;
      }
      case SLOW -> {
        if (stopAt(at) <= at) yield say(PourCue.Kind.STOP, at);
        yield thin && hasRested(at, LONG_REST) ? atRest(at, grams) : this;
      }
      case STOP -> line.start() > said.at() && hasRested(at, SHORT_REST) ? atRest(at, grams) : this;
      case DROPS -> {
        if (streams && toGo < line.flow()) yield say(PourCue.Kind.STOP, at);
        yield toGo < LAST_SHARE * drop() ? say(PourCue.Kind.HOLD_STILL, at) : dropped(at, grams);
      }
      case HOLD_STILL -> {
        if (streams && stopIn(at) <= 0) yield say(PourCue.Kind.STOP, at);
        boolean seenThrough = line.start() > said.at() && hasRested(at, Expected.LAST_DROP);
        yield seenThrough && !margins.isNear(toGo - margins.grain()) ? atRest(at, grams) : this;
      }
    };
  }

  private PourWatch atRest(double at, double grams) {
    PourWatch known = ended(grams);
    double toGo = margins.target() - grams;
    PourCue.Kind cue = margins.isNear(toGo)
        ? PourCue.Kind.HOLD_STILL
        : margins.kind().byDrops() && toGo <= MOST_BY_DROPS
            ? PourCue.Kind.DROPS
            : margins.isWorthPouringFreely(grams) ? PourCue.Kind.POUR : PourCue.Kind.SLOW;
    return known.say(cue, at, line.grams(at), 0, known.expected().fromRest(line, cue, at));
  }

  private double slowIn(double at) {
    double flow = freeFlow();
    double missing = margins.target() - margins.reserve(flow) - freeGrams(at);
    return missing / flow - habits().slow().usual();
  }

  private double freeFlow() {
    return Math.max(LEAST_STREAM, run.flow(habits().free()));
  }

  private double freeGrams(double at) {
    return still.newest() + freeFlow() * (at - line.newest());
  }

  private PourWatch slowed(double at) {
    return say(PourCue.Kind.SLOW, at, freeGrams(at), freeFlow(), line);
  }

  private PourWatch committed(double at) {
    boolean near = said.cue() == PourCue.Kind.SLOW && thin && stopIn(at) < COMMITTED;
    return near && due == NEVER
        ? new PourWatch(
            margins, origin, line, said, thin, slow, stop, shown, still, run, at + stopIn(at))
        : this;
  }

  private double stopAt(double at) {
    return Math.min(due, at + stopIn(at));
  }

  /** Seconds until "stop"; below zero when it should have been said, without end where it cannot be foreseen. */
  private double stopIn(double at) {
    double flow = line.flow();
    if (said.cue() == PourCue.Kind.SLOW && !thin && said.toAStream()) return unslowedIn(at);
    if (flow < LEAST_STREAM) return unseenIn(at);
    boolean sure = margins.isSure(line.doubt(at), flow);
    double missing = margins.aim(flow) - line.grams(at);
    return sure ? missing / flow - habits().stop().usual() : NEVER;
  }

  /** Until the thin stream is seen nothing is said, unless nothing slows down although it should. */
  private double unslowedIn(double at) {
    boolean late = at > said.at() + habits().slow().usual() + LATE;
    return late && line.grams(at) > margins.target() ? 0 : NEVER;
  }

  /** A stream from rest, too short to be seen, goes by the clock: reaction and wrist are the same at both of its ends. */
  private double unseenIn(double at) {
    double streams = (margins.target() - said.grams()) / habits().thin().usual();
    boolean byTheClock = said.cue() == PourCue.Kind.SLOW && said.flow() == 0;
    return byTheClock && streams <= MOST_UNSEEN
        ? said.at() + OPENING + margins.shareOfShort() * streams - at
        : NEVER;
  }

  private int dropsIn(double toGo) {
    return (int) Math.max(1, Math.round((toGo + DROP_OVER) / drop()));
  }

  private boolean hasRested(double at, double seconds) {
    return still.lasted(at, seconds) && margins.isSureAtRest(line.doubt(at));
  }

  private PourWatch say(PourCue.Kind cue, double at) {
    return say(cue, at, line.grams(at), line.flow(), line);
  }

  private PourWatch say(PourCue.Kind cue, double at, double grams, double flow, StreamLine from) {
    boolean sure = thin && margins.isSure(line.doubt(at), flow);
    Said next = new Said(cue, at, grams, flow, sure, dropsIn(margins.target() - grams));
    boolean first = stop.isEmpty();
    return new PourWatch(
        margins,
        origin,
        from,
        next,
        thin && cue != PourCue.Kind.SLOW,
        first && cue == PourCue.Kind.SLOW ? Optional.of(next) : slow,
        first && cue == PourCue.Kind.STOP ? Optional.of(next) : stop,
        shown,
        cue == PourCue.Kind.STOP ? still.anew(at) : still,
        run,
        NEVER);
  }

  private Expected expected() {
    return new Expected(margins, said, thin);
  }

  private boolean isThin(StreamLine seen, double at) {
    if (said.cue() != PourCue.Kind.SLOW) return false;
    if (said.flow() == 0) return seen.flow() > LEAST_STREAM;
    Habit flow = habits().thin();
    double thickest = flow.usual() + 2 * flow.uncertainty();
    return at > said.at() + habits().slow().usual() + PATIENCE
        || seen.flow() < Math.max(said.flow() / 2, thickest);
  }

  // ---- what is learnt

  /** At rest after the first stop, where the pour really ended shows how long "slow" and "stop" took. */
  private PourWatch ended(double grams) {
    return stop.isEmpty() || !shown.isNothing()
        ? this
        : with(margins, PourShown.ofEnd(slow, stop.get(), habits(), grams));
  }

  /** When the drops asked for should have fallen, what they brought shows how heavy they are. */
  private PourWatch dropped(double at, double grams) {
    if (shown.of(Of.DROP).isPresent()) return this;
    return PourShown.ofDrops(said, at, grams)
        .filter(each -> each >= LEAST_DROP_SHARE * drop())
        .map(each -> with(
            margins.knowing(habits().learn(PourShown.NOTHING.with(Of.DROP, each))),
            shown.with(Of.DROP, each)))
        .orElse(this);
  }

  private PourWatch with(Margins other, PourShown more) {
    return new PourWatch(other, origin, line, said, thin, slow, stop, more, still, run, due);
  }

  private Habits habits() {
    return margins.habits();
  }

  private double drop() {
    return habits().drop().usual();
  }

  private double seconds(long nanos) {
    return (nanos - origin) / 1e9;
  }
}
