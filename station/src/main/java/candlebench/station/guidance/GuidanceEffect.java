package candlebench.station.guidance;

/** What is to be done once the events are on disk. */
public sealed interface GuidanceEffect {

  /** The command that asked for it. */
  String commandId();

  /** A command was done. */
  record CommandDone(String commandId) implements GuidanceEffect {}

  /** A command could not be done; the words say why and what to do. */
  record CommandRefused(String commandId, Words words) implements GuidanceEffect {}
}
