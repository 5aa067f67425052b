package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.BottleWeighed;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.Optional;

/**
 * The bottle is awaited that a part comes out of, with the pot beside the scale; settled, its weight is taken, and what it loses from then
 * on is what went into the pot. The pot is not to be taken for it, nor a bottle that holds too little.
 *
 * @param placement how what stands there came to stand there
 * @param odd what seems wrong with what stands there, if anything
 */
record PlacingBottle(CountIn countIn, Placement placement, Optional<Words> odd) implements Stage {
  /** Lighter than this is no bottle (common practice, no source). */
  private static final Mass LIGHTEST = Mass.ofGrams("5");

  /** A hot pot loses 0.007 to 0.02 g/s (two published recordings): some grams while it waits. */
  private static final long POTS_LOSS_PERCENT = 1;

  private static final String TOO_LIGHT = "detail.bottle-too-light";

  static PlacingBottle begin() {
    return new PlacingBottle(CountIn.NONE, Placement.UNKNOWN, Optional.empty());
  }

  private static int scale(Scene scene) {
    return scene.batch().charge().pot().orElseThrow().scale();
  }

  private static Goal wanted(Scene scene) {
    return Goals.intoPot(scene.batch()).orElseThrow();
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said) return said(said, scene);
    if (!(input instanceof ReadingArrived arrived) || arrived.scale() != scale(scene))
      return Outcome.to(scene.load(scale(scene)).isPresent() ? this : waiting());
    Optional<Outcome> zero = ZeroShift.whileEmpty(arrived, waiting(), scene);
    if (zero.isPresent()) return zero.get();
    Mass load = scene.load(scale(scene), arrived.reading());
    Placement seen = placement.seen(arrived.stamp().nanos(), load, LIGHTEST);
    PlacingBottle next = new PlacingBottle(countIn, seen, odd);
    return scene
        .settled(scale(scene))
        .map(reading -> next.settled(reading, load, scene))
        .orElse(Outcome.to(next.waiting()));
  }

  private PlacingBottle waiting() {
    return new PlacingBottle(CountIn.NONE, placement, Optional.empty());
  }

  private Outcome settled(Reading reading, Mass load, Scene scene) {
    if (load.isLessThan(LIGHTEST)) return Outcome.to(waiting());
    Optional<Words> wrong = wrong(load, scene);
    if (wrong.isPresent()) return Outcome.to(new PlacingBottle(CountIn.NONE, placement, wrong));
    CountIn next = countIn.on(true, scene.now().nanos());
    return scene.countedIn(next)
        ? Outcome.record(weighed(reading, load, scene))
        : Outcome.to(new PlacingBottle(next, placement, Optional.empty()));
  }

  private Optional<Words> wrong(Mass load, Scene scene) {
    if (ZeroShift.isInDoubt(scale(scene), scene))
      return Optional.of(Words.of("detail.clear-scale"));
    boolean potGone = placement.isGone(scene.batch().charge().tare(), load);
    if (!placement.clearSeen() && !potGone) return Optional.of(Words.of("detail.clear-scale"));
    if (isPot(load, scene)) return Optional.of(Words.of("detail.that-is-no-bottle"));
    return load.isMoreThan(wanted(scene).target())
        ? Optional.empty()
        : Optional.of(Words.of(TOO_LIGHT).and("target", wanted(scene).target()));
  }

  /** Whether it is about what the pot weighed: hot wax has lost a little since. */
  private static boolean isPot(Mass load, Scene scene) {
    Mass pot = scene.batch().charge().gross();
    return !load.minus(pot).abs().isMoreThan(pot.times(POTS_LOSS_PERCENT, 100));
  }

  private static BottleWeighed weighed(Reading reading, Mass load, Scene scene) {
    return new BottleWeighed(
        scene.now(),
        wanted(scene).place().number(),
        scale(scene),
        scene.setup().scales().get(scale(scene)).name(),
        reading.indication(),
        reading.basis(),
        load,
        How.SETTLED);
  }

  private Outcome said(MakerSaid said, Scene scene) {
    if (said.command() instanceof MakerCommand.EnterByHand)
      return Weighing.towards(wanted(scene), Open.NOTHING).on(said, scene);
    if (!(said.command() instanceof MakerCommand.GoOn) || odd.isEmpty())
      return Outcome.refuse(this, Words.of("refused.place-bottle"));
    return scene
        .settledLately(scale(scene))
        .filter(reading ->
            scene.load(scale(scene), reading).isMoreThan(wanted(scene).target()))
        .map(reading -> Outcome.record(weighed(reading, scene.load(scale(scene), reading), scene)))
        .orElse(Outcome.refuse(this, Words.of("refused.place-bottle")));
  }

  @Override
  public Prompt prompt(Scene scene) {
    Saying saying = Prompt.say(
            Prompt.Kind.PLACE_BOTTLE,
            ZeroShift.isBelow(scale(scene), scene)
                ? Words.of("now.keep-off")
                : Words.of("now.place-bottle").and("part", wanted(scene).name()))
        .detail(odd.or(() -> placement.thereAlready(scene.now().nanos())))
        .cue(countIn.fromNanos().isPresent() ? Cue.HOLD_STILL : Cue.WAITING)
        .trouble(scene.trouble(scale(scene)))
        .byHand(scene.load(scale(scene)).isEmpty())
        .countIn(scene.countIn(countIn, Words.of("count-in.bottle")));
    if (odd.filter(words -> !words.key().equals(TOO_LIGHT)).isPresent())
      saying.confirm(Words.of("confirm.use-bottle"));
    return saying.prompt();
  }
}
