package candlebench.simulator;

import candlebench.shared.Mass;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What truly stands on a pan, and what presses on it without standing there. The truth a test measures the station by.
 *
 * <p>Things are put on and lifted off by name, with all that is in them. Liquid and pieces go into the thing put on last, unless
 * {@link #receiveIn} says otherwise; with nothing there they fall on the bare pan and stay until wiped off.
 *
 * <p>Liquid in the air is left out: for a stream leaving the lip slowly the force of its impact equals the weight of what is still
 * falling, so the pan feels each gram from the moment it leaves (elementary mechanics). What a fast stream presses in addition,
 * flow times its speed downwards at the lip, is {@link #flow}'s second argument.
 */
public final class Pan {
  private static final double PICOGRAMS = 1e12;
  private static final double GRAVITY = 9.81;
  private static final int RINGS = 8;
  private static final double RING_HERTZ = 7;
  private static final double RING_SECONDS = 0.12;

  private final Map<String, Long> things = new LinkedHashMap<>();
  private final Map<String, Double> leaning = new LinkedHashMap<>();
  private final double[] ringGrams = new double[RINGS];
  private final long[] ringStart = new long[RINGS];
  private Optional<String> receiver = Optional.empty();
  private Optional<String> hot = Optional.empty();
  private long bare;
  private long total;
  private long nanos;
  private double flow;
  private double jet;
  private double picogramsDue;
  private double hand;
  private double draught;
  private double impulse;
  private int nextRing;

  /** All that stands and lies on the pan, exact. */
  public Mass truth() {
    return new Mass(total);
  }

  /** A thing with all that is in it; zero where no such thing stands there. */
  public Mass of(String thing) {
    return new Mass(things.getOrDefault(thing, 0L));
  }

  public boolean holds(String thing) {
    return things.containsKey(thing);
  }

  /** What was spilt on the bare pan. */
  public Mass spilt() {
    return new Mass(bare);
  }

  /** Puts a thing on; it takes what is poured from now on. Throws {@link IllegalStateException} if it stands there already. */
  public void putOn(String thing, Mass mass) {
    if (holds(thing)) throw new IllegalStateException(thing + " stands on the pan already");
    things.put(thing, mass.picograms());
    total = Math.addExact(total, mass.picograms());
    receiver = Optional.of(thing);
  }

  /** Puts a hot thing on: the reading walks while it stands there. */
  public void putOnHot(String thing, Mass mass) {
    putOn(thing, mass);
    hot = Optional.of(thing);
  }

  /** Lifts a thing off with all that is in it, which is given back. What still flows then falls on what is left. */
  public Mass liftOff(String thing) {
    Long mass = things.remove(thing);
    if (mass == null) throw new IllegalStateException("no " + thing + " stands on the pan");
    total -= mass;
    if (receiver.filter(thing::equals).isPresent())
      receiver = things.keySet().stream().reduce((first, second) -> second);
    if (hot.filter(thing::equals).isPresent()) hot = Optional.empty();
    return new Mass(mass);
  }

  /** Names the thing that takes what is poured and dropped from now on. */
  public void receiveIn(String thing) {
    if (!holds(thing)) throw new IllegalStateException("no " + thing + " stands on the pan");
    receiver = Optional.of(thing);
  }

  /** The thing that takes what is poured and dropped now, if any stands there. */
  public Optional<String> receiver() {
    return receiver;
  }

  /** Adds a piece or a drop without a blow; a mass below zero takes out, as with a spoon. */
  public void add(Mass mass) {
    receive(mass.picograms());
  }

  /**
   * Drops a piece: its weight from now on, and once the blow of its fall, mass times speed, spread by whatever filter follows.
   *
   * @param fallMetres how far it fell
   */
  public void drop(Mass piece, double fallMetres) {
    receive(piece.picograms());
    impulse += piece.roughGrams() * Math.sqrt(2 * fallMetres / GRAVITY);
  }

  /** Adds to the bare pan, past whatever stands there. */
  public void spill(Mass mass) {
    bare = Math.addExact(bare, mass.picograms());
    total = Math.addExact(total, mass.picograms());
  }

  /** Wipes the bare pan. */
  public void wipe() {
    total -= bare;
    bare = 0;
  }

  /**
   * Sets what flows from this moment on.
   *
   * @param gramsPerSecond zero ends it; below zero is a loss, as of steam
   * @param lipMetresPerSecond the stream's speed downwards where it leaves
   */
  public void flow(double gramsPerSecond, double lipMetresPerSecond) {
    flow = gramsPerSecond;
    jet = Math.max(0, gramsPerSecond) * lipMetresPerSecond / GRAVITY;
  }

  /** Grams a second that flow now. */
  public double flow() {
    return flow;
  }

  /** A hand, a sleeve or a cable presses (or below zero lifts) with the weight of so many grams, until it says otherwise. */
  public void lean(String who, double grams) {
    if (grams == 0) leaning.remove(who);
    else leaning.put(who, grams);
    hand = leaning.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /** What hands and the like press just now, in grams, all together; no scale can tell it from a weight. */
  public double leaned() {
    return hand;
  }

  /** A knock on the bench: the reading rings with this swing and dies away in a few tenths of a second. */
  public void knock(double grams) {
    ringGrams[nextRing] = grams;
    ringStart[nextRing] = nanos;
    nextRing = (nextRing + 1) % RINGS;
  }

  /** Moving air, as the standard deviation of its push in grams; zero is still air. */
  public void draught(double grams) {
    draught = grams;
  }

  /** Moves to a moment and lets the flow run until then. A moment already past changes nothing. */
  public void advanceTo(long moment) {
    if (moment <= nanos) return;
    if (flow != 0) {
      picogramsDue += flow * (moment - nanos) * (PICOGRAMS / 1e9);
      long whole = (long) picogramsDue;
      picogramsDue -= whole;
      receive(whole);
    }
    nanos = moment;
  }

  public long nanos() {
    return nanos;
  }

  /** What presses on the cell at this moment, in grams: what stands there, the stream, a hand, a knock. */
  double pressure() {
    double grams = total / PICOGRAMS + jet + hand;
    for (int i = 0; i < RINGS; i++) if (ringGrams[i] != 0) grams += ring(i);
    return grams;
  }

  /** The blows since this was last asked, in gram seconds. */
  double takeBlows() {
    double taken = impulse;
    impulse = 0;
    return taken;
  }

  double draughtGrams() {
    return draught;
  }

  boolean isHot() {
    return hot.isPresent();
  }

  private double ring(int i) {
    double seconds = (nanos - ringStart[i]) / 1e9;
    if (seconds > 10 * RING_SECONDS) {
      ringGrams[i] = 0;
      return 0;
    }
    return ringGrams[i]
        * Math.exp(-seconds / RING_SECONDS)
        * Math.sin(2 * Math.PI * RING_HERTZ * seconds);
  }

  private void receive(long picograms) {
    total = Math.addExact(total, picograms);
    if (receiver.isPresent()) things.merge(receiver.get(), picograms, Math::addExact);
    else bare = Math.addExact(bare, picograms);
  }
}
