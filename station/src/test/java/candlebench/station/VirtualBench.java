package candlebench.station;

import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import candlebench.simulator.LineFaults;
import candlebench.simulator.Pan;
import candlebench.simulator.ScaleKey;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleQuirks.Quirk;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.VirtualClock;
import candlebench.simulator.VirtualLine;
import candlebench.simulator.VirtualScale;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEffect;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceInput;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.GuidanceStep;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Prompt;
import candlebench.station.link.Line;
import candlebench.station.link.ScaleSettings;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongConsumer;
import java.util.function.UnaryOperator;

/**
 * A whole bench in virtual time, from what truly stands on the pan to what is written down: a virtual scale speaks, its bytes are
 * framed and decoded, guidance answers, and after every step the promises of {@link BenchPromises} are checked.
 */
public final class VirtualBench {
  public static final Instant START = Instant.parse("2026-11-25T08:00:00Z");

  private static final Line NO_WIRE = () -> {
    throw new AssertionError("the virtual bench opens no wire");
  };
  /** Stands among the inputs for a kill and a new start. */
  private static final GuidanceInput RESTARTED =
      new GuidanceInput.LineChanged(-1, false, new Stamp(START, 0));

  /** A scale that repeats its conversions sends each three or four times. */
  private static final int MOST_REPEATS = 4;

  private static final long STEP_NANOS = 20_000_000L;
  private static final long TICK_NANOS = 100_000_000L;
  private static final long SILENT_NANOS = 1_500_000_000L;

  public final Pan pan;
  public final VirtualScale scale;
  public final List<GuidanceEvent> events = new ArrayList<>();
  public final List<GuidanceEffect> effects = new ArrayList<>();
  public final BenchPromises promises;
  private final VirtualClock clock = new VirtualClock(START);
  private final BenchSetup setup;
  private final List<Plate> plates = new ArrayList<>();
  private GuidanceState state;
  private long nextTick;
  private long runBegan;
  private int commands;
  private final List<GuidanceInput> inputs = new ArrayList<>();
  private UnaryOperator<GuidanceStep> tampering = UnaryOperator.identity();
  private LongConsumer around = nanos -> {};
  private UnaryOperator<byte[]> wire = bytes -> bytes;
  private CommandMemory taps = new CommandMemory();
  private Optional<GuidanceInput.MakerSaid> lastTap = Optional.empty();
  private final Set<String> done = new HashSet<>();
  private Duration wallOff = Duration.ZERO;
  private Optional<Cut> cut = Optional.empty();
  private boolean dark;

  /** When the power goes: while something is being written down, or once it is and before anybody was told. */
  public enum Cut {
    BEFORE_DISK,
    AFTER_DISK
  }

  /**
   * What a bench is made of; the usual one is an honest 3 kg scale that sends ten times a second.
   *
   * @param beside the scales beside the first
   */
  public record Make(
      BenchSetup setup,
      ScaleTraits traits,
      ScaleQuirks quirks,
      String format,
      long seed,
      List<ScaleTraits> beside) {
    public static Make of(BenchSetup setup) {
      return new Make(
          setup, ScaleTraits.benchThreeKilograms(), ScaleQuirks.none(), "and", 1, List.of());
    }

    public Make beside(ScaleTraits... others) {
      return new Make(setup, traits, quirks, format, seed, List.of(others));
    }

    public Make rate(double readingsPerSecond) {
      return new Make(
          setup, traits.withSendsPerSecond(readingsPerSecond), quirks, format, seed, beside);
    }

    public Make traits(ScaleTraits other) {
      return new Make(setup, other, quirks, format, seed, beside);
    }

    public Make quirks(ScaleQuirks other) {
      return new Make(setup, traits, other, format, seed, beside);
    }

    public Make format(String other) {
      return new Make(setup, traits, quirks, other, seed, beside);
    }

    public Make seed(long other) {
      return new Make(setup, traits, quirks, format, other, beside);
    }
  }

  public VirtualBench(Make make) {
    setup = make.setup();
    ScaleFormat format = ScaleFormats.of(make.format());
    plates.add(new Plate(0, make.traits(), make.quirks(), format, make.seed()));
    for (ScaleTraits traits : make.beside()) {
      int index = plates.size();
      plates.add(new Plate(index, traits, ScaleQuirks.none(), format, make.seed() + index));
    }
    pan = plates.get(0).pan;
    scale = plates.get(0).scale;
    state = GuidanceState.begin(setup);
    promises = new BenchPromises(plates.stream().map(plate -> plate.pan).toList());
    if (make.quirks().has(Quirk.REPEATS_CONVERSIONS))
      promises.numbersMayBeOld(Math.round(MOST_REPEATS * 1e9 / make.traits().sendsPerSecond()));
  }

