package candlebench.station.guidance;

import candlebench.shared.Mass;
import candlebench.shared.Stamp;
import candlebench.station.batch.BatchPlan;
import candlebench.station.batch.Remedy;
import candlebench.station.batch.Step;
import candlebench.station.batch.Way;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.BottleWeighed;
import candlebench.station.guidance.GuidanceEvent.CupTared;
import candlebench.station.guidance.GuidanceEvent.OverPoured;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.RemedyChosen;
import candlebench.station.guidance.GuidanceEvent.VesselTared;
import candlebench.station.guidance.GuidanceEvent.WaitStarted;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How far a batch has come.
 *
 * @param started what it began with, and the lots in use now
 * @param course where it is in its steps
 * @param charge what is in the pot, and what was weighed
 * @param open what is open within the step at hand
 * @param mix how the mix left stood to the vessels left, as it was last said
 * @param spilt mix that was spilt, as far as its amount is known
 * @param undo what the last step was, and what was known before it
 */
public record BatchProgress(
    BatchStarted started,
    Course course,
    Charge charge,
    Open open,
    MixStanding mix,
    Mass spilt,
    Optional<Undo> undo,
    End end) {

  /** Whether it runs, and how it ended. */
  public enum End {
    RUNNING,
    DONE,
    SCRAPPED,
    ABANDONED
  }

  /** The last step that may be taken back. */
  public record Undo(Stamp at, String what, BatchProgress before) {}

  static BatchProgress begin(BatchStarted started) {
    BatchPlan plan = new BatchPlan(started.recipe(), started.vessels());
    return new BatchProgress(
        started,
        new Course(plan.steps(), 0),
        Charge.EMPTY,
        Open.NOTHING,
        MixStanding.ENOUGH,
        Mass.ZERO,
        Optional.empty(),
        End.RUNNING);
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
    return Goals.of(this);
  }

  /** The mix that is left for vessels. */
  public Mass mixLeft() {
    return charge.contents().minus(charge.filled()).minus(spilt);
  }

  /** Vessels that are still to be filled, the one at hand included. */
  public int vesselsLeft() {
    return course.left(Step.FillVessel.class);
  }

  /** Whether a vessel was left out for want of mix. */
  public boolean isLeftOut(int vessel) {
    return !course.steps().contains(new Step.FillVessel(vessel));
  }

  BatchProgress said(MixStanding standing) {
    return new BatchProgress(started, course, charge, open, standing, spilt, undo, end);
  }

  /** What was spilt lasts, even where the step before it is taken back. */
  BatchProgress spilt(Mass amount) {
    return new BatchProgress(
        started,
        course,
        charge,
        open,
        mix,
        spilt.plus(amount),
        undo.map(step -> new Undo(step.at(), step.what(), step.before().spilt(amount))),
        end);
  }

  BatchProgress leftOut(int vessels) {
    return at(course.withoutLast(vessels), charge, open).said(MixStanding.ENOUGH);
  }

  BatchProgress undoable(Stamp at, String what) {
    BatchProgress before =
        new BatchProgress(started, course, charge, open, mix, spilt, Optional.empty(), end);
    return new BatchProgress(
        started, course, charge, open, mix, spilt, Optional.of(new Undo(at, what, before)), end);
  }

  BatchProgress prepared() {
    return at(course.next(), charge, Open.NOTHING);
  }

  /** A pot tared again within a later step, before anything is in it, leaves the step as it is. */
  BatchProgress tared(PotTared tared) {
    Course then = course.isAt(Step.PlacePot.class) ? course.next() : course;
    return at(then, charge.tared(tared), Open.NOTHING);
  }

  BatchProgress accepted(WeightAccepted weight) {
    return weight.place().kind() == Place.Kind.VESSEL
        ? at(course, charge.accepted(weight), open.vesselFilled())
        : at(course.next(), charged(weight), open.cup().map(Open::cup).orElse(Open.NOTHING));
  }

  private Charge charged(WeightAccepted weight) {
    boolean elsewhere = open.bottle().isPresent() || open.cup().isPresent();
    return elsewhere ? charge.fromElsewhere(weight) : charge.accepted(weight);
  }

  BatchProgress reweighed(Mass gross) {
    Course then = course.isAt(Step.ReturnPot.class) ? course.next() : course;
    return at(then, charge.reweighed(gross), Open.NOTHING);
  }

  /** What stands on the pan is right, though it is less than before the part at hand. */
  BatchProgress rebased(Mass gross) {
    return open.isAboutPot() ? at(course, charge.reweighed(gross), open) : this;
  }

  BatchProgress left(Mass gross) {
    return at(course, charge, open.left(gross));
  }

  BatchProgress reweighSkipped() {
    return at(course.next(), charge.notWeighed(), Open.NOTHING);
  }

  BatchProgress vessel(VesselTared tared) {
    return at(course, charge, Open.vessel(tared));
  }

  BatchProgress bottle(BottleWeighed weighed) {
    return at(course, charge, Open.bottle(weighed));
  }

  /** A bottle that may be another is known by what the first was left with. */
  BatchProgress askedAt(Mass gross) {
    return open.bottle().isPresent() ? left(gross) : this;
  }

  /** Another bottle stands where the first was left. */
  BatchProgress otherBottle(Mass gross) {
    return open.bottle()
        .flatMap(bottle -> open.left().map(left -> bottle.followedBy(left, gross)))
        .map(this::bottle)
        .orElse(this);
  }

  BatchProgress cup(CupTared tared) {
    return at(course, charge, Open.cup(tared));
  }

  BatchProgress tipped(int part, Mass stayed) {
    return at(course.next(), charge.clung(part, stayed), Open.NOTHING);
  }

  BatchProgress vesselLifted() {
    return at(course.next(), charge, Open.NOTHING);
  }

  BatchProgress waiting(WaitStarted wait) {
    return at(course, charge, open.waiting(wait));
  }

  BatchProgress waited() {
    return at(course.next(), charge, Open.NOTHING);
  }

  BatchProgress over(OverPoured over) {
    return at(course, charge, open.over(Optional.of(over)));
  }

  BatchProgress overGone() {
    return at(course, charge, open.over(Optional.empty()));
  }

  /** Comes right after the weight was taken as it is, so that taking it back takes the remedy back too. */
  BatchProgress remedied(RemedyChosen chosen) {
    List<Step> more = new ArrayList<>();
    if (chosen.remedy() == Remedy.Kind.SPLIT_OFF) {
      more.add(new Step.Mix(started.recipe().waits().mix()));
      more.add(new Step.SplitOff(chosen.takeOut()));
    }
    for (int part : chosen.more().keySet().stream().sorted().toList()) {
      more.add(new Step.AddMore(part, chosen.place().number()));
      if (started.recipe().parts().get(part).way() == Way.IN_CUP) more.add(new Step.TipCup(part));
    }
    boolean tipsFirst = course.isAt(Step.TipCup.class);
    return at(tipsFirst ? course.second(more) : course.first(more), charge, open);
  }

  BatchProgress takenBack() {
    return undo.map(Undo::before)
        .map(before -> before.at(before.course, before.charge, before.open.heldBack()))
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
        open,
        mix,
        spilt,
        undo.map(step -> new Undo(step.at(), step.what(), step.before().takingFrom(material, lot))),
        end);
  }

  BatchProgress ended(End how) {
    return new BatchProgress(started, course, charge, open, mix, spilt, undo, how);
  }

  private BatchProgress at(Course nextCourse, Charge nextCharge, Open nextOpen) {
    return new BatchProgress(started, nextCourse, nextCharge, nextOpen, mix, spilt, undo, end);
  }
}
