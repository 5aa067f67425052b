package candlebench.station;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.simulator.Held;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.PourKind;
import candlebench.simulator.ScaleKey;
import candlebench.simulator.VirtualMaker;
import candlebench.station.guidance.Cue;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import candlebench.station.guidance.Trust;
import candlebench.station.guidance.Words;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * Does what the page says, with a virtual maker's hands: puts down and lifts off what is asked for, pours by the cue, presses a key
 * only where a way must be chosen.
 */
public final class FollowingMaker {
  private static final String POT = "pot";
  private static final Set<String> ZEROED =
      Set.of("detail.maybe-zeroed", "detail.there-already", "detail.restarted", "detail.prepare");
  private static final Mass SLAB = Mass.ofGrams("60");
  private static final long HANDS_NANOS = 4_000_000_000L;
  private static final long PAGE_NANOS = 60_000_000L;

  private final VirtualBench bench;
  private final VirtualMaker maker;
  private final SplittableRandom random;
  private final Mass pot;
  private Optional<Held> potAside;
  private Prompt seen;
  private long nextLook;
  private long answersAt = Long.MAX_VALUE;
  private int vessel = -1;
  private String vesselName = "";
  private int keys;
  private long nextSpoon;
  private boolean othersHands;
  private long unseenSince = Long.MAX_VALUE;
  private long heldSince = Long.MAX_VALUE;
  private int asks;
  private long zeroTroubleSince = Long.MAX_VALUE;
  private long belowSince = Long.MAX_VALUE;
  private long switchOnAt = Long.MAX_VALUE;

  public FollowingMaker(VirtualBench bench, VirtualMaker maker, Mass pot, long seed) {
    this.bench = bench;
    this.maker = maker;
    this.pot = pot;
    this.potAside = Optional.of(new Held(POT, pot, false));
    this.random = new SplittableRandom(seed);
    this.seen = bench.prompt();
  }

  /** How many keys were pressed. */
  public int keys() {
    return keys;
  }

  /** Whether somebody else has the pot or vessel in their hands, so that this maker waits. */
  void handsBusy(boolean busy) {
    othersHands = busy;
  }

  boolean hasFreeHands() {
    return maker.held().isEmpty() && !maker.isPouring();
  }

  void switchOn() {
    if (!bench.scale.isOn()) bench.press(ScaleKey.ON_OFF);
  }

  /** Works at the bench up to a moment. */
  public void advanceTo(long nanos) {
    if (nanos >= nextLook) {
      nextLook = nanos + PAGE_NANOS;
      Prompt before = seen;
      seen = bench.prompt();
      if (seen.step() == Prompt.Kind.ASK && before.step() != Prompt.Kind.ASK) asks++;
      if (maker.held().isEmpty()) heldSince = Long.MAX_VALUE;
      answer(nanos);
      mendZero(nanos);
    }
    lookAtScale();
    maker.advanceTo(nanos, perceived(), bench.pan);
  }

  private Perceived perceived() {
    if (maker.held().filter(held -> held.thing().equals("spoon")).isPresent()) maker.putAside();
    if (othersHands) return Perceived.told(Told.WAIT);
    if (isBelowForLong() && pan().receiver().isPresent() && maker.held().isEmpty())
      return Perceived.told(Told.LIFT);
    return switch (seen.step()) {
      case IDLE, DONE, MIX -> Perceived.told(Told.WAIT);
      case PREPARE, PLACE_POT, RETURN_POT -> potOn();
      case MELT -> potOff();
      case PLACE_CUP, TIP_CUP -> throw new AssertionError("this maker has no cup");
      case PLACE_BOTTLE -> throw new AssertionError("this maker has no bottle with a tap");
      case PLACE_VESSEL -> vesselOn();
      case LIFT_VESSEL -> vesselOff();
      case ADD_PART, ADD_MORE, FILL_VESSEL -> byCue();
      case SPLIT_OFF -> takeOut();
      case AWAY -> back();
      case OVER -> over();
      case ASK -> ask();
    };
  }

  private Pan pan() {
    return bench.pan;
  }

  private Perceived potOn() {
    if (pan().holds(POT))
      return Perceived.told(unseen() || isToBeCleared() ? Told.LIFT : Told.WAIT);
    if (maker.held().isEmpty()) {
      Held thing = potAside.orElse(new Held(POT, pot, false));
      maker.hand(thing.thing(), thing.mass(), thing.hot());
    }
    return put();
  }

  /** The page says that the scale reads below zero, and to mend that with nothing on it. */
  private boolean isBelowForLong() {
    return belowSince != Long.MAX_VALUE && bench.nanos() - belowSince > 3 * HANDS_NANOS;
  }

  /** Something stands there and the scale shows nothing, as if it were zeroed: for so long that a maker notices. */
  private boolean unseen() {
    boolean told = seen.detail().filter(words -> ZEROED.contains(words.key())).isPresent();
    return told
        && seen.countIn().isEmpty()
        && !seen.now().key().equals("now.checking")
        && unseenSince != Long.MAX_VALUE
        && bench.nanos() - unseenSince > 6_000_000_000L;
  }

