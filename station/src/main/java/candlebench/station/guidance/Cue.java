package candlebench.station.guidance;

/** What the stream, or the hand with the pieces, should do now. */
public enum Cue {
  NONE,
  POUR,
  SLOW,
  STOP,
  DROPS,
  PIECES,
  HOLD_STILL,
  OVER,
  WAITING
}
