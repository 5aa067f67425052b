package candlebench.simulator;

import candlebench.shared.Mass;
import candlebench.simulator.Perceived.Told;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A maker who does what the bench says, with the reactions, the wrist and the slips of a person. The same seed pours the same way.
 *
 * <p>Told to pour, the maker pours freely; told to slow, lets a thin stream run; told to stop, turns back; told drops or pieces, adds
 * them one by one and looks again; told to place or lift, handles what was given with {@link #hand}. A stop that can be foreseen is
 * timed, not reacted to. Told nothing, the maker goes on as before.
 */
public final class VirtualMaker implements Hands {
  private static final double RETHINK_SECONDS = 0.2;
  private static final double LOOK_AGAIN_SECONDS = 1.5;
  private static final double RESUME_SECONDS = 1.5;
  private static final double PIECE_LEAST = 2;
  private static final double PIECE_MOST = 20;

  /** Nobody breaks off less than a crumb; an assumption. */
  private static final double CRUMB = 0.1;

  private static final double PIECE_FALL_METRES = 0.05;
  private static final double ANSWER_SECONDS = 1.2;

  private final MakerTraits traits;
  private final Slips slips;
  private final SplittableRandom random;
  private final Reactions reactions;
  private final PouringHand hand;
  private final HandledThings things;
  private PourKind kind = PourKind.OIL_BOTTLE;

  private Told doing = Told.WAIT;
  private double freeFlow;
  private double thinFlow;
  private double timingError;
  private long foreseenStop = Long.MAX_VALUE;
  private long nextPlan;
  private long closedAt;
  private int dropsLeft;
  private long nextAct;
  private long wipesAt = Long.MAX_VALUE;

  /** A maker who starts at a moment with empty hands. */
  public VirtualMaker(MakerTraits traits, Slips slips, long seed, long nanos) {
    this.traits = traits;
    this.slips = slips;
    this.random = new SplittableRandom(seed);
    this.reactions = new Reactions(traits, slips, random.split());
    this.hand = new PouringHand(traits, random.split(), nanos);
    this.things = new HandledThings(traits, slips, random.split());
  }

  /** One maker out of many, by seed. */
  public static VirtualMaker drawn(Slips slips, long seed) {
    return new VirtualMaker(MakerTraits.drawn(new SplittableRandom(seed)), slips, seed, 0);
  }

  /** What is poured from now on. */
  public void takes(PourKind other) {
    kind = other;
  }

  /** Gives the maker a thing to put on the pan when told to place. */
  public void hand(String thing, Mass mass, boolean hot) {
    things.take(thing, mass, hot);
  }

  /** What the maker holds, if anything: to be placed, or lifted off. */
  public Optional<Held> held() {
    return things.held();
  }

  /** Puts aside what the maker holds. */
  public void putAside() {
    things.putAside();
  }

  /** When this maker answers something asked now, by key or tap. */
  public long answersAt(long nanos) {
    double seconds =
        reactions.seconds() + MakerTraits.around(ANSWER_SECONDS * traits.pace(), 0.4, random);
    return nanos + Math.round(seconds * 1e9);
  }

  public MakerTraits traits() {
    return traits;
  }

  /** Whether the maker is ending the stream, or has. */
  public boolean isTurningBack() {
    return hand.isClosing();
  }

  @Override
  public boolean isPouring() {
    return hand.isPouring();
  }

  @Override
  public void advanceTo(long nanos, Perceived perceived, Pan pan) {
    pan.advanceTo(nanos);
    foresee(perceived, nanos);
    reactions.hear(perceived.told(), nanos);
    reactions.due(nanos).ifPresent(told -> begin(told, perceived, nanos, pan));
    if (nanos >= foreseenStop && hand.isPouring()) stop(nanos);
    goOn(perceived, nanos, pan);
    hand.advanceTo(nanos, pan);
    things.advanceTo(nanos, pan);
    if (nanos >= wipesAt) {
      wipesAt = Long.MAX_VALUE;
      pan.wipe();
    }
  }

  /** Plans when to turn back, and plans anew as the foreseen moment changes, until it is too near to change a movement. */
  private void foresee(Perceived perceived, long nanos) {
    if (perceived.stopIn().isEmpty() || hand.isClosing() || nanos < nextPlan) return;
    if (foreseenStop - nanos <= nanos(RETHINK_SECONDS)) return;
    nextPlan = nanos + nanos(RETHINK_SECONDS);
    long planned = nanos + perceived.stopIn().get().toNanos() + nanos(timingError);
    foreseenStop = Math.max(planned, nanos + nanos(RETHINK_SECONDS));
  }

  private void begin(Told told, Perceived perceived, long nanos, Pan pan) {
    if (told.endsPour()) stop(nanos);
    doing = told;
    switch (told) {
      case POUR -> {
        if (hand.isClosing()) drawPour(nanos, pan);
        hand.free(freeFlow, nanos);
      }
      case SLOW -> {
        if (hand.isClosing()) drawPour(nanos, pan);
        hand.thin(thinFlow, nanos);
      }
      case DROPS -> {
        dropsLeft = perceived.drops();
        nextAct = nanos;
      }
      case PIECES -> nextAct = nanos + nanos(pickSeconds());
      case PLACE, LIFT, NOTHING, STOP, HOLD_STILL, OVER, WAIT -> {}
    }
  }

  private void drawPour(long nanos, Pan pan) {
    double free =
        MakerTraits.around(kind.freeMedian * traits.flowFactor(), kind.freeSpread, random);
    freeFlow = Math.max(kind.freeLeast, Math.min(kind.freeMost, free));
    if (happens(traits.slowShare()))
      freeFlow = kind.thinMost + (kind.freeLeast - kind.thinMost) * random.nextDouble();
    thinFlow = kind.thinLeast + (kind.thinMost - kind.thinLeast) * random.nextDouble();
    timingError = traits.timingBias() + traits.timingDeviation() * random.nextGaussian();
    foreseenStop = Long.MAX_VALUE;
    nextPlan = nanos;
    if (happens(slips.spillShare())) {
      pan.spill(PouringHand.grams(0.2 + 2.8 * random.nextDouble()));
      wipesAt = nanos + nanos(5 + 25 * random.nextDouble());
    }
  }

  private void stop(long nanos) {
    if (!hand.isClosing()) closedAt = nanos;
    hand.close(nanos);
    foreseenStop = Long.MAX_VALUE;
  }

  private void goOn(Perceived perceived, long nanos, Pan pan) {
    switch (doing) {
      case DROPS -> dropOn(perceived, nanos, pan);
      case PIECES -> addPiece(perceived, nanos, pan);
      case PLACE -> things.place(nanos);
      case LIFT -> things.lift(nanos, pan);
      case POUR, SLOW -> resume(perceived, nanos, pan);
      case NOTHING, STOP, HOLD_STILL, OVER, WAIT -> {}
    }
  }

  /** Who has turned back too early and is still told to pour does so again. */
  private void resume(Perceived perceived, long nanos, Pan pan) {
    boolean rested = hand.isClosing() && nanos - closedAt > nanos(RESUME_SECONDS);
    if (rested && perceived.told() == doing) begin(doing, perceived, nanos, pan);
  }

  /** Lets the drops fall that were asked for, waits until the number has come to rest, and looks again. */
  private void dropOn(Perceived perceived, long nanos, Pan pan) {
    if (nanos < nextAct) return;
    if (dropsLeft == 0) {
      if (perceived.told() != Told.DROPS || perceived.drops() <= 0) return;
      dropsLeft = perceived.drops();
    }
    hand.drop(pan);
    dropsLeft--;
    double pause = dropsLeft == 0
        ? LOOK_AGAIN_SECONDS
        : MakerTraits.around(1 / traits.dropsPerSecond(), 0.15, random);
    nextAct = nanos + nanos(pause);
  }

  /** Picks a piece that does not look like too much, and drops it. */
  private void addPiece(Perceived perceived, long nanos, Pan pan) {
    if (nanos < nextAct || perceived.told() != Told.PIECES) return;
    nextAct = nanos + nanos(pickSeconds());
    double most = Math.min(PIECE_MOST, perceived.toGo().orElse(PIECE_MOST));
    if (most < CRUMB) return;
    double least = Math.min(PIECE_LEAST, most);
    pan.drop(PouringHand.grams(least + (most - least) * random.nextDouble()), PIECE_FALL_METRES);
  }

  private double pickSeconds() {
    return MakerTraits.around(2 * traits.pace(), 0.3, random);
  }

  private boolean happens(double share) {
    return share > 0 && random.nextDouble() < share;
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
