package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.Remedy;
import java.util.Optional;

/** How the remedies of an over-pour are called, what they cost, and why one is closed. */
final class OverWords {

  private OverWords() {}

  static Words label(Remedy.Kind kind, Goal goal) {
    return switch (kind) {
      case KEEP -> Words.of("choice.keep");
      case ADD_MORE -> Words.of("choice.add-more");
      case TAKE_BACK ->
        goal.isVessel() ? Words.of("choice.pour-back") : Words.of("choice.take-back");
      case SPLIT_OFF -> Words.of("choice.split-off");
      case SCRAP -> Words.of("choice.scrap");
    };
  }

  static Optional<Words> cost(Remedy remedy, Goal goal) {
    return switch (remedy.kind()) {
      case KEEP ->
        Optional.of(
            remedy.reached().isZero() || remedy.reached().compareTo(Fraction.ONE) >= 0
                ? Words.of("cost.keep").and("over", remedy.surplus())
                : Words.of("cost.keep-load").and("load", remedy.reached()));
      case ADD_MORE ->
        remedy.more().isEmpty()
            ? Optional.empty()
            : Optional.of(Words.of("cost.add-more")
                .and("more", sum(remedy))
                .and("total", remedy.total())
                .and("surplus", remedy.surplus()));
      case TAKE_BACK ->
        Optional.of(
            Words.of("cost.take-back").and("out", remedy.takeOut()).and("part", goal.name()));
      case SPLIT_OFF ->
        Optional.of(
            Words.of("cost.split-off").and("out", remedy.takeOut()).and("more", sum(remedy)));
      case SCRAP -> Optional.empty();
    };
  }

  static Words whyNot(Remedy.WhyNot why, Fraction limit) {
    return switch (why) {
      case OVER_LIMIT -> Words.of("closed.over-limit").and("limit", limit);
      case POT_TOO_SMALL -> Words.of("closed.pot-too-small");
      case SCALE_TOO_SMALL -> Words.of("closed.scale-too-small");
      case ALREADY_IN_POT -> Words.of("closed.already-in-pot");
      case NOTHING_TO_ADD -> Words.of("closed.nothing-to-add");
      case NOT_MIXED -> Words.of("closed.not-mixed");
    };
  }

  private static Mass sum(Remedy remedy) {
    return remedy.more().values().stream().reduce(Mass.ZERO, Mass::plus);
  }
}
