package candlebench.station.guidance;

import java.util.List;

/**
 * What an input did: the state after it, what is to be written down before anyone is told, and what is to be done after that.
 */
public record GuidanceStep(
    GuidanceState next, List<GuidanceEvent> events, List<GuidanceEffect> effects) {

  public GuidanceStep {
    events = List.copyOf(events);
    effects = List.copyOf(effects);
  }
}
