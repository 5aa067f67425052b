package candlebench.station.guidance;

/** No batch runs. */
record Idle() implements Stage {

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    return input instanceof GuidanceInput.MakerSaid
        ? Outcome.refuse(this, Words.of("refused.no-batch"))
        : Outcome.to(this);
  }

  @Override
  public Prompt prompt(Scene scene) {
    return Prompt.say("IDLE", Words.of("now.idle"));
  }
}
