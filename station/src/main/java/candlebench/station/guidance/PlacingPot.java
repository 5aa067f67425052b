package candlebench.station.guidance;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The empty pot is awaited on any of the scales; settled, its own weight is taken. Where empty pots are known, what is none of them is
 * asked about first.
 *
 * @param scale the scale on which something stands, or the first
 * @param odd what seems wrong with it, if anything
 * @param placements how it came to stand there, by scale
 */
record PlacingPot(
    CountIn countIn, int scale, Optional<Words> odd, Map<Integer, Placement> placements)
    implements Stage {
  /** Lighter than this is no pot but a spoon (common practice, no source). */
  static final Mass LIGHTEST_POT = Mass.ofGrams("45");

  static PlacingPot begin() {
    return new PlacingPot(CountIn.NONE, 0, Optional.empty(), Map.of());
  }

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    if (input instanceof ReadingArrived arrived)
      return ZeroShift.whileEmpty(arrived, this, scene)
          .orElseGet(() -> seen(arrived, scene).weighed(arrived.scale(), scene));
    if (input instanceof MakerSaid said) return said(said.command(), scene);
    return Outcome.to(scene.load(scale).isPresent() ? this : waiting());
  }

  private PlacingPot seen(ReadingArrived arrived, Scene scene) {
    Map<Integer, Placement> more = new HashMap<>(placements);
    Placement before = more.getOrDefault(arrived.scale(), Placement.UNKNOWN);
    Mass load = scene.load(arrived.scale(), arrived.reading());
    Placement now = before.seen(arrived.stamp().nanos(), load, LIGHTEST_POT);
    boolean clear =
        load.isLessThan(LIGHTEST_POT) && scene.resting(arrived.scale()).isPresent();
    more.put(arrived.scale(), clear ? now.clear() : now);
    return new PlacingPot(countIn, scale, odd, Map.copyOf(more));
  }

  private PlacingPot waiting() {
    return new PlacingPot(CountIn.NONE, 0, Optional.empty(), placements);
  }

  private PlacingPot standing(int which, CountIn counting, Optional<Words> wrong) {
    return new PlacingPot(counting, which, wrong, placements);
  }

  /** Another scale than the one with something on it does not disturb. */
  private Outcome weighed(int which, Scene scene) {
    Optional<Reading> settled = scene.settled(which);
    if (settled.isEmpty()) return Outcome.to(which == scale ? waiting() : this);
    Reading reading = settled.get();
    Mass load = scene.load(which, reading);
    Optional<Outcome> other = new OtherPots(scene).aside(which);
    if (other.isPresent()) return other.get();
    if (load.isLessThan(LIGHTEST_POT)) return Outcome.to(which == scale ? waiting() : this);
    Optional<Words> wrong = problem(which, load, scene);
    if (wrong.isPresent()) return Outcome.to(standing(which, CountIn.NONE, wrong));
    boolean same = which == scale && odd.isEmpty();
    CountIn counting = (same ? countIn : CountIn.NONE).on(true, scene.now().nanos());
    return scene.countedIn(counting)
        ? Outcome.record(tared(which, reading, load, scene))
        : Outcome.to(standing(which, counting, Optional.empty()));
  }

  private Optional<Words> problem(int which, Mass load, Scene scene) {
    if (placements.get(which).below() || ZeroShift.isInDoubt(which, scene))
      return Optional.of(Words.of("detail.clear-scale"));
    if (placements.get(which).grew(load)) return Optional.of(Words.of("detail.grew-pot"));
    Mass full = load.plus(scene.batch().plan().total());
    Optional<Mass> capacity = scene.setup().scales().get(which).capacity();
    if (capacity.filter(full::isMoreThan).isPresent())
      return Optional.of(
          Words.of("detail.no-room").and("full", full).and("capacity", capacity.get()));
    Optional<Words> another = isAnother(which, load, scene);
    if (another.isPresent()) return another;
    PotCheck check = new PotCheck(load, scene, scene.pan(which));
    return check.odd() ? Optional.of(check.words()) : Optional.empty();
  }

  /** A known pot, and not the one that this share of the work was planned for. */
  private static Optional<Words> isAnother(int which, Mass load, Scene scene) {
    PotCheck check = new PotCheck(load, scene, scene.pan(which));
    return planned(scene)
        .filter(name -> check.known().isPresent() && check.known(name).isEmpty())
        .map(name -> Words.of("detail.other-pot")
            .and("pot", check.known().get().name())
            .and("planned", name));
  }

  private static Optional<String> planned(Scene scene) {
    return scene
        .progress()
        .work()
        .flatMap(work -> work.potOf(scene.batch().started().code()));
  }

  private static PotTared tared(int which, Reading reading, Mass load, Scene scene) {
    PotCheck check = new PotCheck(load, scene, scene.pan(which));
    String name = planned(scene)
        .flatMap(check::known)
        .or(check::known)
        .map(BenchSetup.Pot::name)
        .orElse("");
    return new PotTared(
        scene.now(),
        which,
        scene.setup().scales().get(which).name(),
        name,
        reading.indication(),
        reading.basis(),
        load,
        scene.how());
  }

  private Outcome said(MakerCommand command, Scene scene) {
    if (command instanceof MakerCommand.EnterByHand entry)
      return ByHand.refusal(entry, scale, scene)
          .map(words -> Outcome.refuse(this, words))
          .orElseGet(() -> Outcome.record(byHand(entry.net(), scene)));
    if (!(command instanceof MakerCommand.GoOn) || odd.isEmpty())
      return Outcome.refuse(this, Words.of("refused.place-pot"));
    return scene
        .settledLately(scale)
        .map(reading -> Outcome.record(tared(scale, reading, scene.load(scale, reading), scene)))
        .orElse(Outcome.refuse(this, Words.of("refused.not-settled")));
  }

  private PotTared byHand(Mass tare, Scene scene) {
    return new PotTared(
        scene.now(),
        scale,
        scene.setup().scales().get(scale).name(),
        "",
        Indication.of(tare.grams(), MassUnit.GRAM),
        Basis.GROSS,
        tare,
        How.BY_HAND);
  }

  @Override
  public Prompt prompt(Scene scene) {
    Saying saying = Prompt.say(
            Prompt.Kind.PLACE_POT,
            ZeroShift.isBelow(scale, scene) ? Words.of("now.keep-off") : Words.of("now.place-pot"))
        .detail(odd.or(() -> placements
            .getOrDefault(scale, Placement.UNKNOWN)
            .thereAlready(scene.now().nanos())))
        .cue(countIn.fromNanos().isPresent() ? Cue.HOLD_STILL : Cue.WAITING)
        .trouble(scene.trouble(scale))
        .byHand(scene.load(scale).isEmpty())
        .countIn(scene.countIn(countIn, Words.of("count-in.pot")));
    if (odd.isPresent()) saying.confirm(Words.of("confirm.use-pot"));
    return saying.prompt();
  }
}
