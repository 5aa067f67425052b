package candlebench.station.measure;

import candlebench.protocol.Decoded;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.shared.Stamp;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.Slips;
import candlebench.simulator.VirtualMaker;
import candlebench.simulator.VirtualScale;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.Cue;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceInput;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.GuidanceStep;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One pour in virtual time, from bytes to hands: the real guidance, a maker who does what it says. */
final class GuidedPour {
  private static final long TICK = 20_000_000L;
  private static final long LOOK = 60_000_000L;
  private static final long CLOCK = 100_000_000L;
  /** As the virtual scale walks under a hot pot. */
  private static final double HOT_GRAMS = 0.3;

  private static final double HOT_SECONDS = 120;
  private static final long UNTOLD = Long.MAX_VALUE / 2;
  private static final long ANSWERS = 5_000_000_000L;
  private static final long LONGEST = 600_000_000_000L;
  private static final Instant WALL = Instant.parse("2026-11-25T08:00:00Z");
  private static final ScaleFormat FORMAT = ScaleFormats.of("and");
  private static final Mass STEP = Mass.ofGrams("0.1");
  private static final String CONTAINER = "container";

  private final Task task;
  private final Pan pan = new Pan();
  private final VirtualScale scale;
  private final VirtualMaker maker;
  private final Framer framer = FORMAT.newFramer();
  private GuidanceState state;
  private Optional<WeightAccepted> accepted = Optional.empty();
  private Optional<OverPoured> over = Optional.empty();
  private Mass pouredAtEnd = Mass.ZERO;
  private final Mishap mishap;
  private final SettledEvidence evidence;
  private final List<GuidanceEvent> learnt = new ArrayList<>();
  private long askedSince = Long.MAX_VALUE;
  private int asked;

  /** Since when the maker is told that something is too much or does not fit. */
  private long toldSince = UNTOLD;

  private long began = -1;
  private long ended;

  GuidedPour(DrawnBench bench, Task task, BenchProgress known, long seed, Mishap mishap) {
    this.task = task;
    this.mishap = mishap;
    evidence = new SettledEvidence(
        task.target().plus(task.tolerance().over()).roughGrams(),
        bench.scale().cell().filterSeconds());
    scale = new VirtualScale(
        bench.scale(), mishap.on(bench.quirks()), FORMAT, FORMAT.layouts().get(0), pan, seed);
    maker = new VirtualMaker(bench.maker(), Slips.none(), seed, 0);
    maker.takes(task.liquid());
    if (mishap.isHot()) pan.putOnHot(CONTAINER, task.tare());
    else pan.putOn(CONTAINER, task.tare());
    state = GuidanceState.resume(BenchSetup.of(List.of(task.recipe())), known);
  }

  PourResult pour() {
    long nanos = 0;
    long nextLook = 0;
    long nextClock = 0;
    Prompt seen = state.prompt(stamp(0));
    while (ended == 0 && nanos < LONGEST) {
      nanos += TICK;
      scale.advanceTo(nanos, this::hear);
      if (nanos >= nextClock) {
        nextClock = nanos + CLOCK;
        give(new GuidanceInput.ClockTicked(stamp(nanos)));
      }
      if (nanos >= nextLook) {
        nextLook = nanos + LOOK;
        seen = state.prompt(stamp(nanos));
        if (began < 0 && isStream(seen.cue())) began = nanos;
      }
      maker.advanceTo(nanos, perceived(seen), pan);
      if (began >= 0) mishap.advanceTo(nanos, poured().roughGrams(), task, pan);
      answer(nanos, seen);
      boolean untold = pan.leaned() != 0 || mishap.isDisturbing(nanos) || mishap.silences(nanos);
      evidence.seen(nanos, poured().roughGrams() + pan.leaned(), untold);
    }
    double error = (ended == 0 ? poured() : pouredAtEnd).minus(task.target()).roughGrams();
    double seconds = ((ended == 0 ? nanos : ended) - began) / 1e9;
    double off = accepted.map(taken -> off(taken.net())).orElse(0.0);
    return new PourResult(
        error,
        seconds,
        over.isPresent(),
        off,
        evidence.lateSeconds(Math.min(nanos, toldSince)),
        asked,
        walk(nanos));
  }

