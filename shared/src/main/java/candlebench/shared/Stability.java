package candlebench.shared;

/** What the scale said about rest. Never guessed; a scale that says nothing leaves it {@code UNSTATED}. */
public enum Stability {
  STABLE,
  UNSTABLE,
  UNSTATED
}
