package candlebench.shared;

import java.util.Collection;
import java.util.Comparator;

/** The known word that a mistyped one is most like, so that a refusal can say what was probably meant. */
public final class NearestWord {

  private NearestWord() {}

  /** The known word with the fewest letters to change, add or leave out; of equally near ones the first. At least one is known. */
  public static String to(String typed, Collection<String> known) {
    return known.stream()
        .min(Comparator.comparingInt(word -> distance(typed, word)))
        .orElseThrow();
  }

  /** How many letters to change, add or leave out to make one text of the other (Levenshtein, 1966). */
  private static int distance(String from, String to) {
    int[] previous = new int[to.length() + 1];
    for (int column = 0; column <= to.length(); column++) previous[column] = column;
    for (int row = 1; row <= from.length(); row++) {
      int[] current = new int[to.length() + 1];
      current[0] = row;
      for (int column = 1; column <= to.length(); column++) {
        int change = from.charAt(row - 1) == to.charAt(column - 1) ? 0 : 1;
        current[column] = Math.min(
            previous[column - 1] + change, Math.min(previous[column], current[column - 1]) + 1);
      }
      previous = current;
    }
    return previous[to.length()];
  }
}
