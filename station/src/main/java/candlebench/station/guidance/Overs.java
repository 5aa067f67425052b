package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Reading;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Remedies;
import candlebench.station.batch.Remedy;
import candlebench.station.batch.Room;
import candlebench.station.guidance.GuidanceEvent.BatchScrapped;
import candlebench.station.guidance.GuidanceEvent.OverGone;
import candlebench.station.guidance.GuidanceEvent.RemedyChosen;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The ways on from an over-pour, in words, and what choosing one writes down.
 *
 * @param net how much is there
 * @param back whether that is no longer over
 */
record Overs(OverPour stage, Mass net, boolean back, Scene scene) {
  /** Nothing was over: something had rested on the scale, and nothing was taken out. */
  private static final String WAS_TOUCHED = "was-touched";

  private Goal goal() {
    return stage.goal();
  }

  /** Whether what was over lies apart from the rest, so that taking it back takes nothing else with it. */
  static boolean isApart(Goal goal, BatchProgress batch) {
    return goal.byPieces()
        || goal.isVessel()
        || goal.isInCup()
        || batch.charge().inPot().isEmpty();
  }

  Words now() {
    return back
        ? Words.of("now.over-back").and("part", goal().name())
        : Words.of("now.over")
            .and("by", net.minus(goal().target()))
            .and("part", goal().name());
  }

  Words detail() {
    if (goal().isVessel()) return Words.of("detail.over-vessel");
    return isApart(goal(), scene.batch())
        ? Words.of("detail.over-apart")
        : Words.of("detail.over-touched");
  }

  List<Prompt.Option> options() {
    List<Prompt.Option> options = new ArrayList<>();
    if (back) options.add(Prompt.Option.open(WAS_TOUCHED, Words.of("choice.was-touched")));
    for (Remedy remedy : remedies())
      if (!(back && remedy.kind() != Remedy.Kind.KEEP && remedy.kind() != Remedy.Kind.SCRAP))
        options.add(option(remedy));
    return options;
  }

  private Prompt.Option option(Remedy remedy) {
    return new Prompt.Option(
        id(remedy.kind()),
        OverWords.label(remedy.kind(), goal()),
        OverWords.cost(remedy, goal()),
        remedy.whyNot().map(why -> OverWords.whyNot(why, limit())),
        needsReason(remedy.kind()));
  }

  private boolean needsReason(Remedy.Kind kind) {
    boolean keepsMoreOil = kind == Remedy.Kind.KEEP && !goal().isVessel() && !isWax();
    return keepsMoreOil || kind == Remedy.Kind.SCRAP;
  }

  private boolean isWax() {
    return scene.batch().started().recipe().parts().get(goal().place().number()).isWax();
  }

  private Fraction limit() {
    return scene.batch().started().recipe().parts().get(goal().place().number()).limit();
  }

  private List<Remedy> remedies() {
    return switch (goal().place().kind()) {
      case PART, MORE ->
        new Remedies(scene.batch().plan(), inPot(), goal().place().number(), room()).all();
      case VESSEL, SPLIT_OFF -> List.of(plain(Remedy.Kind.TAKE_BACK), plain(Remedy.Kind.KEEP));
    };
  }

  private Remedy plain(Remedy.Kind kind) {
    return new Remedy(
        kind,
        Map.of(),
        net.minus(goal().target()),
        net,
        net.minus(goal().target()),
        Fraction.ZERO,
        Optional.empty());
  }

  private Map<Integer, Mass> inPot() {
    Map<Integer, Mass> there = new TreeMap<>(scene.batch().charge().inPot());
    there.merge(goal().place().number(), net, Mass::plus);
    return there;
  }

  private Room room() {
    String name = scene.batch().charge().pot().orElseThrow().pot();
    Mass inPot = scene.pots().stream()
        .filter(pot -> pot.name().equals(name))
        .map(BenchSetup.Pot::room)
        .findFirst()
        .orElse(Mass.ZERO);
    int scale = scene.batch().charge().pot().orElseThrow().scale();
    Mass capacity = scene.setup().scales().get(scale).capacity().orElse(Mass.ZERO);
    return new Room(scene.batch().charge().tare(), inPot, capacity);
  }

  Outcome chosen(MakerCommand.Choose choose, Reading reading) {
    Optional<Prompt.Option> option =
        options().stream().filter(known -> known.id().equals(choose.choice())).findFirst();
    if (option.isEmpty()) return Outcome.refuse(stage, Words.of("refused.choose"));
    if (option.get().whyNot().isPresent())
      return Outcome.refuse(stage, option.get().whyNot().get());
    if (option.get().needsReason() && choose.reason().isBlank())
      return Outcome.refuse(stage, Words.of("refused.reason-needed"));
    if (choose.choice().equals(WAS_TOUCHED))
      return Outcome.to(
          stage.weighing().again(), new OverGone(scene.now(), goal().place(), net, WAS_TOUCHED));
    Remedy remedy = remedies().stream()
        .filter(known -> id(known.kind()).equals(choose.choice()))
        .findFirst()
        .orElseThrow();
    return carriedOut(remedy, choose.reason(), reading);
  }

  private Outcome carriedOut(Remedy remedy, String reason, Reading reading) {
    RemedyChosen chosen = new RemedyChosen(
        scene.now(),
        goal().place(),
        remedy.kind(),
        reason,
        net.minus(goal().target()),
        remedy.more(),
        remedy.takeOut(),
        remedy.total(),
        remedy.reached());
    return switch (remedy.kind()) {
      case TAKE_BACK -> Outcome.to(stage, chosen);
      case SCRAP -> Outcome.record(chosen, new BatchScrapped(scene.now(), reason));
      case KEEP, ADD_MORE, SPLIT_OFF -> {
        List<GuidanceEvent> events = new ArrayList<>(
            new Taking(goal(), stage.weighing().trace(), scene).settled(reading, reason));
        events.add(chosen);
        yield Outcome.record(events);
      }
    };
  }

  private static String id(Remedy.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
