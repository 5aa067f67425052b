package candlebench.station.guidance;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import java.util.List;
import java.util.Optional;

/**
 * What guidance has to say at one moment, in values not yet made text.
 *
 * @param step the kind of step, such as {@code ADD_PART}
 * @param now a verb and a thing: what to do
 * @param detail a second line
 * @param cue what the stream should do; with it {@code stopInNanos} where a stop is foreseen, and {@code drops} to go
 * @param weighing the amounts, where something is being weighed
 * @param trouble what stands in the number's place while it may not be trusted
 * @param countIn a settled weight is about to be taken
 * @param confirm what the one large key means now, if anything
 * @param timer a wait that runs
 * @param choices ways on, where one must be chosen
 */
public record Prompt(
    String step,
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
    List<Option> choices) {

  /** The amounts of the weighing at hand. */
  public record Amounts(
      String name, Goal goal, Optional<Mass> net, Trust trust, Division division) {}

  /** A time that runs out. */
  public record Running(Words what, long remainingNanos, long totalNanos) {}

  /** A way on. */
  public record Option(
      String id, Words label, Optional<Words> cost, Optional<Words> whyNot, boolean needsReason) {}

  static Prompt say(String step, Words now) {
    return new Prompt(
        step,
        now,
        Optional.empty(),
        Cue.NONE,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  Prompt detail(Words words) {
    return new Prompt(
        step,
        now,
        Optional.of(words),
        cue,
        stopInNanos,
        drops,
        weighing,
        trouble,
        countIn,
        confirm,
        timer,
        choices);
  }

  Prompt cue(Cue to) {
    return cue(to, Optional.empty(), Optional.empty());
  }

  Prompt cue(Cue to, Optional<Long> stopIn, Optional<Integer> dropsToGo) {
    return new Prompt(
        step, now, detail, to, stopIn, dropsToGo, weighing, trouble, countIn, confirm, timer,
        choices);
  }

  Prompt weighing(Amounts amounts) {
    return new Prompt(
        step,
        now,
        detail,
        cue,
        stopInNanos,
        drops,
        Optional.of(amounts),
        trouble,
        countIn,
        confirm,
        timer,
        choices);
  }

  Prompt trouble(Optional<Words> words) {
    return new Prompt(
        step,
        now,
        detail,
        cue,
        stopInNanos,
        drops,
        weighing,
        words,
        countIn,
        confirm,
        timer,
        choices);
  }

  Prompt countIn(Optional<Running> running) {
    return new Prompt(
        step,
        now,
        detail,
        cue,
        stopInNanos,
        drops,
        weighing,
        trouble,
        running,
        confirm,
        timer,
        choices);
  }

  Prompt confirm(Words label) {
    return new Prompt(
        step,
        now,
        detail,
        cue,
        stopInNanos,
        drops,
        weighing,
        trouble,
        countIn,
        Optional.of(label),
        timer,
        choices);
  }

  Prompt timer(Running running) {
    return new Prompt(
        step,
        now,
        detail,
        cue,
        stopInNanos,
        drops,
        weighing,
        trouble,
        countIn,
        confirm,
        Optional.of(running),
        choices);
  }

  Prompt choices(List<Option> ways) {
    return new Prompt(
        step,
        now,
        detail,
        cue,
        stopInNanos,
        drops,
        weighing,
        trouble,
        countIn,
        confirm,
        timer,
        ways);
  }
}
