package candlebench.station.guidance;

import candlebench.shared.Reading;

/** How far the number on the page may be trusted. */
public enum Trust {
  LIVE,
  MOVING,
  ASSUMED,
  STALE,
  NONE;

  static Trust of(Pan pan, long nanos) {
    if (pan.last().isEmpty() || pan.none().isPresent()) return NONE;
    Reading last = pan.last().get();
    if (pan.fresh(nanos).isEmpty()) return STALE;
    if (last.unitAssumed()) return ASSUMED;
    return pan.steady().filter(Steady::settled).isPresent() ? LIVE : MOVING;
  }
}
