package candlebench.simulator;

import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.shared.Division;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.simulator.ScaleQuirks.Quirk;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A scale that does not exist: feels its {@link Pan}, zeroes, tares, rounds to its division, says when it is at rest, sends frames
 * of any format at its own pace, obeys commands and keys, and has whatever oddities were switched on.
 *
 * <p>It lives in the time it is told: {@link #advanceTo} runs it up to a moment and hands on the bytes that arrived by then. Keys
 * pressed and bytes received act at the moment last reached. One thread at a time.
 */
public final class VirtualScale {
  private static final double BOOT_SECONDS = 2;
  private static final long REPLY_NANOS = 15_000_000;
  private static final long DISPLAY_NANOS = 200_000_000;
  private static final int OVER_DIVISIONS = 9;
  private static final int UNDER_DIVISIONS = 20;
  private static final double TRACKED_DIVISIONS_PER_SECOND = 0.5;
  private static final long ZERO_RANGE_SHARE = 50;

  private enum Power {
    ON,
    STARTING,
    OFF
  }

  private final ScaleTraits traits;
  private final ScaleQuirks quirks;
  private final ScaleVoice voice;
  private final CommandEar ear;
  private final LoadCell cell;
  private final RestFlag rest;
  private final SendQueue sends;
  private final SplittableRandom random;
  private final long conversionNanos;
  private final long sendNanos;
  private final Mass mostShown;
  private final Mass leastShown;

  private Power power = Power.ON;
  private SendMode mode;
  private int face;
  private Division division;
  private double stepGrams;
  private long nanos;
  private long startsAt;
  private long nextConversion;
  private long nextSend;
  private long nextDisplay;
  private Mass felt;
  private Mass zero;
  private Mass tare = Mass.ZERO;
  private Mass sent;
  private Mass displayed;
  private int repeatsLeft;
  private Optional<ScaleCommand> waitingForRest = Optional.empty();
  private boolean askedWhenStable;
  private boolean printedThisLoad;
  private long steadySince;
  private double steadyGrams;

  /** A scale just switched on with whatever stands on the pan as its zero, at the moment the pan has reached. */
  public VirtualScale(
      ScaleTraits traits,
      ScaleQuirks quirks,
      ScaleFormat format,
      WireLayout layout,
      Pan pan,
      long seed) {
    this.traits = traits;
    this.quirks = quirks;
    SplittableRandom seeds = new SplittableRandom(seed);
    this.voice = new ScaleVoice(layout, !quirks.has(Quirk.NEVER_SAYS_STABLE));
    this.ear = new CommandEar(format);
    this.cell = new LoadCell(traits.cell(), pan, seeds.split());
    this.rest = new RestFlag(traits, quirks, seeds.split());
    this.sends = new SendQueue(
        traits.line(),
        traits.linkDelay().toNanos(),
        quirks.has(Quirk.ARRIVES_UNEVENLY),
        seeds.split());
    this.random = seeds.split();
    this.conversionNanos = Math.round(1e9 / traits.conversionsPerSecond());
    this.sendNanos = Math.round(1e9 / traits.sendsPerSecond());
    this.nanos = pan.nanos();
    this.nextConversion = nanos + conversionNanos;
    this.nextSend = nanos + sendNanos;
    this.nextDisplay = nanos;
    show(0);
    this.mostShown = traits.capacity().plus(division.steps(OVER_DIVISIONS));
    this.leastShown = division.steps(-UNDER_DIVISIONS);
    this.mode = traits.mode();
    this.felt = pan.truth();
    this.zero = felt;
    this.sent = felt;
    this.displayed = felt;
    restart(felt.roughGrams());
  }

  /** Runs up to a moment; hands on, in order, every frame that arrived at the host by then. */
  public void advanceTo(long moment, WireSink sink) {
    while (Math.min(nextConversion, nextSend) <= moment) {
      nanos = Math.min(nextConversion, nextSend);
      if (nextConversion <= nextSend) {
        nextConversion += conversionNanos;
        if (power != Power.OFF) convert();
      } else {
        nextSend += sendNanos;
        if (power == Power.ON) sendByItself();
      }
      sends.deliver(nanos, sink);
    }
    nanos = Math.max(nanos, moment);
    sends.deliver(moment, sink);
  }

  /** Bytes from the host; commands among them are obeyed at the moment last reached. */
  public void receive(byte[] bytes) {
    if (power != Power.ON || quirks.has(Quirk.DEAF)) return;
    for (byte b : bytes) ear.hear(b).ifPresent(this::obey);
  }

  /** A hand presses a key at the moment last reached. */
  public void press(ScaleKey key) {
    if (key == ScaleKey.ON_OFF) {
      if (power == Power.OFF) switchOn();
      else switchOff();
      return;
    }
    if (power != Power.ON) return;
    steadySince = nanos;
    switch (key) {
      case TARE -> obey(ScaleCommand.TARE);
      case ZERO -> obey(ScaleCommand.ZERO);
      case UNIT -> show((face + 1) % traits.faces().size());
      case PRINT -> send(nanos);
      case ON_OFF -> throw new AssertionError(key);
    }
  }

  /** What its own display shows, some five times a second; empty while it is off, starting, or beyond its range. */
  public Optional<Indication> display() {
    if (power != Power.ON || beyond(displayed).isPresent()) return Optional.empty();
    return Optional.of(Indication.of(number(displayed), face().unit()));
  }

  /** Whether it is on and weighing. */
  public boolean isOn() {
    return power == Power.ON;
  }

  /** Whether its own rule calls the pan at rest, whatever its frames claim. */
  public boolean isAtRest() {
    return rest.holds(nanos);
  }

  public ScaleFace face() {
    return traits.faces().get(face);
  }

  public ScaleTraits traits() {
    return traits;
  }

  /** The moment last reached. */
  public long nanos() {
    return nanos;
  }

  /** How many lines from the host were no command. */
  public long commandsNotUnderstood() {
    return ear.notUnderstood();
  }

  private void convert() {
    double grams = cell.feel(nanos);
    felt = massOf(grams);
    if (power == Power.STARTING) {
      if (nanos >= startsAt) finishStart(grams);
      return;
    }
    rest.see(grams, stepGrams, nanos);
    trackZero();
    if (rest.holds(nanos)) atRest();
    else if (Math.abs(grams - steadyGrams) > 2 * stepGrams) printedThisLoad = false;
    if (nanos >= nextDisplay) {
      nextDisplay = nanos + DISPLAY_NANOS;
      displayed = felt;
    }
    watchIdle(grams);
  }

  private void atRest() {
    waitingForRest.ifPresent(this::take);
    if (askedWhenStable) {
      askedWhenStable = false;
      send(nanos + REPLY_NANOS);
    } else if (mode == SendMode.ONCE_STABLE && !printedThisLoad && power == Power.ON) {
      send(nanos);
    } else {
      return;
    }
    printedThisLoad = true;
  }

  private void watchIdle(double grams) {
    if (Math.abs(grams - steadyGrams) > 2 * stepGrams) {
      steadyGrams = grams;
      steadySince = nanos;
    } else if (quirks.has(Quirk.SWITCHES_OFF)
        && nanos - steadySince >= traits.switchesOffAfter().toNanos()) {
      switchOff();
    }
  }

  private void trackZero() {
    boolean tared = !tare.isZero();
    if (!quirks.has(tared ? Quirk.TRACKS_TARED_ZERO : Quirk.TRACKS_ZERO)) return;
    Mass step = division.step();
    Mass off = felt.minus(zero).minus(tare);
    if (off.abs().times(2).isMoreThan(step)) return;
    long most = Math.round(step.picograms() * TRACKED_DIVISIONS_PER_SECOND * conversionNanos / 1e9);
    Mass drawn = new Mass(Math.max(-most, Math.min(most, off.picograms())));
    if (tared) tare = tare.plus(drawn);
    else zero = zero.plus(drawn);
  }

  private void sendByItself() {
    boolean due = mode == SendMode.CONTINUOUS || mode == SendMode.WHILE_STABLE && rest.holds(nanos);
    if (due && !sends.isBusy(nanos)) send(nanos);
  }

  private void send(long moment) {
    if (repeatsLeft-- <= 0) {
      sent = felt;
      repeatsLeft = quirks.has(Quirk.REPEATS_CONVERSIONS) ? 2 + random.nextInt(2) : 0;
    }
    boolean tared = !tare.isZero();
    Optional<Side> beyond = beyond(sent);
    Optional<byte[]> frame = beyond.isPresent()
        ? voice.outOfRange(beyond.get(), tared, face().shown())
        : voice.weight(number(sent), tared, rest.claimed(nanos), face().shown());
    frame.ifPresent(bytes -> sends.send(moment, bytes));
  }

  private void obey(ScaleCommand command) {
    switch (command) {
      case SEND -> send(nanos + REPLY_NANOS);
      case SEND_STABLE -> askedWhenStable = true;
      case SEND_CONTINUOUSLY -> mode = SendMode.CONTINUOUS;
      case STOP_SENDING -> mode = SendMode.ON_REQUEST;
      case TARE, ZERO -> {
        if (quirks.has(Quirk.TARES_AT_ONCE) || rest.holds(nanos)) take(command);
        else waitingForRest = Optional.of(command);
      }
    }
  }

  /** Takes the reading as tare or zero. What the zero key may take is 4 % of capacity in all, 2 % each way (OIML R 76). */
  private void take(ScaleCommand command) {
    waitingForRest = Optional.empty();
    Mass gross = felt.minus(zero);
    boolean nearZero = !gross.abs().times(ZERO_RANGE_SHARE).isMoreThan(traits.capacity());
    if (command == ScaleCommand.ZERO && nearZero) {
      zero = felt;
      tare = Mass.ZERO;
    } else if (command == ScaleCommand.TARE || quirks.has(Quirk.ZERO_KEY_TARES)) {
      tare = gross;
    }
    sent = felt;
    displayed = felt;
    repeatsLeft = 0;
  }

  private void switchOff() {
    power = Power.OFF;
    sends.clear();
  }

  private void switchOn() {
    power = Power.STARTING;
    startsAt = nanos + Math.round(BOOT_SECONDS * 1e9);
  }

  private void finishStart(double grams) {
    power = Power.ON;
    if (!quirks.has(Quirk.KEEPS_ZERO_WHEN_OFF)) zero = felt;
    if (!quirks.has(Quirk.KEEPS_UNIT_WHEN_OFF)) show(0);
    tare = Mass.ZERO;
    mode = traits.mode();
    sent = felt;
    displayed = felt;
    restart(grams);
  }

  private void restart(double grams) {
    repeatsLeft = 0;
    waitingForRest = Optional.empty();
    askedWhenStable = false;
    printedThisLoad = false;
    steadyGrams = grams;
    steadySince = nanos;
    rest.startAnew(grams, nanos);
  }

  private Optional<Side> beyond(Mass reading) {
    Mass gross = reading.minus(zero);
    if (gross.isMoreThan(mostShown)) return Optional.of(Side.OVER);
    if (gross.isLessThan(leastShown)) return Optional.of(Side.UNDER);
    return Optional.empty();
  }

  private String number(Mass reading) {
    Mass net = reading.minus(zero).minus(tare);
    return division.nearest(net).text(face().unit(), face().decimals());
  }

  private void show(int other) {
    face = other;
    division = face().division();
    stepGrams = division.step().roughGrams();
  }

  private static Mass massOf(double grams) {
    return new Mass(Math.round(grams * 1e12));
  }
}
