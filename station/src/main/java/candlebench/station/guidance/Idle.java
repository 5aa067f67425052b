package candlebench.station.guidance;

/** No batch was ever begun here. */
record Idle() implements Stage {

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    return input instanceof GuidanceInput.MakerSaid
        ? Outcome.refuse(this, Words.of("refused.no-batch"))
        : Outcome.to(this);
  }

  @Override
  public Prompt prompt(Scene scene) {
    return Prompt.say(Prompt.Kind.IDLE, Words.of("now.idle")).prompt();
  }
}
