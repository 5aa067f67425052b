package candlebench.shared;

/** Where a weight lies against its target and tolerance. */
public enum Verdict {
  UNDER,
  WITHIN,
  OVER
}
