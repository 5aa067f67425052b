package candlebench.shared;

/** What the scale said its number is: with what stands on the pan, or without the tare. Never guessed. */
public enum Basis {
  GROSS,
  NET,
  UNSTATED
}
