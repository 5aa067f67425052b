package candlebench.station.batch;

import candlebench.shared.Mass;

/**
 * What pot and scale have room for. A tare never adds room: pot and contents together load the scale.
 *
 * @param pot the pot's own weight
 * @param inPot the most it should hold; zero where not known
 * @param onScale the most the scale carries; zero where not known
 */
public record Room(Mass pot, Mass inPot, Mass onScale) {

  boolean potHolds(Mass contents) {
    return inPot.isZero() || !contents.isMoreThan(inPot);
  }

  boolean scaleCarries(Mass contents) {
    return onScale.isZero() || !contents.plus(pot).isMoreThan(onScale);
  }
}
