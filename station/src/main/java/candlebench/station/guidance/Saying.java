package candlebench.station.guidance;

import candlebench.station.guidance.Prompt.Amounts;
import candlebench.station.guidance.Prompt.Kind;
import candlebench.station.guidance.Prompt.Option;
import candlebench.station.guidance.Prompt.Running;
import java.util.List;
import java.util.Optional;

/** Puts a prompt together; what is not said is left out. */
final class Saying {
  private final Kind step;
  private final Words now;
  private Optional<Words> detail = Optional.empty();
  private Cue cue = Cue.NONE;
  private Optional<Long> stopInNanos = Optional.empty();
  private Optional<Integer> drops = Optional.empty();
  private Optional<Amounts> weighing = Optional.empty();
  private Optional<Words> trouble = Optional.empty();
  private Optional<Running> countIn = Optional.empty();
  private Optional<Words> confirm = Optional.empty();
  private Optional<Running> timer = Optional.empty();
  private List<Option> choices = List.of();
  private boolean byHand;

  Saying(Kind step, Words now) {
    this.step = step;
    this.now = now;
  }

  Saying detail(Words words) {
    return detail(Optional.of(words));
  }

  Saying detail(Optional<Words> words) {
    detail = words;
    return this;
  }

  Saying cue(Cue to) {
    cue = to;
    return this;
  }

  Saying stopIn(long nanos) {
    stopInNanos = Optional.of(nanos);
    return this;
  }

  Saying drops(int toGo) {
    drops = Optional.of(toGo);
    return this;
  }

  Saying weighing(Amounts amounts) {
    weighing = Optional.of(amounts);
    return this;
  }

  Saying trouble(Optional<Words> words) {
    trouble = words;
    return this;
  }

  Saying countIn(Optional<Running> running) {
    countIn = running;
    return this;
  }

  Saying confirm(Words label) {
    confirm = Optional.of(label);
    return this;
  }

  Saying timer(Running running) {
    timer = Optional.of(running);
    return this;
  }

  Saying choices(List<Option> ways) {
    choices = ways;
    return this;
  }

  Saying byHand(boolean may) {
    byHand = may;
    return this;
  }

  Prompt prompt() {
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
        choices,
        byHand);
  }
}