  /** Asked about what stands there, the maker looks; and counts it, if it still is asked about and nothing lies there. */
  private void answer(long nanos, Prompt seen) {
    if (seen.step() != Prompt.Kind.ASK) {
      if (nanos > toldSince + 2 * LOOK) toldSince = UNTOLD;
      askedSince = Long.MAX_VALUE;
      return;
    }
    if (askedSince == Long.MAX_VALUE) {
      askedSince = nanos;
      asked++;
    }
    mishap.asked(askedSince);
    if (nanos - askedSince < ANSWERS || pan.leaned() != 0) return;
    askedSince = nanos;
    give(new GuidanceInput.MakerSaid(
        "c" + nanos, new MakerCommand.Choose("count-it", ""), stamp(nanos)));
  }

  /** A hot pot stood there from the beginning. */
  private double walk(long nanos) {
    return mishap.isHot() ? HOT_GRAMS * -Math.expm1(-nanos / 1e9 / HOT_SECONDS) : 0;
  }

  /** Against what a scale without noise would show. */
  private double off(Mass taken) {
    return taken
        .minus(
            new Division(STEP).nearest(pouredAtEnd.minus(new Mass(Math.round(walk(ended) * 1e12)))))
        .roughGrams();
  }

  /** What was learnt of the maker on the way. */
  List<GuidanceEvent> learnt() {
    return learnt;
  }

  private Mass poured() {
    return pan.of(CONTAINER).minus(task.tare());
  }

  private void hear(long nanos, byte[] bytes) {
    if (mishap.silences(nanos)) return;
    framer.feed(bytes, bytes.length, stamp(nanos), frame -> {
      if (FORMAT.decode(frame) instanceof Decoded.Weighed weighed)
        give(new GuidanceInput.ReadingArrived(
            0,
            new Reading(
                weighed.indication(),
                weighed.indication().mass(MassUnit.GRAM),
                weighed.basis(),
                weighed.stability(),
                false,
                frame.stamp())));
    });
  }

  private void give(GuidanceInput input) {
    GuidanceStep step = state.on(input);
    state = step.next();
    for (GuidanceEvent event : step.events()) {
      if (event instanceof GuidanceEvent.HabitsLearnt) learnt.add(event);
      if (event instanceof WeightAccepted taken) accepted = Optional.of(taken);
      if (event instanceof OverPoured poured) over = Optional.of(poured);
      if (event instanceof GuidanceEvent.Asked || event instanceof OverPoured)
        toldSince = Math.min(toldSince, input.stamp().nanos());
      if (event instanceof WeightAccepted || event instanceof OverPoured) {
        ended = input.stamp().nanos();
        pouredAtEnd = poured();
      }
    }
  }

  private static boolean isStream(Cue cue) {
    return cue == Cue.POUR || cue == Cue.SLOW || cue == Cue.PIECES;
  }

  private Perceived perceived(Prompt seen) {
    Perceived cued = cued(seen);
    return seen.weighing()
        .flatMap(amounts -> amounts.net().map(amounts.target()::minus))
        .map(toGo -> cued.withToGo(toGo.roughGrams()))
        .orElse(cued);
  }

  private static Perceived cued(Prompt seen) {
    return switch (seen.cue()) {
      case NONE, WAITING -> Perceived.told(Told.WAIT);
      case POUR -> stream(Told.POUR, seen);
      case SLOW -> stream(Told.SLOW, seen);
      case STOP -> Perceived.told(Told.STOP);
      case DROPS -> Perceived.drops(seen.drops().orElse(1));
      case PIECES -> Perceived.told(Told.PIECES);
      case HOLD_STILL -> Perceived.told(Told.HOLD_STILL);
      case OVER -> Perceived.told(Told.OVER);
    };
  }

  private static Perceived stream(Told told, Prompt seen) {
    return seen.stopInNanos()
        .map(nanos -> Perceived.stopIn(told, Duration.ofNanos(nanos)))
        .orElse(Perceived.told(told));
  }

  private static Stamp stamp(long nanos) {
    return new Stamp(WALL.plusNanos(nanos), nanos);
  }
}
