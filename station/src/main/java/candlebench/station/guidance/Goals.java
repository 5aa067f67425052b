package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Part;
import candlebench.station.batch.Step;
import candlebench.station.batch.VesselKind;
import candlebench.station.batch.Way;
import candlebench.station.guidance.GuidanceEvent.BottleWeighed;
import candlebench.station.guidance.GuidanceEvent.CupTared;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.pour.PourKind;
import java.util.Optional;

/** From the step at hand to its target: every target follows from what is really there. */
final class Goals {

  private Goals() {}

  static Optional<Goal> of(BatchProgress batch) {
    return batch.step().flatMap(step -> {
      if (step instanceof Step.FillVessel fill)
        return batch.open().filled()
            ? Optional.empty()
            : batch.open().vessel().map(tared -> vessel(batch, fill.vessel(), tared));
      return batch.charge().pot().flatMap(pot -> ofPot(batch, step, pot));
    });
  }

  private static Optional<Goal> ofPot(BatchProgress batch, Step step, PotTared pot) {
    return intoPot(batch, step, pot).flatMap(goal -> {
      if (goal.isInCup()) return batch.open().cup().map(cup -> into(cup, goal));
      return goal.isFromBottle()
          ? batch.open().bottle().map(bottle -> outOf(bottle, goal))
          : Optional.of(goal);
    });
  }

  /** The same amount of the same part, into the cup on its scale. */
  private static Goal into(CupTared cup, Goal goal) {
    return new Goal(
        goal.place(),
        goal.name(),
        cup.scale(),
        cup.tare(),
        cup.tare(),
        Goal.Direction.IN,
        goal.target(),
        goal.tolerance(),
        goal.way(),
        goal.kind());
  }

  /** The same amount of the same part, by what its bottle loses. */
  private static Goal outOf(BottleWeighed bottle, Goal goal) {
    Mass stays = bottle.gross().minus(goal.target());
    return new Goal(
        goal.place(),
        goal.name(),
        bottle.scale(),
        stays.times(1, 2),
        bottle.gross(),
        Goal.Direction.OUT,
        goal.target(),
        goal.tolerance(),
        goal.way(),
        PourKind.TAP);
  }

  /** What the step at hand wants in the pot, however it is weighed. */
  static Optional<Goal> intoPot(BatchProgress batch) {
    return batch
        .step()
        .flatMap(step -> batch.charge().pot().flatMap(pot -> intoPot(batch, step, pot)));
  }

  private static Optional<Goal> intoPot(BatchProgress batch, Step step, PotTared pot) {
    if (step instanceof Step.AddPart add)
      return Optional.of(part(
          batch,
          pot,
          new Place(Place.Kind.PART, add.part()),
          batch.plan().target(add.part(), batch.charge().inPot())));
    if (step instanceof Step.AddMore more)
      return Optional.of(part(
          batch,
          pot,
          new Place(Place.Kind.MORE, more.part()),
          batch.plan().lacking(more.part(), more.over(), batch.charge().inPot())));
    if (step instanceof Step.SplitOff split)
      return Optional.of(splitOff(batch, pot, split.amount()));
    return Optional.empty();
  }

  private static Goal part(BatchProgress batch, PotTared pot, Place place, Mass target) {
    Part part = batch.started().recipe().parts().get(place.number());
    return new Goal(
        place,
        part.name(),
        pot.scale(),
        batch.charge().tare(),
        batch.charge().gross(),
        Goal.Direction.IN,
        target,
        part.tolerance(),
        part.way(),
        part.isWax() ? PourKind.WAX : PourKind.OIL);
  }

  /** What is taken out need not be exact: what is added after it follows from what is really left. */
  private static Goal splitOff(BatchProgress batch, PotTared pot, Mass amount) {
    Mass allowed = amount.times(1, 20);
    return new Goal(
        new Place(Place.Kind.SPLIT_OFF, 0),
        batch.started().recipe().name(),
        pot.scale(),
        batch.charge().tare(),
        batch.charge().gross(),
        Goal.Direction.OUT,
        amount,
        new Tolerance(allowed, allowed),
        Way.BY_PIECES,
        PourKind.WAX);
  }

  private static Goal vessel(BatchProgress batch, int number, VesselTared tared) {
    VesselKind kind = batch.started().recipe().vessel();
    return new Goal(
        new Place(Place.Kind.VESSEL, number),
        kind.name(),
        tared.scale(),
        tared.tare(),
        tared.tare(),
        Goal.Direction.IN,
        Fills.target(batch),
        Fills.tolerance(batch),
        Way.POURED,
        PourKind.VESSEL);
  }
}
