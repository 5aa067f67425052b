package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.shared.Verdict;
import candlebench.station.guidance.GuidanceEvent.OverGone;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.List;
import java.util.Optional;

/**
 * More is there than its tolerance allows. There is no way on but by a choice, or by its not being so any more: taken back where it
 * lies apart from the rest, or nothing but a hand that rested on the scale.
 *
 * @param weighing the weighing in which it happened
 * @param net how much is there, by the last reading of which the container was part
 */
record OverPour(Weighing weighing, Optional<Mass> net) implements Stage {

  static OverPour from(Weighing weighing, Optional<Mass> net) {
    return new OverPour(weighing, net);
  }

  Goal goal() {
    return weighing.goal();
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said) return said(said.command(), scene);
    return input instanceof ReadingArrived arrived && arrived.scale() == goal().scale()
        ? weighed(arrived.reading(), scene)
        : Outcome.to(this);
  }

  private Outcome weighed(Reading reading, Scene scene) {
    Pan pan = scene.pan(goal().scale());
    Mass zero = scene.progress().zero(goal().scale());
    Mass left = goal().load(net.orElse(goal().target()));
    if (ZeroShift.jumped(pan, reading, zero, left)) return Away.shifted(weighing, reading, scene);
    Mass load = scene.load(goal().scale(), reading);
    if (load.isLessThan(goal().gone())) return Outcome.to(Away.lifted(weighing.resting(left)));
    if (weighing.isLighterThanEmpty(load, scene))
      return weighing.resting(goal().base()).differing(load, scene, List.of());
    Mass now = goal().net(load);
    return gone(now, scene)
        ? Outcome.to(weighing.again(), new OverGone(scene.now(), goal().place(), now, "taken-back"))
        : Outcome.to(new OverPour(weighing, Optional.of(now)));
  }

  /** Back by itself counts where what was over can be told from the rest; else the maker must say what happened. */
  private boolean gone(Mass now, Scene scene) {
    return Overs.isApart(goal(), scene.batch())
        && scene.settled(goal().scale()).isPresent()
        && isBack(now, scene);
  }

  private boolean isBack(Mass now, Scene scene) {
    return scene.settledLately(goal().scale()).isPresent()
        && goal()
                .tolerance()
                .judge(goal().target(), now, scene.pan(goal().scale()).division())
            != Verdict.OVER;
  }

  private Outcome said(MakerCommand command, Scene scene) {
    if (!(command instanceof MakerCommand.Choose choose))
      return Outcome.refuse(this, Words.of("refused.choose"));
    Optional<Reading> settled = scene
        .settledLately(goal().scale())
        .filter(
            reading -> !scene.load(goal().scale(), reading).isLessThan(goal().gone()));
    if (settled.isEmpty()) return Outcome.refuse(this, Words.of("refused.not-settled"));
    Mass now = goal().net(scene.load(goal().scale(), settled.get()));
    Overs overs = new Overs(this, now, isBack(now, scene), scene);
    return overs.chosen(choose, settled.get());
  }

  @Override
  public Prompt prompt(Scene scene) {
    Mass there = net.orElse(goal().target());
    boolean back = isBack(there, scene);
    Overs overs = new Overs(this, there, back, scene);
    return Prompt.say(Prompt.Kind.OVER, overs.now())
        .detail(overs.detail())
        .cue(back ? Cue.WAITING : Cue.OVER)
        .weighing(Prompt.Amounts.of(goal(), scene.load(goal().scale()).map(goal()::net), scene))
        .trouble(scene.trouble(goal().scale()))
        .choices(overs.options())
        .prompt();
  }
}
