package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Stamp;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.Part;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.pour.PourKind;
import java.util.Optional;

/**
 * How far a batch has come.
 *
 * @param started what it began with, and the lots in use now
 * @param held whether the goal was weighed before and taken back, so that the same weight is not simply taken again
 * @param undo what the last step was, and what was known before it
 */
public record BatchProgress(
    BatchStarted started,
    Course course,
    Charge charge,
    boolean held,
    Optional<Undo> undo,
    End end) {

  /** Whether it runs, and how it ended. */
  public enum End {
    RUNNING,
    DONE,
    ABANDONED
  }

  /** The last step that may be taken back. */
  public record Undo(Stamp at, String what, BatchProgress before) {}

  static BatchProgress begin(BatchStarted started) {
    BatchPlan plan = new BatchPlan(started.recipe(), started.vessels());
    return new BatchProgress(
        started, new Course(plan.steps(), 0), Charge.EMPTY, false, Optional.empty(), End.RUNNING);
  }

  public BatchPlan plan() {
    return new BatchPlan(started.recipe(), started.vessels());
  }

  public boolean runs() {
    return end == End.RUNNING;
  }

  /** The step at hand; none once all are done. */
  public Optional<Step> step() {
    return course.step();
  }

  /** What is to be weighed now, if the step at hand is a weighing and its container's own weight is known. */
  public Optional<Goal> goal() {
    return step().flatMap(step -> {
      if (step instanceof Step.AddPart add)
        return charge
            .pot()
            .map(pot -> partGoal(
                pot,
                new Place(Place.Kind.PART, add.part()),
                plan().target(add.part(), charge.inPot())));
      return Optional.empty();
    });
  }

  private Goal partGoal(PotTared pot, Place place, Mass target) {
    Part part = started.recipe().parts().get(place.number());
    PourKind kind = part.kind() == PartKind.WAX ? PourKind.WAX : PourKind.OIL;
    return new Goal(
        place,
        part.name(),
        pot.scale(),
        pot.tare(),
        charge.gross(),
        target,
        part.tolerance(),
        part.way(),
        kind);
  }

  BatchProgress undoable(Stamp at, String what) {
    BatchProgress before = new BatchProgress(started, course, charge, held, Optional.empty(), end);
    return new BatchProgress(
        started, course, charge, held, Optional.of(new Undo(at, what, before)), end);
  }

  BatchProgress tared(PotTared tared) {
    return new BatchProgress(started, course.next(), charge.tared(tared), false, undo, end);
  }

  BatchProgress accepted(WeightAccepted weight) {
    return new BatchProgress(started, course.next(), charge.accepted(weight), false, undo, end);
  }

  BatchProgress takenBack() {
    return undo.map(Undo::before)
        .map(before -> new BatchProgress(
            before.started, before.course, before.charge, true, Optional.empty(), before.end))
        .orElse(this);
  }

  BatchProgress reopened() {
    return undo.map(Undo::before).orElse(this);
  }

  /** A change of lot lasts, even where the step before it is taken back. */
  BatchProgress takingFrom(String material, String lot) {
    return new BatchProgress(
        started.takingFrom(material, lot),
        course,
        charge,
        held,
        undo.map(step -> new Undo(step.at(), step.what(), step.before().takingFrom(material, lot))),
        end);
  }

  BatchProgress ended(End how) {
    return new BatchProgress(started, course, charge, held, undo, how);
  }
}
