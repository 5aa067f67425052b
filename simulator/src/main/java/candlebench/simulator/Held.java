package candlebench.simulator;

import candlebench.shared.Mass;

/**
 * A thing in a maker's hands, with all that is in it.
 *
 * @param hot whether a reading walks while it stands on a pan
 */
public record Held(String thing, Mass mass, boolean hot) {}
