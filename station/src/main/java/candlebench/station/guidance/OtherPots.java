package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Part;
import candlebench.station.batch.PotShare;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.PotTaken;
import candlebench.station.guidance.GuidanceEvent.ShareBegun;
import candlebench.station.guidance.GuidanceEvent.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The pots that are not in hand: those aside, each known by what it weighed when it was left, and those still to be begun, each known by
 * its empty weight.
 */
record OtherPots(Scene scene) {
  private static final String POT = "pot-";
  private static final String NEXT = "next-";

  /** A pot from which vessels are filled is known to a twentieth: what went into them is not all that left it. */
  private static final long POURED_FROM = 20;

  boolean areThere() {
    return !scene.progress().aside().isEmpty() || !scene.progress().toCome().isEmpty();
  }

  /** One that may stand on a scale, and how it would be taken in hand. */
  private record Pot(
      String choice, String name, Optional<BatchProgress> aside, Optional<Integer> share) {}

  /** The shares that may be begun now: their pots are not in use. */
  List<Integer> free() {
    List<String> inUse = new ArrayList<>();
    scene.progress().running().map(this::name).ifPresent(inUse::add);
    scene.progress().aside().forEach(each -> inUse.add(name(each)));
    return scene.progress().toCome().stream()
        .filter(share -> !inUse.contains(work().share(share).pot()))
        .toList();
  }

  private Work work() {
    return scene.progress().work().orElseThrow();
  }

  /** How a batch's pot is called; by the batch's code where it has no name. */
  String name(BatchProgress batch) {
    String code = batch.started().code();
    return scene
        .progress()
        .work()
        .flatMap(work -> work.potOf(code))
        .or(() -> batch.charge().pot().map(GuidanceEvent.PotTared::pot))
        .filter(name -> !name.isEmpty())
        .orElse(code);
  }

  /** What a settled load on a scale comes to, where it is another pot and no other can be meant. */
  Optional<Outcome> recognised(int scale) {
    return scene
        .settled(scale)
        .map(reading -> scene.load(scale, reading))
        .map(load -> like(scale, load))
        .filter(pots -> pots.size() == 1)
        .map(pots -> taken(pots.get(0), Told.BY_WEIGHT));
  }

  /** The same, but for the pot in hand, which may stand there too. */
  Optional<Outcome> recognisedBesideOwn(int scale) {
    return scene
        .settled(scale)
        .map(reading -> scene.load(scale, reading))
        .filter(load -> !isOwn(scale, load))
        .flatMap(load -> recognised(scale));
  }

  /** The same, of the pots aside alone. */
  Optional<Outcome> aside(int scale) {
    return scene
        .settled(scale)
        .map(reading -> scene.load(scale, reading))
        .map(load ->
            like(scale, load).stream().filter(pot -> pot.aside().isPresent()).toList())
        .filter(pots -> pots.size() == 1)
        .map(pots -> taken(pots.get(0), Told.BY_WEIGHT));
  }

  private boolean isOwn(int scale, Mass load) {
    return scene
        .progress()
        .running()
        .filter(own -> own.charge().pot().isPresent() && weighsLike(own, scale, load))
        .isPresent();
  }

  /** The ways to take another pot in hand by name. */
  List<Prompt.Option> choices() {
    List<Prompt.Option> options = new ArrayList<>();
    for (Pot pot : all())
      options.add(Prompt.Option.open(
          pot.choice(),
          Words.of(pot.aside().isPresent() ? "choice.go-on-with-pot" : "choice.begin-pot")
              .and("pot", pot.name())));
    return options;
  }

  /** The ways to say that what stands there is another pot after all, which has that weight. */
  List<Prompt.Option> choicesLike(int scale, Mass load) {
    return like(scale, load).stream()
        .filter(pot -> pot.aside().isPresent())
        .map(pot ->
            Prompt.Option.open(pot.choice(), Words.of("choice.is-pot").and("pot", pot.name())))
        .toList();
  }

