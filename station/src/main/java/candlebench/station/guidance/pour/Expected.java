package candlebench.station.guidance.pour;

import candlebench.station.guidance.pour.TailFit.Prior;

/**
 * What to expect of the line through the readings after each cue and each bend, before the readings tell.
 *
 * @param thin whether the thin stream is seen already
 */
record Expected(Margins margins, Said said, boolean thin) {
  static final double REST_FADING = 3;
  private static final double FREE_FADING = 0.9;
  private static final double THIN_FADING = 1.5;
  private static final double DROP_FADING = 1.2;

  /** Drops at their usual 1.3 a second (drop counts of dropper bottles: 1 to 4 a second; common practice, no source). */
  static final double DROPS_A_SECOND = 1.3;

  private static final double DRIP_SPREAD = 0.4;

  /** The tail of a bend: so many seconds of the stream before it at most, and so many grams of the first one. */
  private static final double TAIL_SECONDS = 0.7;

  private static final double FIRST_TAIL = 6;

  /** By how much a free stream may change at a bend, in grams a second. */
  private static final double WAVER = 4;

  /** So long after "hold still" the last drops are in, in seconds. */
  static final double LAST_DROP = 0.8;

  StreamLine fromRest(StreamLine line, PourCue.Kind cue, double at) {
    double grams = line.grams(at);
    double sure = Math.max(0.03, line.doubt(at));
    double step = margins.step();
    double drip = habits().drop().usual() * DROPS_A_SECOND;
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

  StreamLine afterBend(StreamLine before, double at, double grams, boolean up) {
    return switch (said.cue()) {
      case POUR -> wavering(before, at);
      case SLOW -> {
        if (said.toAStream() && !thin) yield up ? wavering(before, at) : slowed(before, at);
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
    boolean unseen = said.flow() < PourWatch.LEAST_STREAM;
    double flow = unseen ? habits().thin().usual() : said.flow();
    Habit delay = habits().stop();
    Prior end = new Prior(
        said.grams() + (unseen ? 0 : flow * delay.usual()),
        margins.grain() + 3 * flow * (unseen ? 1 : delay.uncertainty()),
        0,
        0.02,
        margins.grain() + TAIL_SECONDS * flow);
    return before.anew(at, end, REST_FADING);
  }

  private StreamLine resting(StreamLine before, double at) {
    double step = margins.step();
    return before.anew(at, new Prior(before.grams(at), step, 0, 0.02, step), REST_FADING);
  }

  /** Once "stop" must have taken effect, or the last drops must be in, the line begins anew. */
  StreamLine settledDown(StreamLine seen, double at) {
    if (seen.start() > said.at()) return seen;
    return switch (said.cue()) {
      case STOP -> at > said.at() + habits().stop().usual() + 0.25 ? ending(seen, at) : seen;
      case HOLD_STILL -> at > said.at() + LAST_DROP ? resting(seen, at) : seen;
      case POUR, SLOW, DROPS -> seen;
    };
  }

  private Habits habits() {
    return margins.habits();
  }
}
