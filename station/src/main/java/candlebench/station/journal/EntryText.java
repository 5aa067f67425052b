package candlebench.station.journal;

import java.util.regex.Pattern;

/**
 * What an entry says, before it has its place in the journal.
 *
 * @param kind the event's kind, such as {@code part-accepted}
 * @param body the event as one line of JSON
 */
public record EntryText(String kind, String body) {

  /** The longest body, in characters: room for the trace of a long pour, and an end to a runaway. */
  public static final int LONGEST_BODY = 1 << 20;

  private static final Pattern KIND = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");

  public EntryText {
    if (kind.length() > 64 || !KIND.matcher(kind).matches())
      throw new IllegalArgumentException(
          "a kind is a few words in lower case, such as part-accepted, not '" + kind + "'");
    if (body.length() > LONGEST_BODY)
      throw new IllegalArgumentException("the body of a " + kind + " has " + body.length()
          + " characters; the most is " + LONGEST_BODY);
    if (!body.startsWith("{") || !body.endsWith("}") || !isOneLineOfText(body))
      throw new IllegalArgumentException(
          "the body of a " + kind + " is one JSON object on one line, without control characters");
  }

  /** Whether every character prints and none is half of a pair, which no encoding could give back. */
  private static boolean isOneLineOfText(String text) {
    return text.codePoints().noneMatch(c -> c < ' ' || c >= 0xD800 && c <= 0xDFFF);
  }
}
