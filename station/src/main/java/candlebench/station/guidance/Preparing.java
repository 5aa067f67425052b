package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.Prepared;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.Optional;

/**
 * Vessels are wicked, counted and set out before anything melts; putting the pot on the scale says that it is done.
 *
 * @param clearSeen whether a pan was seen clear since, so that something on it was put there now
 */
record Preparing(int vessels, boolean clearSeen) implements Stage {

  static Preparing of(Step.Prepare step) {
    return new Preparing(step.vessels(), false);
  }

  /** After a restart a pot that stands there was put there, or the maker says so by the key. */
  static Preparing restarted(Step.Prepare step) {
    return new Preparing(step.vessels(), true);
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said)
      return said.command() instanceof MakerCommand.GoOn
          ? Outcome.record(new Prepared(scene.now(), true))
          : Outcome.refuse(this, Words.of("refused.prepare"));
    if (!(input instanceof ReadingArrived arrived)) return Outcome.to(this);
    Mass load = scene.load(arrived.scale(), arrived.reading());
    Optional<Outcome> zero = ZeroShift.whileEmpty(arrived, new Preparing(vessels, true), scene);
    if (zero.isPresent()) return zero.get();
    if (load.isLessThan(PlacingPot.LIGHTEST_POT)) return Outcome.to(new Preparing(vessels, true));
    return clearSeen && scene.settled(arrived.scale()).isPresent()
        ? Outcome.record(new Prepared(scene.now(), false))
        : Outcome.to(this);
  }

  /** Something stood there before the vessels were set out: whether they are cannot be told by it. */
  private boolean isThereAlready(Scene scene) {
    return !clearSeen
        && scene.pans().stream()
            .flatMap(pan -> pan.settled(scene.now().nanos()).stream())
            .anyMatch(reading -> reading.mass().abs().isMoreThan(PlacingPot.LIGHTEST_POT));
  }

  @Override
  public Prompt prompt(Scene scene) {
    return Prompt.say(Prompt.Kind.PREPARE, Words.of("now.prepare").and("vessels", vessels))
        .detail(Words.of(isThereAlready(scene) ? "detail.pot-is-there" : "detail.prepare"))
        .confirm(Words.of("confirm.prepared"))
        .trouble(scene.troubleEverywhere())
        .cue(Cue.WAITING)
        .prompt();
  }
}
