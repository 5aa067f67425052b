package candlebench.web;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** The known word nearest to one that was mistyped: fewest letters changed, added or left out (Levenshtein's distance). */
final class Nearest {

  private Nearest() {}

  /** The nearest word, unless none is alike: more than half of the letters would have to change. */
  static Optional<String> to(String typed, Collection<String> known) {
    return known.stream()
        .min(Comparator.comparingInt(word -> distance(typed, word)))
        .filter(word -> distance(typed, word) <= (Math.max(typed.length(), word.length()) + 1) / 2);
  }

  private static int distance(String from, String to) {
    int[] above = new int[to.length() + 1];
    for (int column = 0; column <= to.length(); column++) above[column] = column;
    for (int row = 1; row <= from.length(); row++) {
      int[] line = new int[to.length() + 1];
      line[0] = row;
      for (int column = 1; column <= to.length(); column++) {
        int changed = from.charAt(row - 1) == to.charAt(column - 1) ? 0 : 1;
        line[column] =
            Math.min(above[column - 1] + changed, 1 + Math.min(above[column], line[column - 1]));
      }
      above = line;
    }
    return above[to.length()];
  }
}
