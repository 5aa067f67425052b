package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.Answered;
import candlebench.station.guidance.GuidanceEvent.Asked;
import candlebench.station.guidance.GuidanceEvent.PotReweighed;
import candlebench.station.guidance.GuidanceEvent.Question;
import candlebench.station.guidance.GuidanceEvent.ReweighSkipped;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.List;
import java.util.Optional;

/**
 * The pot comes back to the scale and is weighed again: after the melt, or because a weight entered by hand left its gross unknown.
 * What follows is reckoned from what is really there.
 *
 * @param asked the load that was asked about, because it is too far from what was left
 * @param empty what the scale showed with nothing on it, as far as can be told
 */
record Returning(CountIn countIn, Optional<Mass> asked, EmptyPan empty) implements Stage {
  private static final String COUNT_IT = "count-it";

  static Returning begin() {
    return new Returning(CountIn.NONE, Optional.empty(), EmptyPan.UNSEEN);
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said) return said(said, scene);
    if (!(input instanceof ReadingArrived arrived) || arrived.scale() != scale(scene))
      return Outcome.to(scene.load(scale(scene)).isPresent() ? this : begin());
    Optional<Reading> resting = scene.resting(scale(scene));
    if (resting.filter(reading -> isEmpty(reading, scene)).isPresent())
      return emptied(resting.get(), scene);
    return scene
        .settled(scale(scene))
        .map(reading -> stands(reading, scene))
        .orElse(Outcome.to(new Returning(CountIn.NONE, asked, empty)));
  }

  private static int scale(Scene scene) {
    return scene.batch().charge().pot().orElseThrow().scale();
  }

  private boolean isEmpty(Reading reading, Scene scene) {
    Mass gone = scene.batch().charge().tare().times(1, 2);
    return empty.isEmpty(scale(scene), reading, gone, scene);
  }

  private Outcome emptied(Reading reading, Scene scene) {
    Returning next =
        new Returning(CountIn.NONE, Optional.empty(), empty.seen(scale(scene), reading, scene));
    return ZeroShift.atEmpty(scale(scene), reading, scene)
        .map(found -> Outcome.to(next, found))
        .orElse(Outcome.to(next));
  }

  /** By the zero that is known, or else by what was shown with nothing there, it must be about what was left. */
  private Outcome stands(Reading reading, Scene scene) {
    Mass load = scene.load(scale(scene), reading);
    if (asLeft(load, scene)) return counting(reading, load, scene);
    if (ZeroShift.showsItself(scale(scene), reading, scene.batch().charge().gross(), scene))
      return Outcome.to(this, ZeroShift.cleared(scale(scene), reading, scene));
    Mass sinceEmpty = empty.load(reading);
    boolean byEmpty = scene.pan(scale(scene)).differs(sinceEmpty.minus(load), ZeroShift.STEPS);
    return byEmpty && (empty.wasSeen() || asLeft(sinceEmpty, scene))
        ? Outcome.to(this, empty.zero(scale(scene), reading, scene))
        : ask(load, scene);
  }

  private Outcome counting(Reading reading, Mass load, Scene scene) {
    CountIn next = countIn.on(true, scene.now().nanos());
    return scene.countedIn(next)
        ? Outcome.record(reweighed(reading, load, scene))
        : Outcome.to(new Returning(next, Optional.empty(), empty));
  }

  private Outcome ask(Mass load, Scene scene) {
    Optional<Outcome> other = new OtherPots(scene).aside(scale(scene));
    if (other.isPresent()) return other.get();
    boolean already = asked
        .filter(before -> !scene.pan(scale(scene)).differs(load.minus(before), 1))
        .isPresent();
    if (already) return Outcome.to(new Returning(CountIn.NONE, asked, empty));
    return Outcome.to(
        new Returning(CountIn.NONE, Optional.of(load), empty),
        new Asked(
            scene.now(),
            Question.PAN_DIFFERS,
            scale(scene),
            scene.batch().charge().gross(),
            load));
  }

  /** Melting loses a little and a drip adds a little: as far off as the parts' own tolerances is as it was left. */
  private static boolean asLeft(Mass load, Scene scene) {
    Charge charge = scene.batch().charge();
    Mass off = load.minus(charge.gross()).abs();
    Mass allowed = OtherPots.allowed(scene.batch());
    boolean firstByHand = charge.inPot().isEmpty() && !charge.weighed();
    return firstByHand
        || !off.isMoreThan(allowed)
        || !scene.pan(scale(scene)).differs(off, ZeroShift.STEPS);
  }

  private static PotReweighed reweighed(Reading reading, Mass load, Scene scene) {
    return new PotReweighed(
        scene.now(), scale(scene), reading.indication(), scene.batch().charge().gross(), load);
  }

  private Outcome said(MakerSaid said, Scene scene) {
    MakerCommand command = said.command();
    if (command instanceof MakerCommand.Choose choose && choose.choice().equals(COUNT_IT))
      return countIt(scene);
    boolean noScale = scene.load(scale(scene)).isEmpty();
    Optional<Goal> goal = scene.batch().goal();
    if (command instanceof MakerCommand.EnterByHand && goal.isPresent())
      return Weighing.towards(goal.get(), Open.NOTHING).on(said, scene);
    if (command instanceof MakerCommand.GoOn && noScale && goal.isEmpty())
      return Outcome.record(new ReweighSkipped(scene.now()));
    return Outcome.refuse(this, Words.of("refused.put-back"));
  }

  private Outcome countIt(Scene scene) {
    Optional<Reading> settled = scene.settledLately(scale(scene));
    if (settled.isEmpty() || asked.isEmpty())
      return Outcome.refuse(this, Words.of("refused.not-settled"));
    Mass load = scene.load(scale(scene), settled.get());
    return Outcome.record(
        new Answered(scene.now(), Question.PAN_DIFFERS, COUNT_IT, load, false),
        reweighed(settled.get(), load, scene));
  }

  private Words detail(Mass left, Scene scene) {
    if (asked.isPresent())
      return Words.of("detail.differs").and("left", left).and("found", asked.get());
    boolean seemsEmpty =
        scene.resting(scale(scene)).filter(reading -> isEmpty(reading, scene)).isPresent();
    return seemsEmpty
        ? Words.of("detail.maybe-zeroed").and("left", left)
        : Words.of("detail.was-left").and("left", left);
  }

  @Override
  public Prompt prompt(Scene scene) {
    Mass left = scene.batch().charge().gross();
    boolean noScale = scene.load(scale(scene)).isEmpty();
    Saying saying = Prompt.say(
            asked.isPresent() ? Prompt.Kind.ASK : Prompt.Kind.RETURN_POT,
            ZeroShift.isBelow(scale(scene), scene)
                ? Words.of("now.keep-off")
                : Words.of("now.return-pot"))
        .detail(detail(left, scene))
        .cue(countIn.fromNanos().isPresent() ? Cue.HOLD_STILL : Cue.WAITING)
        .trouble(scene.trouble(scale(scene)))
        .byHand(noScale && scene.batch().goal().isPresent())
        .countIn(scene.countIn(countIn, Words.of("count-in.pot-again")));
    if (asked.isPresent())
      saying.choices(List.of(new Prompt.Option(
          COUNT_IT,
          Words.of("choice.count-it"),
          Optional.of(Words.of("cost.count-it").and("found", asked.get())),
          Optional.empty(),
          false)));
    if (noScale && scene.batch().goal().isEmpty()) saying.confirm(Words.of("confirm.skip-reweigh"));
    return saying.prompt();
  }
}
