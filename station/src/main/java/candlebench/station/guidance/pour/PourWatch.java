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
 * usually needs, leaves a reserve for the thin stream. "Stop" is said when the line through the thin stream, and what it still
 * brings, reach the aim; until the thin stream is seen, a plan stands for it. At rest the rest goes by drops, or in a short thin
 * stream where it is too much for drops. Near enough is "hold still". What a late hand costs decides every margin: short is a drop
 * more, over is a spoilt pot.
 */
public final class PourWatch {
  private static final double FREE_FADING = 0.9;
  private static final double THIN_FADING = 1.5;
  private static final double REST_FADING = 3;
  private static final double DROP_FADING = 1.2;

  /** Less than this is no stream but drops, creep and noise, in grams a second. */
  private static final double LEAST_STREAM = 0.15;

  /** Drops at their usual 1.3 a second (drop counts of dropper bottles: 1 to 4 a second; common practice, no source). */
  private static final double DROPS_A_SECOND = 1.3;

  private static final double DRIP_SPREAD = 0.4;

  /** The display turns to a number half a step early: so many grams more are wanted of drops that come from below. */
  private static final double DROP_OVER = 0.02;

  private static final double LAST_SHARE = 0.2;

  /** More than this is too much to go by drops: half a minute of them. */
  private static final double MOST_BY_DROPS = 1.2;

  /** So much at most is poured by the clock alone, in a stream too short to be seen. */
  private static final double MOST_UNSEEN = 3;

  /** A short stream can bring three times what was planned: it opens quickly, closes slowly, and is thicker than usual. */
  private static final double UNSEEN_SHARE = 1 / 3.0;

  /** The tail of a bend: so many seconds of the stream before it at most, and so many grams of the first one. */
  private static final double TAIL_SECONDS = 0.7;

  private static final double FIRST_TAIL = 6;

  /** By how much a free stream may change at a bend, in grams a second. */
  private static final double WAVER = 4;

  /** So long after "slow" has usually taken effect, what is seen counts, whatever was planned. */
  private static final double PATIENCE = 1;

  /** While the line is not sure, "stop" stays so far away, in seconds. */
  private static final double UNSURE_WAIT = 0.3;

  private static final double LONGEST_COUNTDOWN = 10;

  /** Who has added nothing for so long will not. The lightest drops move a display by 0.1 g in about this time. */
  private static final double NOBODY_ADDS = 5;

  private static final double SHORT_REST = 0.5;
  private static final double LONG_REST = 1;
  private static final double LAST_DROP = 0.8;

  private final Margins margins;
  private final long origin;
  private final StreamLine line;
  private final Said said;
  private final boolean thin;
  private final Optional<Said> slow;
  private final Optional<Said> stop;
  private final PourShown shown;
  private final Still still;

  /** The cue that stands: since when, and what the line was then; {@code sure} whether the line could be trusted. */
  private record Said(
      PourCue.Kind cue, double at, double grams, double flow, boolean sure, int drops) {}

  /** Since when the readings stand still, since when they have not risen, the newest and the highest of them. */
  private record Still(double since, double unrisen, double newest, double highest) {

    static Still at(double at, double grams) {
      return new Still(at, at, grams, grams);
    }

    Still and(double at, double grams, double offLine, double flow, double grain) {
      boolean moves = Math.abs(flow) > LEAST_STREAM
          || Math.abs(offLine) > 1.6 * grain
          || Math.abs(grams - newest) > 1.1 * grain;
      boolean rises = grams > highest + grain / 2;
      return new Still(
          moves ? at : since, moves || rises ? at : unrisen, grams, Math.max(highest, grams));
    }

    boolean lasted(double at, double seconds) {
      return at - since >= seconds;
    }
  }

