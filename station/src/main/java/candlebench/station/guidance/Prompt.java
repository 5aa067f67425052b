package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import java.util.List;
import java.util.Optional;

/**
 * What guidance has to say at one moment, in values not yet made text.
 *
 * @param step the kind of step
 * @param now a verb and a thing: what to do
 * @param detail a second line
 * @param cue what the stream should do; with it {@code stopInNanos} where a stop is foreseen, and {@code drops} to go
 * @param weighing the amounts, where something is being weighed
 * @param trouble what stands in the number's place while it may not be trusted
 * @param countIn a settled weight is about to be taken
 * @param confirm what the one large key means now, if anything
 * @param timer a wait that runs
 * @param choices ways on, where one must be chosen
 * @param byHand whether a weight may be entered by hand now
 */
public record Prompt(
    Kind step,
    Words now,
    Optional<Words> detail,
    Cue cue,
    Optional<Long> stopInNanos,
    Optional<Integer> drops,
    Optional<Amounts> weighing,
    Optional<Words> trouble,
    Optional<Running> countIn,
    Optional<Words> confirm,
    Optional<Running> timer,
    List<Option> choices,
    boolean byHand) {

  /** The kinds of step, as a page may tell them apart. */
  public enum Kind {
    IDLE,
    PREPARE,
    PLACE_POT,
    ADD_PART,
    ADD_MORE,
    SPLIT_OFF,
    MELT,
    RETURN_POT,
    MIX,
    PLACE_BOTTLE,
    PLACE_CUP,
    TIP_CUP,
    PLACE_VESSEL,
    FILL_VESSEL,
    LIFT_VESSEL,
    OVER,
    AWAY,
    ASK,
    DONE
  }

  /** The amounts of the weighing at hand, on a scale by its number. */
  public record Amounts(
      String name,
      int scale,
      Mass target,
      Mass under,
      Mass over,
      Optional<Mass> net,
      Trust trust,
      Division division) {
    static Amounts of(Goal goal, Optional<Mass> net, Scene scene) {
      Pan pan = scene.pan(goal.scale());
      return new Amounts(
          goal.name(),
          goal.scale(),
          goal.target(),
          goal.tolerance().under(),
          goal.tolerance().over(),
          net,
          Trust.of(pan, scene.now().nanos()),
          pan.division());
    }
  }

  /** A time that runs out. */
  public record Running(Words what, long remainingNanos, long totalNanos) {}

  /** A way on; closed where {@code whyNot} says so. */
  public record Option(
      String id, Words label, Optional<Words> cost, Optional<Words> whyNot, boolean needsReason) {
    static Option open(String id, Words label) {
      return new Option(id, label, Optional.empty(), Optional.empty(), false);
    }
  }

  static Saying say(Kind step, Words now) {
    return new Saying(step, now);
  }
}
