package candlebench.simulator;

import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * A maker with nothing but the number on the scale: pours freely, slows some seconds of flow early, stops some grams short, waits until
 * the number stands still, and tops up by drops with a look at the number after every few. The same hands as {@link VirtualMaker},
 * told nothing: what a station is to be compared with. How carefully people do this is in no source found; the two habits are therefore
 * settings, so that a comparison can take the most favourable ones.
 */
public final class NumberWatcher implements Hands {
  private static final double READ_SECONDS = 0.15;
  private static final double TREND_SECONDS = 0.8;
  private static final double STILL_SECONDS = 1.5;
  private static final double SHARE_DARED = 0.7;

  private enum Stage {
    FREE,
    THIN,
    RESTING,
    DROPPING,
    DONE
  }

  /**
   * How careful this maker is.
   *
   * @param slowsEarly seconds of flow before the end at which the stream is turned down
   * @param stopsShort grams before the target at which it is stopped
   * @param content grams short of the target at which the maker is content
   * @param flicker a change of the number, in grams, that the maker still calls standing
   */
  public record Habits(double slowsEarly, double stopsShort, double content, double flicker) {}

  private final Habits habits;
  private final Reactions reactions;
  private final PouringHand hand;
  private final MakerTraits traits;
  private final SplittableRandom random;
  private final double thinFlow;
  private final double freeFlow;

  private Stage stage = Stage.FREE;
  private boolean opened;
  private long decidesAt = Long.MAX_VALUE;
  private long nextRead;
  private double readToGo = Double.NaN;
  private long readAt;
  private double trend;
  private double standing = Double.NaN;
  private long stillSince;
  private int dropsLeft;
  private long nextDrop;

  public NumberWatcher(MakerTraits traits, Habits habits, PourKind kind, long seed, long nanos) {
    this.traits = traits;
    this.habits = habits;
    this.random = new SplittableRandom(seed);
    this.reactions = new Reactions(traits, Slips.none(), random.split());
    this.hand = new PouringHand(traits, random.split(), nanos);
    double free =
        MakerTraits.around(kind.freeMedian * traits.flowFactor(), kind.freeSpread, random);
    this.freeFlow = Math.max(kind.freeLeast, Math.min(kind.freeMost, free));
    this.thinFlow = kind.thinLeast + (kind.thinMost - kind.thinLeast) * random.nextDouble();
  }

  /** Whether the maker is content with the number, or has gone past it. */
  public boolean isDone() {
    return stage == Stage.DONE;
  }

  @Override
  public boolean isPouring() {
    return hand.isPouring();
  }

  @Override
  public void advanceTo(long nanos, Perceived perceived, Pan pan) {
    pan.advanceTo(nanos);
    if (!opened && perceived.toGo().isPresent()) {
      opened = true;
      hand.free(freeFlow, nanos);
    }
    if (nanos >= nextRead) read(perceived.toGo(), nanos);
    if (!Double.isNaN(readToGo)) act(nanos, pan);
    hand.advanceTo(nanos, pan);
  }

  /** Reads the number a few times a second, and notices how fast it runs and since when it stands. */
  private void read(OptionalDouble toGo, long nanos) {
    nextRead = nanos + nanos(READ_SECONDS);
    if (toGo.isEmpty()) return;
    double now = toGo.getAsDouble();
    if (!(Math.abs(now - standing) <= habits.flicker())) {
      standing = now;
      stillSince = nanos;
    }
    if (!Double.isNaN(readToGo)) {
      double rate = (readToGo - now) / ((nanos - readAt) / 1e9);
      trend += (rate - trend) * Math.min(1, READ_SECONDS / TREND_SECONDS);
    }
    readToGo = now;
    readAt = nanos;
  }

  private void act(long nanos, Pan pan) {
    switch (stage) {
      case FREE -> {
        if (decided(readToGo <= habits.stopsShort() + habits.slowsEarly() * trend, nanos)) {
          hand.thin(thinFlow, nanos);
          stage = Stage.THIN;
        }
      }
      case THIN -> {
        if (decided(readToGo <= habits.stopsShort(), nanos)) {
          hand.close(nanos);
          stage = Stage.RESTING;
          stillSince = nanos;
        }
      }
      case RESTING -> {
        if (!hand.isPouring() && nanos - stillSince >= nanos(STILL_SECONDS)) judge(nanos);
      }
      case DROPPING -> dropOn(nanos, pan);
      case DONE -> {}
    }
  }

  /** The number is met with a reaction, like any sign. */
  private boolean decided(boolean seen, long nanos) {
    if (decidesAt == Long.MAX_VALUE && seen) decidesAt = nanos + nanos(reactions.seconds());
    if (nanos < decidesAt) return false;
    decidesAt = Long.MAX_VALUE;
    return true;
  }

  private void judge(long nanos) {
    if (readToGo <= habits.content()) {
      stage = Stage.DONE;
      return;
    }
    dropsLeft = Math.max(1, (int) (readToGo * SHARE_DARED / traits.dropGrams()));
    nextDrop = nanos + nanos(reactions.seconds());
    stage = Stage.DROPPING;
  }

  private void dropOn(long nanos, Pan pan) {
    if (nanos < nextDrop) return;
    hand.drop(pan);
    nextDrop = nanos + nanos(MakerTraits.around(1 / traits.dropsPerSecond(), 0.15, random));
    if (--dropsLeft > 0 && readToGo > habits.content()) return;
    stage = Stage.RESTING;
    stillSince = nanos;
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
