package candlebench.station.guidance;

import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.List;
import java.util.Optional;

/** A pot is done, and others wait: the one that is put on the scale, or named, goes on. */
record NextPot() implements Stage {

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    OtherPots others = new OtherPots(scene);
    if (input instanceof MakerSaid said)
      return others
          .chosen(said.command())
          .orElseGet(() -> Outcome.refuse(this, Words.of("refused.choose-pot")));
    if (!(input instanceof ReadingArrived arrived)) return Outcome.to(this);
    Optional<Outcome> zero = ZeroShift.whileEmpty(arrived, this, scene);
    return zero.or(() -> others.recognised(arrived.scale())).orElse(Outcome.to(this));
  }

  @Override
  public Prompt prompt(Scene scene) {
    List<Prompt.Option> choices = new OtherPots(scene).choices();
    return Prompt.say(Prompt.Kind.PLACE_POT, Words.of("now.next-pot"))
        .detail(Words.of("detail.next-pot"))
        .cue(Cue.WAITING)
        .trouble(scene.troubleEverywhere())
        .choices(choices)
        .prompt();
  }
}
