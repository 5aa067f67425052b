package candlebench.station;

import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.CommandTaken;
import candlebench.station.guidance.GuidanceState;
import candlebench.station.guidance.GuidanceStep;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.journal.CommandJson;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The part of the loop that can be played again: from what reaches the bench to what it would do, given what it knows. Nothing here
 * touches disk, wire or clock. One thread at a time.
 */
final class Guide {
  private final StationConfig config;
  private Inputs inputs;
  private GuidanceState state;

  Guide(StationConfig config, BenchProgress progress) {
    this.config = config;
    this.inputs = new Inputs(config.scales());
    this.state = GuidanceState.resume(config.setup(), progress);
  }

  GuidanceState state() {
    return state;
  }

  Inputs inputs() {
    return inputs;
  }

  /** What an intake would do; empty where it means nothing to guidance. It is done by {@link #take}. */
  Optional<GuidanceStep> step(Intake intake) {
    return inputs.of(intake).map(input -> marked(intake, state.on(input)));
  }

  void take(GuidanceStep step) {
    state = step.next();
  }

  /** Forgets what only lives, as a restart does, and keeps what was recorded. */
  void forget() {
    inputs = new Inputs(config.scales());
    state = GuidanceState.resume(config.setup(), state.progress());
  }

  /** A command that is written down leaves its id there; one by the scale's own key is called after that. */
  static GuidanceStep marked(Intake intake, GuidanceStep step) {
    Optional<CommandTaken> taken = command(intake);
    if (taken.isEmpty() || step.events().isEmpty()) return step;
    List<GuidanceEvent> events = new ArrayList<>();
    events.add(taken.get());
    events.addAll(step.events());
    return new GuidanceStep(step.next(), events, step.effects());
  }

  private static Optional<CommandTaken> command(Intake intake) {
    if (intake instanceof Intake.Said said)
      return Optional.of(
          new CommandTaken(said.stamp(), said.commandId(), CommandJson.kind(said.command())));
    if (intake instanceof Intake.PrintKeyPressed print) {
      String id = "print-key-" + print.scale() + "-" + print.stamp().nanos();
      return Optional.of(
          new CommandTaken(print.stamp(), id, CommandJson.kind(new MakerCommand.GoOn())));
    }
    return Optional.empty();
  }
}
