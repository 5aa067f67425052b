package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.CupTared;
import candlebench.station.guidance.GuidanceEvent.CupTipped;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;

/**
 * The cup is tipped into the pot and put back on its scale: what it still weighs more than empty stayed in it, and is not in the pot.
 *
 * @param full whether it was put back with most of the part still in it
 */
record TippingCup(CountIn countIn, boolean full) implements Stage {

  static TippingCup begin() {
    return new TippingCup(CountIn.NONE, false);
  }

  private static CupTared cup(Scene scene) {
    return scene.batch().open().cup().orElseThrow();
  }

  private static int part(Scene scene) {
    return ((Step.TipCup) scene.batch().step().orElseThrow()).part();
  }

  /** What was weighed into it. */
  private static Mass weighed(Scene scene) {
    return scene.batch().charge().weights().stream()
        .reduce((before, last) -> last)
        .map(GuidanceEvent.WeightAccepted::net)
        .orElse(Mass.ZERO);
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    int scale = cup(scene).scale();
    if (input instanceof MakerSaid said) return said(said.command(), scene);
    if (!(input instanceof ReadingArrived arrived) || arrived.scale() != scale)
      return Outcome.to(scene.load(scale).isPresent() ? this : begin());
    return scene
        .settled(scale)
        .map(reading -> settled(reading, scene))
        .orElse(Outcome.to(new TippingCup(CountIn.NONE, full)));
  }

  private Outcome settled(Reading reading, Scene scene) {
    int scale = cup(scene).scale();
    Mass load = scene.load(scale, reading);
    Mass stayed = load.minus(cup(scene).tare());
    boolean isCup = !stayed.isNegative() || !scene.pan(scale).differs(stayed, ZeroShift.STEPS);
    boolean isFull = stayed.times(2).isMoreThan(weighed(scene));
    if (!isCup || isFull) return Outcome.to(new TippingCup(CountIn.NONE, isCup));
    CountIn next = countIn.on(true, scene.now().nanos());
    return scene.countedIn(next)
        ? Outcome.record(tipped(load, stayed.isNegative() ? Mass.ZERO : stayed, true, scene))
        : Outcome.to(new TippingCup(next, false));
  }

  private static CupTipped tipped(Mass gross, Mass stayed, boolean weighed, Scene scene) {
    return new CupTipped(scene.now(), part(scene), cup(scene).scale(), gross, stayed, weighed);
  }

  private Outcome said(MakerCommand command, Scene scene) {
    boolean noScale = scene.load(cup(scene).scale()).isEmpty();
    return command instanceof MakerCommand.GoOn && noScale
        ? Outcome.record(tipped(cup(scene).tare(), Mass.ZERO, false, scene))
        : Outcome.refuse(this, Words.of("refused.tip-cup"));
  }

  @Override
  public Prompt prompt(Scene scene) {
    int scale = cup(scene).scale();
    Saying saying = Prompt.say(Prompt.Kind.TIP_CUP, Words.of("now.tip-cup"))
        .detail(Words.of(full ? "detail.cup-full" : "detail.tip-cup"))
        .cue(countIn.fromNanos().isPresent() ? Cue.HOLD_STILL : Cue.WAITING)
        .trouble(scene.trouble(scale))
        .countIn(scene.countIn(countIn, Words.of("count-in.cup")));
    if (scene.load(scale).isEmpty()) saying.confirm(Words.of("confirm.cup-tipped"));
    return saying.prompt();
  }
}