  private boolean isToBeCleared() {
    return seen.detail()
        .filter(words -> words.key().equals("detail.clear-scale"))
        .isPresent();
  }

  private void lookAtScale() {
    boolean shows = bench
        .scale
        .display()
        .filter(shown -> shown.mass(MassUnit.GRAM).abs().isMoreThan(Mass.ofGrams("45")))
        .isPresent();
    boolean taken = shows && !isTakenForEmpty();
    if (taken || pan().receiver().isEmpty()) unseenSince = Long.MAX_VALUE;
    else if (unseenSince == Long.MAX_VALUE) unseenSince = bench.nanos();
  }

  /** The page says how to go on if the scale shows too little of what stands there. */
  private boolean isTakenForEmpty() {
    return seen.step() == Prompt.Kind.AWAY
        && seen.detail()
            .filter(words -> words.key().equals("detail.maybe-zeroed"))
            .isPresent();
  }

  /** Puts down what was held for two seconds at least, once the scale shows a number and is not told to be cleared. */
  private Perceived put() {
    if (heldSince == Long.MAX_VALUE) heldSince = bench.nanos();
    boolean wait = bench.nanos() - heldSince < 2_500_000_000L
        || seen.trouble().isPresent()
        || seen.now().key().startsWith("now.lift")
        || seen.now().key().equals("now.keep-off");
    return Perceived.told(wait ? Told.WAIT : Told.PLACE);
  }

  private Perceived potOff() {
    if (pan().holds(POT)) return Perceived.told(Told.LIFT);
    maker.held().ifPresent(held -> {
      potAside = Optional.of(held);
      maker.putAside();
    });
    return Perceived.told(Told.WAIT);
  }

  private Perceived vesselOn() {
    if (pan().holds(POT)) return Perceived.told(Told.LIFT);
    maker.held().filter(held -> held.thing().equals(POT)).ifPresent(held -> {
      potAside = Optional.of(held);
      maker.putAside();
    });
    if (pan().receiver().isPresent())
      return Perceived.told(unseen() || isToBeCleared() ? Told.LIFT : Told.WAIT);
    if (maker.held().isEmpty()) {
      vesselName = "vessel " + ++vessel;
      maker.hand(vesselName, Mass.ofGrams(Integer.toString(150 + random.nextInt(60))), false);
    }
    return put();
  }

  private Perceived vesselOff() {
    if (pan().holds(vesselName)) return Perceived.told(Told.LIFT);
    if (maker.held().isPresent()) maker.putAside();
    return Perceived.told(Told.WAIT);
  }

  private Perceived back() {
    if (maker.held().isPresent()) return put();
    boolean lift = seen.now().key().startsWith("now.lift") || unseen();
    return Perceived.told(lift && pan().receiver().isPresent() ? Told.LIFT : Told.WAIT);
  }

  /** At the first asking the maker lifts it off and puts it back; only then is what stands there counted. */
  private Perceived ask() {
    if (maker.held().isPresent()) return put();
    return Perceived.told(liftsFirst() && pan().receiver().isPresent() ? Told.LIFT : Told.WAIT);
  }

  /** What the bench says is there is not counted while it cannot be true: this maker knows about what was poured. */
  private boolean liftsFirst() {
    boolean about = seen.detail()
        .map(words -> words.with().get("found"))
        .filter(Words.Amount.class::isInstance)
        .map(term -> ((Words.Amount) term).mass().minus(standing()).abs())
        .filter(off -> off.isLessThan(Mass.ofGrams("3")))
        .isPresent();
    return asks % 2 == 1 || !about;
  }

  /** What was left is about there, and what was found is not. */
  private boolean laySomethingBeside() {
    boolean choice = seen.choices().stream().anyMatch(way -> way.id().equals("was-beside"));
    return choice && off("left").isLessThan(off("found"));
  }

  private Mass off(String said) {
    Words.Amount amount = (Words.Amount) seen.detail().orElseThrow().with().get(said);
    return amount.mass().minus(standing()).abs();
  }

  private Mass standing() {
    return pan().truth().minus(pan().spilt()).minus(pan().of("spoon"));
  }

  private Perceived byCue() {
    maker.takes(
        seen.step() == Prompt.Kind.FILL_VESSEL ? PourKind.WAX_PITCHER : PourKind.OIL_BOTTLE);
    if (seen.cue() == Cue.PIECES) slab();
    Perceived cued = cued(seen.cue());
    return seen.weighing()
        .flatMap(weighing -> weighing.net().map(weighing.target()::minus))
        .map(toGo -> cued.withToGo(toGo.roughGrams()))
        .orElse(cued);
  }