  /** What a choice comes to, if it names a pot. */
  Optional<Outcome> chosen(MakerCommand command) {
    if (!(command instanceof MakerCommand.Choose choose)) return Optional.empty();
    return all().stream()
        .filter(pot -> pot.choice().equals(choose.choice()))
        .findFirst()
        .map(pot -> taken(pot, Told.BY_MAKER));
  }

  /** The name of the pot aside that a load is like, if it is like one. */
  Optional<String> nameLike(int scale, Mass load) {
    return like(scale, load).stream()
        .filter(pot -> pot.aside().isPresent())
        .map(Pot::name)
        .findFirst();
  }

  private List<Pot> all() {
    List<Pot> pots = new ArrayList<>();
    for (BatchProgress each : scene.progress().aside())
      pots.add(
          new Pot(POT + each.started().code(), name(each), Optional.of(each), Optional.empty()));
    free().stream()
        .findFirst()
        .ifPresent(share -> pots.add(new Pot(
            NEXT + (share + 1), work().share(share).pot(), Optional.empty(), Optional.of(share))));
    return pots;
  }

  private List<Pot> like(int scale, Mass load) {
    List<Pot> like = new ArrayList<>();
    for (BatchProgress each : scene.progress().aside())
      if (weighsLike(each, scale, load))
        like.add(
            new Pot(POT + each.started().code(), name(each), Optional.of(each), Optional.empty()));
    for (int share : free())
      if (isEmptyPot(work().share(share).pot(), scale, load)) {
        like.add(new Pot(
            NEXT + (share + 1), work().share(share).pot(), Optional.empty(), Optional.of(share)));
        break;
      }
    return like;
  }

  private boolean weighsLike(BatchProgress batch, int scale, Mass load) {
    Optional<GuidanceEvent.PotTared> pot = batch.charge().pot();
    if (pot.isEmpty()) return isEmptyPot(name(batch), scale, load);
    if (pot.get().scale() != scale) return false;
    boolean pouredFrom = batch.course().isAt(Step.FillVessel.class);
    boolean onPan = !pouredFrom && batch.open().isAboutPot();
    Mass left = batch.open().left().filter(noted -> onPan).orElse(batch.charge().gross());
    Mass expected = left.minus(batch.charge().filled());
    Mass off = load.minus(expected).abs();
    Mass allowed = pouredFrom ? expected.times(1, POURED_FROM) : allowed(batch);
    return !off.isMoreThan(allowed) || !scene.pan(scale).differs(off, ZeroShift.STEPS);
  }

  /** As far off as the parts' own tolerances: melting loses a little, and a drip adds a little. */
  static Mass allowed(BatchProgress batch) {
    return batch.charge().inPot().keySet().stream()
        .map(batch.started().recipe().parts()::get)
        .map(Part::tolerance)
        .map(Tolerance::under)
        .reduce(Mass.ZERO, Mass::plus);
  }

  private boolean isEmptyPot(String name, int scale, Mass load) {
    return scene.pots().stream()
        .filter(pot -> pot.name().equals(name))
        .anyMatch(pot -> new PotCheck(load, scene, scene.pan(scale)).fits(pot));
  }

  private Outcome taken(Pot pot, Told told) {
    return pot.aside()
        .map(batch -> Outcome.record(new PotTaken(scene.now(), batch.started().code(), told)))
        .orElseGet(() -> Outcome.record(begun(pot.share().orElseThrow(), told)));
  }

  /** Putting its pot on the scale says that its vessels are set out. */
  private List<GuidanceEvent> begun(int number, Told told) {
    List<GuidanceEvent> events = new ArrayList<>(begin(scene, number));
    if (told == Told.BY_WEIGHT && work().share(number).recipe().fillsVessels())
      events.add(new GuidanceEvent.Prepared(scene.now(), false));
    return events;
  }

  /** The next batch begins, as one pot's share. */
  static List<GuidanceEvent> begin(Scene scene, int number) {
    Work work = scene.progress().work().orElseThrow();
    PotShare share = work.share(number);
    BatchStarted started = new BatchStarted(
        scene.now(),
        Commands.nextCode(scene),
        share.recipe(),
        share.vessels(),
        work.divided().person(),
        work.lots());
    return List.of(started, new ShareBegun(scene.now(), started.code(), number, share.pot()));
  }
}
