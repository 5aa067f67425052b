package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.CupTared;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The empty cup is awaited that a part is weighed in, on any scale whose step is fine enough for the part's tolerance; settled, its own
 * weight is taken. The pot may stay where it is.
 *
 * @param scale the scale on which something stands; none where nothing does
 * @param odd what seems wrong with it, if anything
 * @param placements how what stands on each scale came to stand there
 */
record PlacingCup(
    CountIn countIn,
    Optional<Integer> scale,
    Optional<Words> odd,
    Map<Integer, Placement> placements)
    implements Stage {
  /** Lighter than this is no cup (common practice, no source). */
  private static final Mass LIGHTEST = Mass.ofGrams("2");

  /** A step is at most a third of the tolerance (common practice, no source). */
  private static final long STEPS_IN_TOLERANCE = 3;

  static PlacingCup begin() {
    return new PlacingCup(CountIn.NONE, Optional.empty(), Optional.empty(), Map.of());
  }

  private static int potScale(Scene scene) {
    return scene.batch().charge().pot().orElseThrow().scale();
  }

  private static Goal wanted(Scene scene) {
    return Goals.intoPot(scene.batch()).orElseThrow();
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof MakerSaid said) return said(said.command(), scene);
    if (!(input instanceof ReadingArrived arrived)) return Outcome.to(this);
    Optional<Outcome> zero = ZeroShift.whileEmpty(arrived, this, scene);
    if (zero.isPresent()) return zero.get();
    Mass load = scene.load(arrived.scale(), arrived.reading());
    return seen(arrived, load).weighed(arrived.scale(), load, scene);
  }

  private PlacingCup seen(ReadingArrived arrived, Mass load) {
    Map<Integer, Placement> more = new HashMap<>(placements);
    Placement before = more.getOrDefault(arrived.scale(), Placement.UNKNOWN);
    more.put(arrived.scale(), before.seen(arrived.stamp().nanos(), load, LIGHTEST));
    return new PlacingCup(countIn, scale, odd, Map.copyOf(more));
  }

  private PlacingCup waiting() {
    return new PlacingCup(CountIn.NONE, Optional.empty(), Optional.empty(), placements);
  }

  private PlacingCup standing(int which, CountIn counting, Optional<Words> wrong) {
    return new PlacingCup(counting, Optional.of(which), wrong, placements);
  }

  /** Another scale than the one with something on it does not disturb. */
  private Outcome weighed(int which, Mass load, Scene scene) {
    boolean here = scale.filter(known -> known == which).isPresent();
    Optional<Reading> settled = scene.settled(which);
    if (load.isLessThan(LIGHTEST) || isPot(which, load, scene))
      return Outcome.to(here ? waiting() : this);
    if (settled.isEmpty()) return Outcome.to(here ? standing(which, CountIn.NONE, odd) : this);
    Optional<Words> wrong = wrong(which, load, scene);
    if (wrong.isPresent()) return Outcome.to(standing(which, CountIn.NONE, wrong));
    CountIn before = here && odd.isEmpty() ? countIn : CountIn.NONE;
    CountIn counting = before.on(true, scene.now().nanos());
    return scene.countedIn(counting)
        ? Outcome.record(tared(which, settled.get(), scene))
        : Outcome.to(standing(which, counting, Optional.empty()));
  }

  /** The pot stays on its scale, unless it was seen to leave it. */
  private boolean isPot(int which, Mass load, Scene scene) {
    if (which != potScale(scene)) return false;
    Placement placement = placements.get(which);
    return !placement.clearSeen() && !placement.isGone(scene.batch().charge().tare(), load);
  }

  private Optional<Words> wrong(int which, Mass load, Scene scene) {
    if (ZeroShift.isInDoubt(which, scene)) return Optional.of(Words.of("detail.clear-scale"));
    if (placements.get(which).grew(load)) return Optional.of(Words.of("detail.grew-cup"));
    Goal goal = wanted(scene);
    Mass step = scene.pan(which).division().step();
    Mass under = goal.tolerance().under();
    Mass over = goal.tolerance().over();
    return step.times(STEPS_IN_TOLERANCE).isMoreThan(under.isLessThan(over) ? under : over)
        ? Optional.of(Words.of("detail.too-coarse").and("part", goal.name()))
        : Optional.empty();
  }

  private static CupTared tared(int which, Reading reading, Scene scene) {
    return new CupTared(
        scene.now(),
        wanted(scene).place().number(),
        which,
        scene.setup().scales().get(which).name(),
        reading.indication(),
        reading.basis(),
        scene.load(which, reading),
        How.SETTLED);
  }

  /** Whoever says so uses a coarse scale. */
  private Outcome said(MakerCommand command, Scene scene) {
    if (!(command instanceof MakerCommand.GoOn) || odd.isEmpty() || scale.isEmpty())
      return Outcome.refuse(this, Words.of("refused.place-cup"));
    return scene
        .settledLately(scale.get())
        .map(reading -> Outcome.record(tared(scale.get(), reading, scene)))
        .orElse(Outcome.refuse(this, Words.of("refused.not-settled")));
  }

  @Override
  public Prompt prompt(Scene scene) {
    Saying saying = Prompt.say(
            Prompt.Kind.PLACE_CUP,
            Words.of("now.place-cup").and("part", wanted(scene).name()))
        .detail(odd.or(() -> Optional.of(Words.of("detail.place-cup"))))
        .cue(countIn.fromNanos().isPresent() ? Cue.HOLD_STILL : Cue.WAITING)
        .trouble(scene.troubleEverywhere())
        .countIn(scene.countIn(countIn, Words.of("count-in.cup")));
    if (odd.isPresent()) saying.confirm(Words.of("confirm.use-cup"));
    return saying.prompt();
  }
}
