package candlebench.station.guidance;

import java.util.List;
import java.util.Optional;

/**
 * What a stage made of an input.
 *
 * @param next the stage after it; empty where that follows from what is recorded
 * @param events what is to be written down
 * @param refused why a command could not be done
 */
record Outcome(Optional<Stage> next, List<GuidanceEvent> events, Optional<Words> refused) {

  /** Nothing to write down. */
  static Outcome to(Stage next) {
    return new Outcome(Optional.of(next), List.of(), Optional.empty());
  }

  /** Something to write down, and a stage that goes on after it. */
  static Outcome to(Stage next, GuidanceEvent... events) {
    return new Outcome(Optional.of(next), List.of(events), Optional.empty());
  }

  static Outcome to(Stage next, List<GuidanceEvent> events) {
    return new Outcome(Optional.of(next), events, Optional.empty());
  }

  /** Something to write down, from which the next stage follows. */
  static Outcome record(List<GuidanceEvent> events) {
    return new Outcome(Optional.empty(), events, Optional.empty());
  }

  static Outcome record(GuidanceEvent... events) {
    return record(List.of(events));
  }

  static Outcome refuse(Stage stage, Words words) {
    return new Outcome(Optional.of(stage), List.of(), Optional.of(words));
  }
}
