package candlebench.simulator;

import candlebench.simulator.ScaleQuirks.Quirk;
import java.util.SplittableRandom;

/** A scale's own rule of rest: the reading has stayed within a band for a time. Also how long it has stayed nearly the same. */
final class RestFlag {
  private static final double LATE_SECONDS = 4;
  private static final double FLICKER_CHANCE = 0.01;

  private final ScaleTraits traits;
  private final ScaleQuirks quirks;
  private final SplittableRandom random;
  private long since;
  private double low;
  private double high;
  private int flickers;

  RestFlag(ScaleTraits traits, ScaleQuirks quirks, SplittableRandom random) {
    this.traits = traits;
    this.quirks = quirks;
    this.random = random;
  }

  /** Takes a conversion; starts anew when it leaves the band of those before. */
  void see(double grams, double stepGrams, long nanos) {
    low = Math.min(low, grams);
    high = Math.max(high, grams);
    if (high - low <= traits.stableDivisions() * stepGrams) return;
    startAnew(grams, nanos);
  }

  void startAnew(double grams, long nanos) {
    low = grams;
    high = grams;
    since = nanos;
  }

  /** Whether the pan is at rest by the rule. */
  boolean holds(long nanos) {
    return nanos - since >= traits.stableSeconds() * 1e9;
  }

  /** What the next frame claims: the rule, or what the scale's oddities make of it. */
  boolean claimed(long nanos) {
    if (quirks.has(Quirk.ALWAYS_SAYS_STABLE)) return true;
    if (quirks.has(Quirk.NEVER_SAYS_STABLE)) return false;
    if (!quirks.has(Quirk.FLAG_LATE_AND_FLICKERING)) return holds(nanos);
    if (nanos - since < (traits.stableSeconds() + LATE_SECONDS) * 1e9) return false;
    if (flickers > 0) {
      flickers--;
      return false;
    }
    if (random.nextDouble() < FLICKER_CHANCE) flickers = 1 + random.nextInt(2);
    return flickers == 0;
  }
}