  private PourWatch(
      Margins margins,
      long origin,
      StreamLine line,
      Said said,
      boolean thin,
      Optional<Said> slow,
      Optional<Said> stop,
      PourShown shown,
      Still still) {
    this.margins = margins;
    this.origin = origin;
    this.line = line;
    this.said = said;
    this.thin = thin;
    this.slow = slow;
    this.stop = stop;
    this.shown = shown;
    this.still = still;
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
    StreamLine line = StreamLine.begin(0, prior, REST_FADING, margins.noise());
    return new PourWatch(
            margins,
            nanos,
            line,
            new Said(PourCue.Kind.HOLD_STILL, 0, grams, 0, false, 0),
            false,
            Optional.empty(),
            Optional.empty(),
            PourShown.NOTHING,
            Still.at(0, grams))
        .atRest(0, grams);
  }

  /** The next reading: what is poured so far, by the clock that never goes back. */
  public PourWatch seen(long nanos, Mass net) {
    double at = seconds(nanos);
    double grams = net.roughGrams();
    StreamLine seen = settledDown(line, at).seen(at, grams, this::afterBend);
    return new PourWatch(
            margins,
            origin,
            seen,
            said,
            thin || isThin(seen, at),
            slow,
            stop,
            shown,
            still.and(at, grams, grams - seen.grams(at), seen.flow(), margins.grain()))
        .decided(at);
  }

  /** What to say at a moment at or after the newest reading. */
  public PourCue cue(long nanos) {
    double toGo = margins.target() - line.grams(seconds(nanos));
    int drops = said.cue() == PourCue.Kind.DROPS ? dropsIn(toGo) : 0;
    double left = said.cue() == PourCue.Kind.SLOW && thin
        ? stopIn(line.newest()) - (seconds(nanos) - line.newest())
        : -1;
    boolean foreseen = left > 0 && left < LONGEST_COUNTDOWN;
    return new PourCue(said.cue(), toGo, foreseen ? Math.round(left * 1e9) : -1, drops);
  }

