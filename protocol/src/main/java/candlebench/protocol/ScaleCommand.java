package candlebench.protocol;

/** What a host may ask of a scale, in the trade's words. Each format says how, or that it cannot. */
public enum ScaleCommand {
  /** Send the weight now, at rest or not. */
  SEND,
  /** Send the weight once it is stable. */
  SEND_STABLE,
  /** Send weights continuously from now on. */
  SEND_CONTINUOUSLY,
  /** Stop sending continuously. */
  STOP_SENDING,
  TARE,
  ZERO
}
