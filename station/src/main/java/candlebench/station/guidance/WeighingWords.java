package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.batch.Step;
import candlebench.station.guidance.pour.PourCue;
import java.util.Optional;

/** What is said while something is weighed. */
record WeighingWords(Weighing weighing, Scene scene) {
  /** Half a usual piece: a piece that can be trimmed has 2 to 20 g (common practice, no source). */
  private static final Mass ABOUT_ONE_PIECE = Mass.ofGrams("20");

  Prompt prompt(boolean mayBeTakenShort) {
    Goal goal = weighing.goal();
    Optional<Mass> net = scene.load(goal.scale()).map(goal::net);
    Saying saying = Prompt.say(step(goal), now(goal))
        .weighing(Prompt.Amounts.of(goal, net, scene))
        .trouble(scene.trouble(goal.scale()))
        .detail(detail(net))
        .byHand(net.isEmpty())
        .countIn(scene.countIn(weighing.countIn(), Words.of("count-in.weight")));
    if (mayBeTakenShort) saying.confirm(Words.of("confirm.take-short"));
    cue(saying, net);
    return saying.prompt();
  }

  static Prompt.Kind step(Goal goal) {
    return switch (goal.place().kind()) {
      case PART -> Prompt.Kind.ADD_PART;
      case MORE -> Prompt.Kind.ADD_MORE;
      case SPLIT_OFF -> Prompt.Kind.SPLIT_OFF;
      case VESSEL -> Prompt.Kind.FILL_VESSEL;
    };
  }

  private Words now(Goal goal) {
    return switch (goal.place().kind()) {
      case PART ->
        switch (goal.way()) {
          case BY_PIECES -> Words.of("now.add-pieces").and("part", goal.name());
          case POURED -> Words.of("now.pour").and("part", goal.name());
          case IN_CUP -> Words.of("now.pour-in-cup").and("part", goal.name());
          case FROM_BOTTLE -> Words.of("now.from-bottle").and("part", goal.name());
        };
      case MORE ->
        goal.isFromBottle()
            ? Words.of("now.from-bottle").and("part", goal.name())
            : Words.of("now.add-more").and("part", goal.name());
      case SPLIT_OFF -> Words.of("now.take-out");
      case VESSEL ->
        Words.of("now.fill")
            .and("vessel", goal.place().number() + 1)
            .and("of", scene.batch().started().vessels());
    };
  }

  /** The newest thing worth knowing, one at a time. */
  private Optional<Words> detail(Optional<Mass> net) {
    Goal goal = weighing.goal();
    Pan pan = scene.pan(goal.scale());
    if (pan.last().filter(reading -> reading.unitAssumed()).isPresent())
      return Optional.of(Words.of("detail.unit-assumed"));
    if (weighing.leap().pending()) return Optional.of(Words.of("detail.touched"));
    if (weighing.held().yes()) return Optional.of(Words.of("detail.taken-back"));
    if (goal.byPieces() && net.filter(this::aboutOnePiece).isPresent())
      return Optional.of(Words.of("detail.one-piece"));
    if (goal.isVessel()) return vesselDetail();
    return followsWax();
  }

  private boolean aboutOnePiece(Mass net) {
    Mass toGo = weighing.goal().target().minus(net);
    return toGo.isMoreThan(weighing.goal().tolerance().under()) && toGo.isLessThan(ABOUT_ONE_PIECE);
  }

  private Optional<Words> vesselDetail() {
    BatchProgress batch = scene.batch();
    if (Fills.standing(batch) == MixStanding.TOO_LITTLE)
      return Optional.of(Words.of("detail.mix-short").and("left", batch.mixLeft()));
    Mass usual = batch.started().recipe().vessel().fill();
    return scene.pan(weighing.goal().scale()).differs(weighing.goal().target().minus(usual), 0)
        ? Optional.of(Words.of("detail.even-fill").and("usual", usual))
        : Optional.empty();
  }

  /** Why the target is not the planned one: it follows the wax that is really there. */
  private Optional<Words> followsWax() {
    BatchProgress batch = scene.batch();
    if (!batch.course().isAt(Step.AddPart.class)) return Optional.empty();
    Mass planned = batch.plan().targets().get(weighing.goal().place().number());
    return scene.pan(weighing.goal().scale()).differs(weighing.goal().target().minus(planned), 0)
        ? Optional.of(Words.of("detail.follows-wax").and("planned", planned))
        : Optional.empty();
  }

  private void cue(Saying saying, Optional<Mass> net) {
    if (net.isEmpty() || weighing.leap().pending()) saying.cue(Cue.WAITING);
    else if (weighing.goal().byPieces()) saying.cue(pieces(net.get()));
    else poured(saying, weighing.watch(net.get(), scene).cue(scene.now().nanos()));
  }

  private Cue pieces(Mass net) {
    return switch (weighing
        .goal()
        .tolerance()
        .judge(weighing.goal().target(), net, scene.pan(weighing.goal().scale()).division())) {
      case UNDER -> Cue.PIECES;
      case WITHIN -> Cue.HOLD_STILL;
      case OVER -> Cue.STOP;
    };
  }

  private static void poured(Saying saying, PourCue cue) {
    switch (cue.kind()) {
      case POUR -> saying.cue(Cue.POUR);
      case SLOW -> saying.cue(Cue.SLOW);
      case STOP -> saying.cue(Cue.STOP);
      case DROPS -> saying.cue(Cue.DROPS).drops(cue.drops());
      case HOLD_STILL -> saying.cue(Cue.HOLD_STILL);
    }
    if (cue.stopInNanos() >= 0) saying.stopIn(cue.stopInNanos());
  }
}