  /** Far from the target a slab goes in, four fifths of what is missing; the rest piece by piece. */
  private void slab() {
    seen.weighing()
        .filter(weighing -> weighing.trust() == Trust.LIVE)
        .flatMap(weighing -> weighing.net().map(weighing.target()::minus))
        .filter(toGo -> toGo.isMoreThan(SLAB) && bench.nanos() >= nextSpoon)
        .ifPresent(toGo -> {
          nextSpoon = bench.nanos() + HANDS_NANOS;
          pan().drop(toGo.times(4, 5), 0.02);
        });
  }

  private Perceived cued(Cue cue) {
    return switch (cue) {
      case NONE, WAITING -> Perceived.told(Told.WAIT);
      case POUR -> stream(Told.POUR);
      case SLOW -> stream(Told.SLOW);
      case STOP -> Perceived.told(Told.STOP);
      case DROPS -> Perceived.drops(seen.drops().orElse(1));
      case PIECES -> Perceived.told(Told.PIECES);
      case HOLD_STILL -> Perceived.told(Told.HOLD_STILL);
      case OVER -> Perceived.told(Told.OVER);
    };
  }

  private Perceived stream(Told told) {
    return seen.stopInNanos()
        .map(nanos -> Perceived.stopIn(told, Duration.ofNanos(nanos)))
        .orElse(Perceived.told(told));
  }

  /** With a ladle, in one go. */
  private Perceived takeOut() {
    seen.weighing()
        .filter(weighing -> weighing.trust() == Trust.LIVE)
        .flatMap(weighing -> weighing.net().map(weighing.target()::minus))
        .filter(toGo -> toGo.isMoreThan(Mass.ofGrams("3")))
        .filter(toGo -> bench.nanos() >= nextSpoon)
        .ifPresent(toGo -> {
          nextSpoon = bench.nanos() + HANDS_NANOS;
          pan().add(toGo.negated());
        });
    return Perceived.told(Told.WAIT);
  }

  /** A vessel too full is poured back a little, a piece too many is taken out; for the rest a key is pressed. */
  private Perceived over() {
    boolean back = seen.choices().stream()
        .anyMatch(way -> (way.id().equals("take-back")) && way.whyNot().isEmpty());
    if (back)
      seen.weighing()
          .filter(weighing -> weighing.trust() == Trust.LIVE)
          .flatMap(weighing -> weighing.net().map(weighing.target()::minus))
          .filter(Mass::isNegative)
          .filter(over -> bench.nanos() >= nextSpoon)
          .ifPresent(over -> {
            nextSpoon = bench.nanos() + HANDS_NANOS;
            pan().add(over);
          });
    return Perceived.told(Told.OVER);
  }

  /** A scale that reads below zero with nothing on it is switched off and on, as its page says in other words. */
  private void mendZero(long nanos) {
    if (nanos >= switchOnAt) {
      switchOnAt = Long.MAX_VALUE;
      switchOn();
    }
    boolean told =
        seen.trouble().filter(words -> words.key().equals("trouble.underload")).isPresent();
    if (!told) belowSince = Long.MAX_VALUE;
    else if (belowSince == Long.MAX_VALUE) belowSince = nanos;
    boolean below =
        seen.trouble().filter(words -> !words.key().equals("trouble.overload")).isPresent()
            && pan().receiver().isEmpty();
    if (!below) zeroTroubleSince = Long.MAX_VALUE;
    else if (zeroTroubleSince == Long.MAX_VALUE) zeroTroubleSince = nanos;
    else if (nanos - zeroTroubleSince > 3 * HANDS_NANOS && bench.scale.isOn()) {
      bench.press(ScaleKey.ON_OFF);
      switchOnAt = nanos + 1_000_000_000L;
      zeroTroubleSince = Long.MAX_VALUE;
    }
  }

  /** No vessel is left out: the last is filled with what there is. */
  private void answer(long nanos) {
    boolean firstAsking = seen.step() == Prompt.Kind.ASK && liftsFirst();
    boolean atVessels = seen.step() == Prompt.Kind.PLACE_VESSEL;
    boolean asked = !seen.choices().isEmpty() && !firstAsking && !atVessels
        || atVessels && seen.confirm().isPresent() && !pan().holds(POT);
    if (!asked) {
      answersAt = Long.MAX_VALUE;
      return;
    }
    if (answersAt == Long.MAX_VALUE) answersAt = maker.answersAt(nanos) + 4_000_000_000L;
    if (nanos < answersAt) return;
    answersAt = Long.MAX_VALUE;
    keys++;
    if (atVessels || seen.choices().isEmpty()) {
      bench.say(new MakerCommand.GoOn());
      return;
    }
    seen.choices().stream()
        .filter(way -> way.whyNot().isEmpty())
        .filter(way -> !way.id().equals("scrap") && !way.id().equals("leave-out"))
        .filter(way -> !way.id().equals("count-it") || !laySomethingBeside())
        .findFirst()
        .ifPresent(way ->
            bench.say(new MakerCommand.Choose(way.id(), way.needsReason() ? "tested so" : "")));
  }
}
