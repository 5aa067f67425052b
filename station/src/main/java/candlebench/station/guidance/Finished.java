package candlebench.station.guidance;

/** The batch has ended; its weights are all on record. */
record Finished() implements Stage {

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    return input instanceof GuidanceInput.MakerSaid
        ? Outcome.refuse(this, Words.of("refused.no-batch"))
        : Outcome.to(this);
  }

  @Override
  public Prompt prompt(Scene scene) {
    return Prompt.say("DONE", Words.of("now.done"));
  }
}
