package candlebench.station.guidance;

import candlebench.station.batch.Recipe;
import java.time.Duration;
import java.util.Optional;

/** The batch has ended; its weights are all on record. What is left are reminders. */
record Finished() implements Stage {

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    return input instanceof GuidanceInput.MakerSaid
        ? Outcome.refuse(this, Words.of("refused.no-batch"))
        : Outcome.to(this);
  }

  @Override
  public Prompt prompt(Scene scene) {
    return Prompt.say(Prompt.Kind.DONE, now(scene.batch().end()))
        .detail(reminder(scene.batch()))
        .prompt();
  }

  private static Words now(BatchProgress.End end) {
    return switch (end) {
      case RUNNING, DONE -> Words.of("now.done");
      case SCRAPPED -> Words.of("now.scrapped");
      case ABANDONED -> Words.of("now.abandoned");
    };
  }

  /** Set 24 h before moving or trimming, trim a wick to 3/16 in: common practice, no source; the recipe's own figures are shown. */
  private static Optional<Words> reminder(BatchProgress batch) {
    Recipe recipe = batch.started().recipe();
    Duration set = recipe.waits().set();
    if (batch.end() != BatchProgress.End.DONE || set.isZero()) return Optional.empty();
    Words words = recipe.trim().isEmpty()
        ? Words.of("detail.let-set")
        : Words.of("detail.let-set-and-trim").and("trim", recipe.trim());
    return Optional.of(words.and("hours", set.toHours()));
  }
}