  /** Whether nothing more is to come: it is near enough, or nobody adds what is still wanted. */
  public boolean isDone() {
    double from = Math.max(said.at(), still.unrisen());
    return said.cue() == PourCue.Kind.HOLD_STILL || line.newest() - from >= NOBODY_ADDS;
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
        if (streams && slowIn(at) <= 0) yield say(PourCue.Kind.SLOW, at);
        boolean paused = hasRested(at, SHORT_REST) && !margins.isWorthPouringFreely(grams);
        yield paused ? atRest(at, grams) : this;
      }
      case SLOW -> {
        if (stopIn(at) <= 0) yield say(PourCue.Kind.STOP, at);
        yield thin && hasRested(at, LONG_REST) ? atRest(at, grams) : this;
      }
      case STOP -> line.start() > said.at() && hasRested(at, SHORT_REST) ? atRest(at, grams) : this;
      case DROPS -> {
        if (streams && toGo < line.flow()) yield say(PourCue.Kind.STOP, at);
        yield toGo < LAST_SHARE * drop() ? say(PourCue.Kind.HOLD_STILL, at) : dropped(at, grams);
      }
      case HOLD_STILL -> {
        if (streams && stopIn(at) <= 0) yield say(PourCue.Kind.STOP, at);
        boolean seenThrough = line.start() > said.at() && hasRested(at, LAST_DROP);
        yield seenThrough && !margins.isNear(toGo - margins.grain()) ? atRest(at, grams) : this;
      }
    };
  }

  private PourWatch atRest(double at, double grams) {
    PourWatch known = ended(at, grams);
    double toGo = margins.target() - grams;
    if (margins.isNear(toGo)) return known.say(PourCue.Kind.HOLD_STILL, at);
    if (margins.kind().byDrops() && toGo <= MOST_BY_DROPS) return known.say(PourCue.Kind.DROPS, at);
    return known.say(
        margins.isWorthPouringFreely(grams) ? PourCue.Kind.POUR : PourCue.Kind.SLOW, at);
  }

  private double slowIn(double at) {
    double flow = line.flow();
    double missing = margins.target() - margins.reserve(flow) - line.grams(at);
    return missing / flow - habits().slow().usual();
  }

  /** Seconds until "stop"; below zero when it should have been said. */
  private double stopIn(double at) {
    double flow = line.flow();
    boolean seen = thin || said.cue() != PourCue.Kind.SLOW;
    if (!seen && said.flow() > 0) return plannedLeft(at);
    if (flow < LEAST_STREAM) return unseenLeft(at);
    double left = (margins.aim(flow) - line.grams(at)) / flow - habits().stop().usual();
    return margins.isSure(line.doubt(at), flow) ? left : Math.max(left, UNSURE_WAIT);
  }

  /** The thin stream as it was planned, until it is seen; should nothing slow down, the target itself. */
  private double plannedLeft(double at) {
    double flow = habits().thin().usual();
    double delay = habits().slow().usual();
    double since = at - said.at() - delay;
    if (since > UNSURE_WAIT && line.grams(at) > margins.target()) return 0;
    double planned = said.grams() + said.flow() * delay + flow * since;
    double left = (margins.aim(flow) - planned) / flow - habits().stop().usual();
    return Math.max(left, UNSURE_WAIT);
  }

  /** A stream from rest, too short to be seen, goes by the clock: reaction and wrist are the same at both of its ends. */
  private double unseenLeft(double at) {
    double toGo = margins.target() - said.grams();
    boolean byTheClock = said.cue() == PourCue.Kind.SLOW && said.flow() == 0;
    return byTheClock && toGo <= MOST_UNSEEN
        ? said.at() + UNSEEN_SHARE * toGo / habits().thin().usual() - at
        : Double.MAX_VALUE;
  }

  private int dropsIn(double toGo) {
    return (int) Math.max(1, Math.round((toGo + DROP_OVER) / drop()));
  }

  private boolean hasRested(double at, double seconds) {
    return still.lasted(at, seconds) && margins.isSureAtRest(line.doubt(at));
  }

  private PourWatch say(PourCue.Kind cue, double at) {
    double grams = line.grams(at);
    boolean rests = cue == PourCue.Kind.DROPS || still.lasted(at, SHORT_REST);
    double flow = rests ? 0 : line.flow();
    boolean sure = thin && margins.isSure(line.doubt(at), flow);
    Said next = new Said(cue, at, grams, flow, sure, dropsIn(margins.target() - grams));
    boolean first = stop.isEmpty();
    return new PourWatch(
        margins,
        origin,
        rests ? fromRest(cue, at) : line,
        next,
        thin && cue != PourCue.Kind.SLOW,
        first && cue == PourCue.Kind.SLOW ? Optional.of(next) : slow,
        first && cue == PourCue.Kind.STOP ? Optional.of(next) : stop,
        shown,
        rests ? still : Still.at(at, still.newest()));
  }

  // ---- what to expect of the line

  private StreamLine fromRest(PourCue.Kind cue, double at) {
    double grams = line.grams(at);
    double sure = Math.max(0.03, line.doubt(at));
    double step = margins.step();
    double drip = drop() * DROPS_A_SECOND;
    Habit free = habits().free();
    return switch (cue) {
      case POUR ->
        line.anew(
            at, new Prior(grams, step, free.usual(), free.uncertainty(), FIRST_TAIL), FREE_FADING);
      case SLOW -> line.anew(at, new Prior(grams, step, 0, 0.02, step), REST_FADING);
      case DROPS ->
        line.anew(at, new Prior(grams, sure, drip, DRIP_SPREAD * drip, step / 3), DROP_FADING);
      case STOP, HOLD_STILL -> line;
    };
  }

  private StreamLine afterBend(StreamLine before, double at, double grams, boolean up) {
    return switch (said.cue()) {
      case POUR -> wavering(before, at);
      case SLOW -> {
        if (said.flow() > 0 && !thin) yield up ? wavering(before, at) : slowed(before, at);
        Habit flow = habits().thin();
        yield before.anew(
            at, new Prior(grams, 1, flow.usual(), flow.uncertainty(), 1), THIN_FADING);
      }
      case STOP -> ending(before, at);
      case DROPS, HOLD_STILL -> resting(before, at);
    };
  }

  /** A free stream goes on, a little more or less of it. */
  private static StreamLine wavering(StreamLine before, double at) {
    double flow = before.flow();
    double sure = 0.3 + 0.1 * Math.abs(flow);
    return before.anew(at, new Prior(before.grams(at), sure, flow, WAVER, 1), FREE_FADING);
  }

  /** The thin stream after a free one, as it was planned. */
  private StreamLine slowed(StreamLine before, double at) {
    Habit flow = habits().thin();
    Habit delay = habits().slow();
    double since = at - said.at() - delay.usual();
    Prior planned = new Prior(
        said.grams() + said.flow() * delay.usual() + flow.usual() * since,
        margins.step() + said.flow() * delay.uncertainty(),
        flow.usual(),
        flow.uncertainty(),
        TAIL_SECONDS * said.flow());
    return before.anew(at, planned, THIN_FADING);
  }

  /** After "stop" no stream is looked for any more, only where it ends. */
  private StreamLine ending(StreamLine before, double at) {
    double flow = Math.max(0, said.flow());
    Habit delay = habits().stop();
    Prior end = new Prior(
        said.grams() + flow * delay.usual(),
        margins.step() + 1.5 * flow * delay.uncertainty(),
        0,
        0.02,
        margins.step() + TAIL_SECONDS * flow);
    return before.anew(at, end, REST_FADING);
  }

  private StreamLine resting(StreamLine before, double at) {
    double step = margins.step();
    return before.anew(at, new Prior(before.grams(at), step, 0, 0.02, step), REST_FADING);
  }

  /** Once "stop" must have taken effect, or the last drops must be in, the line begins anew. */
  private StreamLine settledDown(StreamLine seen, double at) {
    if (seen.start() > said.at()) return seen;
    return switch (said.cue()) {
      case STOP -> at > said.at() + habits().stop().usual() + 0.25 ? ending(seen, at) : seen;
      case HOLD_STILL -> at > said.at() + LAST_DROP ? resting(seen, at) : seen;
      case POUR, SLOW, DROPS -> seen;
    };
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
  private PourWatch ended(double at, double grams) {
    if (stop.isEmpty() || !shown.isNothing()) return this;
    Said stopped = stop.get();
    PourShown all = PourShown.NOTHING;
    double thinFlow = habits().thin().usual();
    if (stopped.sure() && stopped.flow() > LEAST_STREAM) {
      thinFlow = stopped.flow();
      all = all.with(Of.THIN, thinFlow).with(Of.STOP, (grams - stopped.grams()) / thinFlow);
    }
    if (slow.isPresent() && slow.get().flow() > 2 * thinFlow) {
      Said slowed = slow.get();
      double byThin = thinFlow * (stopped.at() - slowed.at() + habits().stop().usual());
      double seconds = (grams - slowed.grams() - byThin) / (slowed.flow() - thinFlow);
      all = all.with(Of.FREE, slowed.flow()).with(Of.SLOW, seconds);
    }
    return with(margins, all);
  }

  /** When the drops asked for should have fallen, what they brought shows how heavy they are. */
  private PourWatch dropped(double at, double grams) {
    if (shown.of(Of.DROP).isPresent() || said.drops() < 6) return this;
    if (at < said.at() + said.drops() / DROPS_A_SECOND + 0.9) return this;
    double each = Math.max(0, grams - said.grams()) / said.drops();
    if (each < 0.3 * drop()) return this;
    Habits wiser = habits().learn(PourShown.NOTHING.with(Of.DROP, each));
    return with(
        new Margins(
            margins.kind(),
            margins.target(),
            margins.under(),
            margins.over(),
            margins.step(),
            wiser),
        shown.with(Of.DROP, each));
  }

  private PourWatch with(Margins other, PourShown more) {
    return new PourWatch(other, origin, line, said, thin, slow, stop, more, still);
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
