package candlebench.station.guidance.pour;

import candlebench.station.guidance.pour.TailFit.Prior;
import java.util.function.ToDoubleFunction;

/**
 * The straight course of a stream since its last bend, seen through the dying tail of what came before. Immutable; times in seconds.
 *
 * <p>A scale shows an old weight: its filter, and a wrist that turns slowly, let each bend of the stream die away over up to two
 * seconds, and for so long a plain line through the last readings is wrong. Here the tail is fitted along with the line, for three
 * rates of dying at once, each of which counts by how well it foresaw the readings. One odd reading is left out; a second one on the
 * same side is a bend, and a new run begins.
 */
final class StreamLine {
  /** Scale filters have time constants of 0.1 to 0.8 s; a wrist adds to them. */
  private static final double[] MEMORIES = {0.15, 0.35, 0.7};

  private static final double ODD = 3.5;
  private static final int FEWEST = 4;
  private static final double LEAST_BELIEF = -10;
  private static final double MOST_SURPRISE = 12;

  /** By so many seconds of flow a reading may be off for arriving unevenly, and by half of what it was held up on its way. */
  private static final double UNEVEN_SECONDS = 0.02;

  private static final double HELD_UP_SHARE = 0.5;
  private static final double LONGEST_HOLD_UP = 1;

  private final double noise;
  private final double fading;
  private final Prior prior;
  private final double start;
  private final int count;
  private final TailFit[] fits;
  private final double[] belief;
  private final Arrivals arrivals;
  private final Odd odd;

  /** When readings come: the newest one, the usual time between two, and by how much the newest was held up. */
  private record Arrivals(double newest, double between, double heldUp) {

    /** Readings held up on their way queue behind one another. */
    Arrivals and(double at) {
      double since = at - newest;
      double usual = between == 0
          ? since
          : between + Habit.clamp(since - between, -0.1 * between, 0.1 * between);
      double behind = Habit.clamp(0.9 * heldUp + since - usual, 0, LONGEST_HOLD_UP);
      return new Arrivals(at, usual, behind);
    }
  }

  /** A reading far off the line, not yet believed. */
  private record Odd(boolean is, double at, double grams) {
    static final Odd NONE = new Odd(false, 0, 0);
  }

  private StreamLine(
      double noise,
      double fading,
      Prior prior,
      double start,
      int count,
      TailFit[] fits,
      double[] belief,
      Arrivals arrivals,
      Odd odd) {
    this.noise = noise;
    this.fading = fading;
    this.prior = prior;
    this.start = start;
    this.count = count;
    this.fits = fits;
    this.belief = belief;
    this.arrivals = arrivals;
    this.odd = odd;
  }

  /**
   * A run that begins at a moment.
   *
   * @param fading older readings fade by 1/e over so many seconds
   * @param noise of a single reading, in grams
   */
  static StreamLine begin(double at, Prior known, double fading, double noise) {
    return new StreamLine(
        noise,
        fading,
        known,
        at,
        0,
        fits(known),
        new double[MEMORIES.length],
        new Arrivals(at, 0, 0),
        Odd.NONE);
  }

  /** The same scale, a new run. */
  StreamLine anew(double at, Prior known, double fadingSeconds) {
    return new StreamLine(
        noise, fadingSeconds, known, at, 0, fits(known), belief, arrivals, Odd.NONE);
  }

  private static TailFit[] fits(Prior known) {
    TailFit[] fits = new TailFit[MEMORIES.length];
    for (int i = 0; i < fits.length; i++) fits[i] = TailFit.knowing(known, MEMORIES[i]);
    return fits;
  }

  /** What comes after a bend, given where it is and whether the stream bends up. */
  interface Bend {
    StreamLine after(StreamLine before, double at, double grams, boolean up);
  }

  /** One more reading. */
  StreamLine seen(double at, double grams, Bend bend) {
    return arrived(at).placed(at, grams, bend);
  }

  private StreamLine arrived(double at) {
    return new StreamLine(noise, fading, prior, start, count, fits, belief, arrivals.and(at), odd);
  }

  private StreamLine placed(double at, double grams, Bend bend) {
    if (!isOdd(at, grams)) return withOdd().with(at, grams);
    boolean up = grams > shows(at);
    if (!odd.is() || up != odd.grams() > shows(odd.at()))
      return new StreamLine(
          noise, fading, prior, start, count, fits, belief, arrivals, new Odd(true, at, grams));
    return bend.after(this, odd.at(), odd.grams(), up)
        .with(odd.at(), odd.grams())
        .with(at, grams);
  }

  /** An odd reading that stays alone was noise: it belongs to the run after all. */
  private StreamLine withOdd() {
    return odd.is() ? with(odd.at(), odd.grams()) : this;
  }

  private StreamLine with(double at, double grams) {
    double since = at - start;
    double sigma = sigma();
    double kept = Math.exp(-arrivals.between() / fading);
    TailFit[] more = new TailFit[fits.length];
    double[] believed = new double[fits.length];
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < fits.length; i++) {
      believed[i] = belief[i] + (count < 2 ? 0 : likelihood(fits[i], since, grams, sigma));
      most = Math.max(most, believed[i]);
      more[i] = fits[i].seen(prior, since, grams, sigma, kept);
    }
    for (int i = 0; i < believed.length; i++)
      believed[i] = Math.max(believed[i] - most, LEAST_BELIEF);
    return new StreamLine(
        noise, fading, prior, start, count + 1, more, believed, arrivals, Odd.NONE);
  }

  /** Halved, for the errors of neighbouring readings are alike. */
  private static double likelihood(TailFit fit, double since, double grams, double sigma) {
    double variance = sigma * sigma + fit.showsVariance(since);
    double miss = grams - fit.shows(since);
    return -0.25 * (Math.min(miss * miss / variance, MOST_SURPRISE) + Math.log(variance));
  }

  private boolean isOdd(double at, double grams) {
    if (count < FEWEST) return false;
    double sigma = sigma();
    double variance = sigma * sigma + best().showsVariance(at - start);
    double miss = grams - shows(at);
    return miss * miss > ODD * ODD * variance;
  }

  private double sigma() {
    double unsure = UNEVEN_SECONDS + HELD_UP_SHARE * arrivals.heldUp();
    return Math.hypot(noise, unsure * (count == 0 ? prior.flow() : best().flow));
  }

  private double shows(double at) {
    return best().shows(at - start);
  }

  private TailFit best() {
    int best = 0;
    for (int i = 1; i < belief.length; i++) if (belief[i] > belief[best]) best = i;
    return fits[best];
  }

  private double mean(ToDoubleFunction<TailFit> of) {
    double sum = 0;
    double weight = 0;
    for (int i = 0; i < fits.length; i++) {
      double w = Math.exp(belief[i]);
      weight += w;
      sum += w * of.applyAsDouble(fits[i]);
    }
    return sum / weight;
  }

  double newest() {
    return arrivals.newest();
  }

  double start() {
    return start;
  }

  int count() {
    return count;
  }

  /** Grams a second. */
  double flow() {
    return mean(fit -> fit.flow);
  }

  /** What the scale would show at a moment, had the tail died. */
  double grams(double at) {
    return mean(fit -> fit.straight(at - start));
  }

  /** The standard deviation of {@link #grams}. */
  double doubt(double at) {
    double middle = grams(at);
    return Math.sqrt(mean(fit -> {
      double off = fit.straight(at - start) - middle;
      return fit.straightVariance(at - start) + off * off;
    }));
  }
}