  /** The pan of a scale, numbered from zero. */
  public Pan pan(int which) {
    return plates.get(which).pan;
  }

  /** One scale with its pan and its line. */
  private final class Plate {
    private final int index;
    private final Pan pan = new Pan();
    private final VirtualScale scale;
    private final ScaleFormat format;
    private final Framer framer;
    private final Readings readings;
    private Optional<VirtualLine> line = Optional.empty();
    private boolean plugged = true;
    private boolean answering = true;
    private long lastHeard;

    Plate(int index, ScaleTraits traits, ScaleQuirks quirks, ScaleFormat format, long seed) {
      this.index = index;
      this.format = format;
      this.framer = format.newFramer();
      this.readings = new Readings(index, settings(format));
      WireLayout layout = format.layouts().get(0);
      this.scale = new VirtualScale(traits, quirks, format, layout, pan, seed);
    }

    private void send(long nanos, byte[] sent) {
      if (!plugged) return;
      if (line.isEmpty()) hear(nanos, sent);
      else line.get().bytes(nanos, sent);
    }

    private void hear(long nanos, byte[] sent) {
      if (!plugged) return;
      byte[] bytes = wire.apply(sent);
      lastHeard = nanos;
      if (!answering) line(true);
      Stamp stamp = new Stamp(START.plusNanos(nanos).plus(wallOff), nanos - runBegan);
      framer.feed(
          bytes,
          bytes.length,
          stamp,
          frame -> readings.of(frame, format.decode(frame)).ifPresent(VirtualBench.this::give));
    }

    private void line(boolean nowAnswering) {
      answering = nowAnswering;
      give(new GuidanceInput.LineChanged(index, nowAnswering, now()));
    }

    private void advanceTo(long moment) {
      pan.advanceTo(moment);
      scale.advanceTo(moment, this::send);
      line.ifPresent(carrying -> carrying.deliver(moment, this::hear));
      if (answering && moment - lastHeard > SILENT_NANOS) line(false);
    }

    /** The program is down: what is sent goes nowhere, and whoever poured has stopped. */
    private void unheardUntil(long moment) {
      pan.flow(0, 0);
      pan.advanceTo(moment);
      scale.advanceTo(moment, (nanos, bytes) -> {});
      line.ifPresent(carrying -> carrying.deliver(moment, (nanos, bytes) -> {}));
      answering = true;
      lastHeard = moment;
    }
  }

  /** Where the scale never names its unit, the maker has said that it shows grams. */
  private static ScaleSettings settings(ScaleFormat format) {
    return new ScaleSettings(
        NO_WIRE,
        format,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(MassUnit.GRAM),
        Optional.empty());
  }

  public GuidanceState state() {
    return state;
  }

  public Prompt prompt() {
    return state.prompt(now());
  }

  public long nanos() {
    return clock.nanos();
  }

  /** The stamp of this moment: elapsed time begins anew with each run of the program. */
  public Stamp now() {
    return new Stamp(clock.stamp().wall().plus(wallOff), clock.nanos() - runBegan);
  }

  /** What acts on the pan at each step, told the moment. */
  public void around(LongConsumer hands) {
    around = hands;
  }

  /** What the wire makes of each frame on its way. */
  public void wire(UnaryOperator<byte[]> damage) {
    wire = damage;
  }

  /** The line of the first scale is as bad as this from now on. */
  public void line(LineFaults faults, long seed) {
    plates.get(0).line = Optional.of(new VirtualLine(faults, seed));
  }

  /** Somebody or something sets the computer's clock; time that has passed stays what it is. */
  public void setWallClock(Duration by) {
    wallOff = wallOff.plus(by);
  }

  /** The power goes when next something is written down; the bench is dark until it is restarted. */
  public void cutPower(Cut when) {
    cut = Optional.of(when);
  }

  /** Whether the power is gone, and nobody has started the program again. */
  public boolean isDark() {
    return dark;
  }

  /** A page that comes back, and never heard the answer, sends its last tap again. */
  public void lastTapAgain() {
    lastTap.ifPresent(tap -> tap(tap.commandId(), tap.command()));
  }

  /** Forgets which taps were done, which a bench must never do. */
  void forgetTaps() {
    taps = new CommandMemory();
  }

  public void run(double seconds) {
    long until = clock.nanos() + Math.round(seconds * 1e9);
    while (clock.nanos() < until) step(Math.min(until, clock.nanos() + STEP_NANOS));
  }

