package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.VesselLifted;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.GuidanceInput.MakerSaid;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;

/** A filled vessel waits to be lifted off; that it is gone, or that an empty one stands in its place, says so. */
record LiftingVessel(VesselTared vessel) implements Stage {

  @Override
  public Outcome on(GuidanceInput input, Scene scene) {
    VesselLifted lifted = new VesselLifted(scene.now(), vessel.vessel());
    if (input instanceof MakerSaid said)
      return said.command() instanceof MakerCommand.GoOn
          ? Outcome.record(lifted)
          : Outcome.refuse(this, Words.of("refused.lift-vessel"));
    boolean here = input instanceof ReadingArrived arrived && arrived.scale() == vessel.scale();
    return here && (gone(scene) || exchanged(scene)) ? Outcome.record(lifted) : Outcome.to(this);
  }

  private boolean gone(Scene scene) {
    return scene
        .load(vessel.scale())
        .filter(load -> load.isLessThan(vessel.tare().times(1, 2)))
        .isPresent();
  }

  private boolean exchanged(Scene scene) {
    Mass halfFill = scene.batch().started().recipe().vessel().fill().times(1, 2);
    return scene
        .settled(vessel.scale())
        .map(reading -> scene.load(vessel.scale(), reading))
        .filter(load -> load.isLessThan(vessel.tare().plus(halfFill)))
        .isPresent();
  }

  @Override
  public Prompt prompt(Scene scene) {
    return Prompt.say(
            Prompt.Kind.LIFT_VESSEL, Words.of("now.lift-vessel").and("vessel", vessel.vessel() + 1))
        .cue(Cue.WAITING)
        .trouble(scene.trouble(vessel.scale()))
        .confirm(Words.of("confirm.vessel-lifted"))
        .prompt();
  }
}
