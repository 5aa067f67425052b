package candlebench.station.guidance;

import candlebench.shared.Stamp;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.GuidanceEvent.WaitEnded;
import candlebench.station.guidance.GuidanceEvent.WaitStarted;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.time.Duration;
import java.util.Optional;

/**
 * A wait runs: melting or mixing. What happens on the scale meanwhile does not count, but for another pot that is put there.
 *
 * @param endsNanos when it ends by the clock of this run; after a restart not known until the wall clock has been asked
 */
record Waiting(WaitStarted started, Optional<Long> endsNanos) implements Stage {

  static Waiting of(WaitStarted started) {
    return new Waiting(
        started, Optional.of(started.at().nanos() + started.time().toNanos()));
  }

  /** The clock that never goes back began anew: what is left follows from the wall clock, and is never more than the whole. */
  static Waiting restarted(WaitStarted started) {
    return new Waiting(started, Optional.empty());
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    Waiting known = new Waiting(started, Optional.of(ends(scene.now())));
    OtherPots others = new OtherPots(scene);
    if (input instanceof MakerSaid said)
      return said.command() instanceof MakerCommand.GoOn
          ? Outcome.record(new WaitEnded(scene.now(), started.what(), true))
          : others
              .chosen(said.command())
              .orElseGet(() -> Outcome.refuse(known, Words.of("refused.not-now")));
    if (input instanceof ReadingArrived arrived && others.areThere()) {
      Optional<Outcome> other = ZeroShift.whileEmpty(arrived, known, scene)
          .or(() -> others.recognisedBesideOwn(arrived.scale()));
      if (other.isPresent()) return other.get();
    }
    return scene.now().nanos() >= ends(scene.now())
        ? Outcome.record(new WaitEnded(scene.now(), started.what(), false))
        : Outcome.to(known);
  }

  /** When a wait ends that began in this run or an earlier one. */
  static long leftNanos(WaitStarted started, Stamp now) {
    return restarted(started).ends(now) - now.nanos();
  }

  private long ends(Stamp now) {
    return endsNanos.orElseGet(() -> {
      long whole = started.time().toNanos();
      long gone = Duration.between(started.at().wall(), now.wall()).toNanos();
      return now.nanos() + Math.max(0, Math.min(whole, whole - gone));
    });
  }

  private static Words detail(boolean melt, Scene scene) {
    boolean others = new OtherPots(scene).areThere();
    if (others) return Words.of("detail.meanwhile");
    return melt ? Words.of("detail.melt") : Words.of("detail.mix");
  }

  @Override
  public Prompt prompt(Scene scene) {
    boolean melt = started.what() == Wait.MELT;
    long left = Math.max(0, ends(scene.now()) - scene.now().nanos());
    return Prompt.say(
            melt ? Prompt.Kind.MELT : Prompt.Kind.MIX,
            melt ? Words.of("now.melt") : Words.of("now.mix"))
        .detail(detail(melt, scene))
        .choices(new OtherPots(scene).choices())
        .timer(new Prompt.Running(
            melt ? Words.of("timer.melt") : Words.of("timer.mix"),
            left,
            started.time().toNanos()))
        .confirm(melt ? Words.of("confirm.melted") : Words.of("confirm.mixed"))
        .prompt();
  }
}
