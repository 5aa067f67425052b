package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.shared.Verdict;
import candlebench.station.guidance.GuidanceEvent.DelayLearnt;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import candlebench.station.guidance.pour.PourCue;
import candlebench.station.guidance.pour.PourWatch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Something is poured or put in, towards a target; settled within its tolerance it is counted in and taken. */
record Weighing(Goal goal, Optional<PourWatch> pour, CountIn countIn, Trace trace)
    implements Stage {

  static Weighing towards(Goal goal) {
    return new Weighing(goal, Optional.empty(), CountIn.NONE, Trace.EMPTY);
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof ReadingArrived arrived && arrived.scale() == goal.scale())
      return weighed(arrived.reading(), scene);
    if (input instanceof MakerSaid) return Outcome.refuse(this, Words.of("refused.not-now"));
    return Outcome.to(
        scene.load(goal.scale()).isPresent()
            ? this
            : new Weighing(goal, pour, CountIn.NONE, trace));
  }

  private Outcome weighed(Reading reading, Scene scene) {
    Mass net = scene.load(goal.scale(), reading).minus(goal.base());
    long nanos = scene.now().nanos();
    Pan pan = scene.pan(goal.scale());
    PourWatch watch = pour.orElseGet(() -> PourWatch.begin(
            goal.kind(),
            goal.target(),
            goal.tolerance(),
            pan.division(),
            scene.delay(goal.scale(), goal.kind())))
        .seen(nanos, net);
    boolean mayBeTaken = scene.settled(goal.scale()).isPresent()
        && goal.tolerance().judge(goal.target(), net, pan.division()) == Verdict.WITHIN
        && pan.steady().filter(run -> !run.creepsUp(pan.division())).isPresent();
    Weighing next = new Weighing(
        goal, Optional.of(watch), countIn.on(mayBeTaken, nanos), trace.and(nanos, net));
    return next.countIn.over(scene.setup().timing().countIn(), nanos)
        ? Outcome.record(next.taken(reading, net, scene))
        : Outcome.to(next);
  }

  private List<GuidanceEvent> taken(Reading reading, Mass net, Scene scene) {
    List<GuidanceEvent> events = new ArrayList<>();
    Pan pan = scene.pan(goal.scale());
    events.add(new WeightAccepted(
        scene.now(),
        goal.place(),
        goal.name(),
        scene
            .progress()
            .batch()
            .map(batch -> batch.started().lots().getOrDefault(goal.name(), ""))
            .orElse(""),
        goal.target(),
        pan.division().nearest(goal.target()),
        goal.tolerance(),
        reading.indication(),
        reading.basis(),
        goal.base(),
        goal.base().plus(net),
        net,
        goal.tolerance().judge(goal.target(), net, pan.division()),
        How.SETTLED,
        "",
        goal.scale(),
        scene.setup().scales().get(goal.scale()).name(),
        scene.person(),
        trace.points()));
    OptionalDouble shown = pour.map(watch -> watch.delayShown(net)).orElse(OptionalDouble.empty());
    if (shown.isPresent())
      events.add(new DelayLearnt(
          scene.now(),
          goal.scale(),
          scene.person(),
          goal.kind(),
          shown.getAsDouble(),
          scene.delay(goal.scale(), goal.kind()).learn(shown.getAsDouble(), goal.kind())));
    return events;
  }

  @Override
  public Prompt prompt(Scene scene) {
    Pan pan = scene.pan(goal.scale());
    Optional<Mass> net = scene.load(goal.scale()).map(load -> load.minus(goal.base()));
    Prompt prompt = Prompt.say("ADD_PART", Words.of("now.pour").and("part", goal.name()))
        .weighing(new Prompt.Amounts(
            goal.name(), goal, net, Trust.of(pan, scene.now().nanos()), pan.division()))
        .trouble(Trouble.of(pan, scene.now().nanos()))
        .countIn(countIn.running(
            Words.of("count-in.weight"),
            scene.setup().timing().countIn(),
            scene.now().nanos()));
    if (net.isEmpty()) return prompt.cue(Cue.WAITING);
    PourCue cue = pour.map(watch -> watch.cue(scene.now().nanos()))
        .orElse(new PourCue(PourCue.Kind.POUR, 0, -1, 0));
    return prompt.cue(
        cueOf(cue.kind()),
        cue.stopInNanos() < 0 ? Optional.empty() : Optional.of(cue.stopInNanos()),
        cue.drops() == 0 ? Optional.empty() : Optional.of(cue.drops()));
  }

  private static Cue cueOf(PourCue.Kind kind) {
    return switch (kind) {
      case POUR -> Cue.POUR;
      case SLOW -> Cue.SLOW;
      case STOP -> Cue.STOP;
      case DROPS -> Cue.DROPS;
      case HOLD_STILL -> Cue.HOLD_STILL;
    };
  }
}
