package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.Answered;
import candlebench.station.guidance.GuidanceEvent.Question;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.List;
import java.util.Optional;

/**
 * Something stands on the scale that weighs other than what was left. Only the maker knows whether it is another pot, or whether
 * something was put in or taken out meanwhile.
 *
 * @param found what stands there by the last settled reading
 */
record PanDiffers(Weighing weighing, Mass found) implements Stage {
  private static final String COUNT_IT = "count-it";

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said) return said(said.command(), scene);
    if (!(input instanceof ReadingArrived arrived) || arrived.scale() != scale())
      return Outcome.to(this);
    Mass load = scene.load(scale(), arrived.reading());
    return isGone(load, arrived.reading(), scene)
        ? Outcome.to(Away.lifted(weighing))
        : scene.settled(scale()).map(reading -> settled(reading, scene)).orElse(Outcome.to(this));
  }

  private boolean isGone(Mass load, Reading reading, Scene scene) {
    Pan pan = scene.pan(scale());
    boolean zeroed = ZeroShift.zeroedAnew(pan, reading.mass(), scene.progress().zero(scale()));
    return zeroed || load.isLessThan(weighing.goal().gone());
  }

  private int scale() {
    return weighing.goal().scale();
  }

  private Outcome settled(Reading reading, Scene scene) {
    Mass load = scene.load(scale(), reading);
    return scene.pan(scale()).differs(load.minus(weighing.resting()), ZeroShift.STEPS)
        ? Outcome.to(new PanDiffers(weighing, load))
        : Outcome.to(Stages.back(weighing, scene));
  }

  private Outcome said(MakerCommand command, Scene scene) {
    if (!(command instanceof MakerCommand.Choose choose) || !choose.choice().equals(COUNT_IT))
      return Outcome.refuse(this, Words.of("refused.choose"));
    if (scene.settledLately(scale()).isEmpty())
      return Outcome.refuse(this, Words.of("refused.not-settled"));
    boolean less = scene.pan(scale()).differs(found.minus(weighing.goal().base()), ZeroShift.STEPS)
        && found.isLessThan(weighing.goal().base());
    Answered answer = new Answered(scene.now(), Question.PAN_DIFFERS, COUNT_IT, found, less);
    return less ? Outcome.record(answer) : Outcome.to(Stages.back(weighing, scene), answer);
  }

  @Override
  public Prompt prompt(Scene scene) {
    Mass left = weighing.resting();
    Words now = found.isMoreThan(left)
        ? Words.of("now.heavier").and("by", found.minus(left))
        : Words.of("now.lighter").and("by", left.minus(found));
    return Prompt.say(Prompt.Kind.ASK, now)
        .detail(Words.of("detail.differs").and("left", left).and("found", found))
        .cue(Cue.WAITING)
        .trouble(scene.trouble(scale()))
        .choices(List.of(new Prompt.Option(
            COUNT_IT,
            Words.of("choice.count-it"),
            Optional.of(Words.of("cost.count-it").and("found", found)),
            Optional.empty(),
            false)))
        .prompt();
  }
}
