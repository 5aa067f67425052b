package candlebench.simulator;

import candlebench.simulator.Perceived.Told;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.SplittableRandom;

/** From what a maker is told to when the maker does it: usually soon, sometimes late, now and then not before it was told for long. */
final class Reactions {
  private static final double MISSED_LEAST = 3;
  private static final double MISSED_MOST = 6;

  private record Pending(long due, Told told) {}

  private final MakerTraits traits;
  private final Slips slips;
  private final SplittableRandom random;
  private final ArrayDeque<Pending> pending = new ArrayDeque<>();
  private Told last = Told.NOTHING;

  Reactions(MakerTraits traits, Slips slips, SplittableRandom random) {
    this.traits = traits;
    this.slips = slips;
    this.random = random;
  }

  /** Takes in what is told now. A newer word that is answered sooner replaces an older one. */
  void hear(Told told, long nanos) {
    if (told == last) return;
    last = told;
    if (told == Told.NOTHING) return;
    long due = nanos + Math.round(seconds() * 1e9);
    pending.removeIf(each -> each.due >= due);
    pending.add(new Pending(due, told));
  }

  /** What is to be done now, if anything. */
  Optional<Told> due(long nanos) {
    Optional<Told> due = Optional.empty();
    while (!pending.isEmpty() && pending.peek().due <= nanos)
      due = Optional.of(pending.remove().told);
    return due;
  }

  /** One reaction time of this maker. */
  double seconds() {
    double usual =
        MakerTraits.around(traits.reactionSeconds(), MakerTraits.REACTION_WITHIN, random);
    if (happens(slips.missedShare()))
      return MISSED_LEAST + (MISSED_MOST - MISSED_LEAST) * random.nextDouble();
    if (happens(slips.lateShare())) return usual * (2 + 4 * random.nextDouble());
    return usual;
  }

  private boolean happens(double share) {
    return share > 0 && random.nextDouble() < share;
  }
}
