package candlebench.simulator;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/** The oddities of a scale that are switched on. A scale without any is an honest bench scale. */
public record ScaleQuirks(Set<Quirk> on) {

  /** One switch for each oddity that scales in the field show, with what comes over the wire when it is off and on. */
  public enum Quirk {
    /** Off: moving frames say so. On: every frame claims rest, whatever the pan does. */
    ALWAYS_SAYS_STABLE,
    /** Off: frames at rest say so. On: no frame states rest, or all deny it where the format must say something. */
    NEVER_SAYS_STABLE,
    /**
     * Off: rest is stated as soon as it holds. On: about 4 s later, and two or three frames fall back to moving now and then, as in
     * published captures of a counting scale (37 conversions late).
     */
    FLAG_LATE_AND_FLICKERING,
    /** Off: each frame is a conversion of its own. On: each conversion is sent 3 or 4 times, so that equal frames prove no rest. */
    REPEATS_CONVERSIONS,
    /**
     * Off: frames leave evenly. On: they arrive as over a Bluetooth link, unevenly, with gaps of up to 0.8 s a few times a minute and
     * a burst after each.
     */
    ARRIVES_UNEVENLY,
    /** Off: zero stays where it was set. On: an indication within half a division of gross zero is drawn to it, at most 0.5 d/s. */
    TRACKS_ZERO,
    /** Off: a tared zero stays. On: the tared zero is tracked too, so that a first trickle of drops is never counted. */
    TRACKS_TARED_ZERO,
    /** Off: on for good. On: off after {@link ScaleTraits#switchesOffAfter()} of a steady reading, and silent until switched on again. */
    SWITCHES_OFF,
    /** Off: switched on with a load, the load becomes the new zero. On: the zero of the factory holds; the load is shown. */
    KEEPS_ZERO_WHEN_OFF,
    /** Off: switched on it shows its first unit. On: it shows the unit it had. */
    KEEPS_UNIT_WHEN_OFF,
    /** Off: tare and zero wait for rest. On: they take the reading as it is that moment. */
    TARES_AT_ONCE,
    /** Off: the zero key does nothing beyond 2 % of capacity. On: it tares there, and the room it takes is forgotten. */
    ZERO_KEY_TARES,
    /** Off: commands over the line are obeyed. On: none is, as with a cable that has no wire for them. */
    DEAF
  }

  public ScaleQuirks {
    on = on.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(on));
  }

  public static ScaleQuirks none() {
    return new ScaleQuirks(Set.of());
  }

  public static ScaleQuirks of(Quirk first, Quirk... others) {
    return new ScaleQuirks(EnumSet.of(first, others));
  }

  public boolean has(Quirk quirk) {
    return on.contains(quirk);
  }

  public ScaleQuirks with(Quirk quirk) {
    EnumSet<Quirk> more = EnumSet.of(quirk);
    more.addAll(on);
    return new ScaleQuirks(more);
  }

  public ScaleQuirks without(Quirk quirk) {
    EnumSet<Quirk> fewer = EnumSet.noneOf(Quirk.class);
    fewer.addAll(on);
    fewer.remove(quirk);
    return new ScaleQuirks(fewer);
  }
}
