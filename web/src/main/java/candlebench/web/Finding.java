package candlebench.web;

import java.util.Optional;

/**
 * What a check of the station found.
 *
 * @param what was looked at
 * @param words what was found
 * @param next what to do about it; empty where all is fine
 */
record Finding(String what, String words, Optional<String> next) {

  static Finding fine(String what, String words) {
    return new Finding(what, words, Optional.empty());
  }

  static Finding trouble(String what, String words, String next) {
    return new Finding(what, words, Optional.of(next));
  }

  boolean isFine() {
    return next.isEmpty();
  }

  @Override
  public String toString() {
    return (isFine() ? "fine     " : "TROUBLE  ") + what + ": " + words
        + next.map(words -> "\n         Next: " + words).orElse("");
  }
}
