package candlebench.station.guidance.pour;

/** Since when the readings stand still, since when they have not risen, the newest and the highest of them. */
record Still(double since, double unrisen, double newest, double highest) {

  static Still at(double at, double grams) {
    return new Still(at, at, grams, grams);
  }

  Still and(double at, double grams, double offLine, double flow, double grain) {
    boolean moves = Math.abs(flow) > PourWatch.LEAST_STREAM
        || Math.abs(offLine) > 1.6 * grain
        || Math.abs(grams - newest) > 1.1 * grain;
    boolean rises = grams > highest + grain / 2;
    return new Still(
        moves ? at : since, moves || rises ? at : unrisen, grams, Math.max(highest, grams));
  }

  /** Standing still counts anew from a moment; that nothing rose does not. */
  Still anew(double at) {
    return new Still(at, unrisen, newest, newest);
  }

  boolean lasted(double at, double seconds) {
    return at - since >= seconds;
  }
}
