package candlebench.station.guidance;

/**
 * What the bench is doing: the part of the state that is built anew after a restart. Each stage is a file of its own with all its
 * rules; what it makes durable it writes down as events.
 */
sealed interface Stage
    permits Idle,
        Preparing,
        PlacingPot,
        Weighing,
        Away,
        PanDiffers,
        OverPour,
        Waiting,
        Returning,
        PlacingBottle,
        PlacingCup,
        TippingCup,
        PlacingVessel,
        LiftingVessel,
        NextPot,
        Finished {

  Outcome on(GuidanceInput input, Scene scene);

  /** What is to be said now. */
  Prompt prompt(Scene scene);
}
