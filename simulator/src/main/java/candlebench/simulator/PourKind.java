package candlebench.simulator;

/**
 * How a liquid comes out of what it is poured from.
 *
 * <p>Hand pours of five brews in published logs (miharekar/visualizer, MIT; mortenfyhn/coffee-scales, GPL-3.0: figures only) ran at a
 * median of 4.1, 7.9 and 11.8 g/s (10 %, 50 %, 90 % of 13 pours): water from a kettle, taken here for oil from an open bottle. Wax:
 * 10 to 30 g/s in bulk and 2 to 5 g/s when finishing, common practice, no source.
 */
public enum PourKind {
  OIL_BOTTLE(7.9, 0.38, 4, 14, 0.4, 1.5),
  WAX_PITCHER(17, 0.30, 10, 30, 2, 5);

  final double freeMedian;
  final double freeSpread;
  final double freeLeast;
  final double freeMost;
  final double thinLeast;
  final double thinMost;

  PourKind(
      double freeMedian,
      double freeSpread,
      double freeLeast,
      double freeMost,
      double thinLeast,
      double thinMost) {
    this.freeMedian = freeMedian;
    this.freeSpread = freeSpread;
    this.freeLeast = freeLeast;
    this.freeMost = freeMost;
    this.thinLeast = thinLeast;
    this.thinMost = thinMost;
  }
}
