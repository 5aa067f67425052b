package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.station.batch.Load;

/**
 * What the same figure would be if it were meant the other way, the rest of the recipe unchanged. Both are in print for the same words.
 *
 * @param wax all the wax there would be
 */
public record OtherMeaning(Load load, Mass part, Mass wax) {}