  /** Runs until the bench is in a kind of step; fails if that takes longer than so many seconds. */
  public void runUntil(Prompt.Kind step, int seconds) {
    for (int tenth = 0; tenth < 10 * seconds; tenth++) {
      if (prompt().step() == step) return;
      run(0.1);
    }
    throw new AssertionError("not at " + step + " after " + seconds + " s, but at " + prompt());
  }

  private void step(long moment) {
    around.accept(moment);
    clock.advanceTo(moment);
    for (Plate plate : plates) plate.advanceTo(moment);
    if (moment >= nextTick) {
      nextTick = moment + TICK_NANOS;
      give(new GuidanceInput.ClockTicked(now()));
    }
  }

  /** Pulls the cable. */
  public void unplug() {
    plates.get(0).plugged = false;
  }

  public void replug() {
    plates.get(0).plugged = true;
  }

  public void press(ScaleKey key) {
    scale.press(key);
  }

  /** The scale's PRINT key, as the link has understood it. */
  public void printKey() {
    give(new GuidanceInput.PrintKeyPressed(0, now()));
  }

  public void start(String recipe, int vessels) {
    say(new MakerCommand.StartBatch(recipe, vessels, "Robin", Map.of()));
  }

  public Optional<GuidanceEffect.CommandRefused> say(MakerCommand command) {
    int before = effects.size();
    tap("c" + ++commands, command);
    if (effects.size() == before) return Optional.empty();
    GuidanceEffect last = effects.get(effects.size() - 1);
    return last instanceof GuidanceEffect.CommandRefused refused
        ? Optional.of(refused)
        : Optional.empty();
  }

  /** As the station does it: what was answered is not done again. */
  private void tap(String id, MakerCommand command) {
    GuidanceInput.MakerSaid tap = new GuidanceInput.MakerSaid(id, command, now());
    lastTap = Optional.of(tap);
    if (dark || taps.answer(id).isPresent()) return;
    give(tap);
    if (!dark) taps.keep(id, Station.DONE);
  }

  /** The program is killed and started again after a while; the journal is all that is left. Whoever poured has stopped. */
  public void restart(Duration down) {
    clock.advance(down);
    for (Plate plate : plates) plate.unheardUntil(clock.nanos());
    runBegan = clock.nanos() - 5_000_000L;
    inputs.add(RESTARTED);
    dark = false;
    cut = Optional.empty();
    state = GuidanceState.resume(setup, promises.fromJournal());
    taps = new CommandMemory();
    done.forEach(id -> taps.keep(id, Station.DONE));
  }

  /** Does something to each step before it is written down, to see whether the promises notice. */
  public void tamper(UnaryOperator<GuidanceStep> how) {
    tampering = how;
  }

  private void give(GuidanceInput input) {
    if (dark) return;
    GuidanceStep step = tampering.apply(marked(input, state.on(input)));
    if (cut.isPresent() && !step.events().isEmpty()) {
      dark = true;
      if (cut.get() == Cut.BEFORE_DISK) return;
    }
    inputs.add(input);
    events.addAll(step.events());
    for (GuidanceEvent event : step.events())
      if (event instanceof GuidanceEvent.CommandTaken taken && !done.add(taken.commandId()))
        throw new BenchPromises.Broken("the tap " + taken.commandId() + " was done twice");
    if (dark) {
      promises.check(input, step, now());
      return;
    }
    effects.addAll(step.effects());
    state = step.next();
    promises.check(input, step, now());
  }

  private static GuidanceStep marked(GuidanceInput input, GuidanceStep step) {
    return input instanceof GuidanceInput.MakerSaid said
        ? Guide.marked(new Intake.Said(said.commandId(), said.command(), said.stamp()), step)
        : step;
  }

  /** The events that the same inputs give once more, from the beginning. */
  public List<GuidanceEvent> replayed() {
    List<GuidanceEvent> again = new ArrayList<>();
    GuidanceState replaying = GuidanceState.begin(setup);
    BenchProgress progress = BenchProgress.EMPTY;
    for (GuidanceInput input : inputs) {
      if (input == RESTARTED) {
        replaying = GuidanceState.resume(setup, progress);
        continue;
      }
      GuidanceStep step = marked(input, replaying.on(input));
      again.addAll(step.events());
      progress = progress.after(step.events());
      replaying = step.next();
    }
    return again;
  }

  public <E extends GuidanceEvent> List<E> all(Class<E> type) {
    return events.stream().filter(type::isInstance).map(type::cast).toList();
  }

  public <E extends GuidanceEvent> E last(Class<E> type) {
    List<E> found = all(type);
    if (found.isEmpty()) throw new AssertionError("no " + type.getSimpleName() + " in " + events);
    return found.get(found.size() - 1);
  }
}
