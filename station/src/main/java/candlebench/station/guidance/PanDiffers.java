package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.Answered;
import candlebench.station.guidance.GuidanceEvent.Question;
import candlebench.station.guidance.GuidanceEvent.ZeroFound;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.ArrayList;
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
  private static final String WAS_BESIDE = "was-beside";

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said) return said(said.command(), scene);
    if (!(input instanceof ReadingArrived arrived) || arrived.scale() != scale())
      return Outcome.to(this);
    Mass load = scene.load(scale(), arrived.reading());
    if (ZeroShift.fellToOwnZero(
        scale(), arrived.reading(), found, weighing.goal().gone(), scene))
      return shifted(arrived.reading(), scene);
    return isGone(load, arrived.reading(), scene)
        ? Outcome.to(Away.asked(weighing))
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
    if (!scene.pan(scale()).differs(load.minus(weighing.resting()), ZeroShift.STEPS))
      return Outcome.to(Stages.back(weighing, scene));
    return ZeroShift.fellByContainer(scale(), reading, found, weighing.goal().gone(), scene)
        ? shifted(reading, scene)
        : Outcome.to(new PanDiffers(weighing, load));
  }

  private Outcome shifted(Reading reading, Scene scene) {
    return Away.shifted(weighing, found.minus(scene.progress().zero(scale())), reading, scene);
  }

  private Outcome said(MakerCommand command, Scene scene) {
    OtherPots others = new OtherPots(scene);
    if (command instanceof MakerCommand.Choose choose
        && others.choicesLike(scale(), found).stream()
            .anyMatch(way -> way.id().equals(choose.choice())))
      return others.chosen(command).orElseThrow();
    if (!(command instanceof MakerCommand.Choose choose) || !isOffered(choose.choice()))
      return Outcome.refuse(this, Words.of("refused.choose"));
    Optional<Reading> settled = scene.settledLately(scale());
    if (settled.isEmpty()) return Outcome.refuse(this, Words.of("refused.not-settled"));
    return choose.choice().equals(COUNT_IT) ? countIt(scene) : wasBeside(settled.get(), scene);
  }

  private boolean isOffered(String choice) {
    return choice.equals(COUNT_IT) || choice.equals(WAS_BESIDE) && isLighter();
  }

  private boolean isLighter() {
    return found.isLessThan(weighing.resting());
  }

  private Outcome countIt(Scene scene) {
    boolean less = scene.pan(scale()).differs(found.minus(weighing.goal().base()), ZeroShift.STEPS)
        && found.isLessThan(weighing.goal().base());
    Answered answer = new Answered(scene.now(), Question.PAN_DIFFERS, COUNT_IT, found, less);
    return less || weighing.goal().isFromBottle()
        ? Outcome.record(answer)
        : Outcome.to(Stages.back(weighing.resting(found), scene), answer);
  }

  /** What is gone was never in it: the contents are as they were, and the zero lies elsewhere. */
  private Outcome wasBeside(Reading reading, Scene scene) {
    Mass left = weighing.resting();
    Mass zero = left.minus(reading.mass());
    return Outcome.to(
        Stages.back(weighing, scene),
        new Answered(scene.now(), Question.PAN_DIFFERS, WAS_BESIDE, left, false),
        new ZeroFound(scene.now(), scale(), reading.indication(), zero));
  }

  @Override
  public Prompt prompt(Scene scene) {
    Mass left = weighing.resting();
    Words now = isLighter()
        ? Words.of("now.lighter").and("by", left.minus(found))
        : Words.of("now.heavier").and("by", found.minus(left));
    return Prompt.say(Prompt.Kind.ASK, now)
        .detail(Words.of("detail.differs").and("left", left).and("found", found))
        .cue(Cue.WAITING)
        .trouble(scene.trouble(scale()))
        .choices(choices(left, scene))
        .prompt();
  }

  private Words label(String choice) {
    if (weighing.goal().isFromBottle()) return Words.of("choice.other-bottle");
    return Words.of(choice.equals(COUNT_IT) ? "choice.count-it" : "choice.was-beside");
  }

  private List<Prompt.Option> choices(Mass left, Scene scene) {
    List<Prompt.Option> choices = new ArrayList<>(new OtherPots(scene).choicesLike(scale(), found));
    choices.add(goOnFrom(COUNT_IT, found));
    if (isLighter()) choices.add(goOnFrom(WAS_BESIDE, left));
    return choices;
  }

  private Prompt.Option goOnFrom(String choice, Mass load) {
    return new Prompt.Option(
        choice,
        label(choice),
        Optional.of(Words.of("cost.count-it").and("found", load)),
        Optional.empty(),
        false);
  }
}
