package candlebench.station.guidance;

import candlebench.shared.Stamp;
import candlebench.station.batch.PotShare;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.GuidanceEvent.WaitStarted;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How one of several pots stands, for a glance at all of them.
 *
 * @param batch the code of the batch in it; empty where it is still to be begun
 * @param filled how many of its vessels are filled
 * @param timer the wait that runs in it
 */
public record PotStanding(
    String pot,
    String batch,
    Doing doing,
    int vessels,
    int filled,
    Optional<Prompt.Running> timer) {

  /** What a pot is about. */
  public enum Doing {
    /** It is in hand: what is said now is about it. */
    IN_HAND,
    /** Its wax melts, or it is stirred. */
    WAITING,
    /** Its wait is over: it calls. */
    CALLS,
    /** It was left in the middle of something, and can be gone on with. */
    LEFT,
    /** It is still to be begun. */
    TO_COME
  }

  /** All pots, the one in hand first, then those that wait, then those to come; none where one pot makes it all. */
  static List<PotStanding> all(Scene scene) {
    OtherPots others = new OtherPots(scene);
    if (!others.areThere()) return List.of();
    List<PotStanding> all = new ArrayList<>();
    scene.progress().running().ifPresent(own -> all.add(of(own, Doing.IN_HAND, scene)));
    for (BatchProgress each : scene.progress().aside())
      all.add(of(each, doing(each, scene), scene));
    for (int share : scene.progress().toCome()) {
      PotShare next = scene.progress().work().orElseThrow().share(share);
      all.add(new PotStanding(next.pot(), "", Doing.TO_COME, next.vessels(), 0, Optional.empty()));
    }
    return List.copyOf(all);
  }

  private static Doing doing(BatchProgress batch, Scene scene) {
    return batch
        .open()
        .waiting()
        .map(wait -> left(wait, scene.now()) > 0 ? Doing.WAITING : Doing.CALLS)
        .orElse(batch.course().isAt(Step.ReturnPot.class) ? Doing.CALLS : Doing.LEFT);
  }

  private static long left(WaitStarted wait, Stamp now) {
    return Waiting.leftNanos(wait, now);
  }

  private static PotStanding of(BatchProgress batch, Doing doing, Scene scene) {
    int vessels = batch.started().vessels();
    int filled = (int) batch.charge().weights().stream()
        .filter(weight -> weight.place().kind() == Place.Kind.VESSEL)
        .count();
    return new PotStanding(
        new OtherPots(scene).name(batch),
        batch.started().code(),
        doing,
        vessels,
        filled,
        batch.open().waiting().map(wait -> running(wait, scene.now())));
  }

  private static Prompt.Running running(WaitStarted wait, Stamp now) {
    return new Prompt.Running(
        Words.of(wait.what() == Wait.MELT ? "timer.melt" : "timer.mix"),
        Math.max(0, left(wait, now)),
        wait.time().toNanos());
  }
}
