package candlebench.station.guidance;

/** How the mix that is left stands to the vessels that are left, from good to bad. */
public enum MixStanding {
  /** Each gets about its fill weight. */
  ENOUGH,
  /** Each gets evenly less, within its tolerance. */
  EVENLY_LESS,
  /** Not all can be filled, even at the least that their tolerance allows. */
  TOO_LITTLE
}
