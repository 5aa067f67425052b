package candlebench.protocol.formats;

import candlebench.protocol.ScaleFormat;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The one list of all wire formats. A new format is a line here; every general test picks it up from the list. */
public final class ScaleFormats {
  private static final List<ScaleFormat> ALL =
      List.of(new SicsFormat(), new AndFormat(), new SbiFormat());

  private ScaleFormats() {}

  public static List<ScaleFormat> all() {
    return ALL;
  }

  public static Optional<ScaleFormat> find(String id) {
    return ALL.stream().filter(format -> format.id().equals(id)).findFirst();
  }

  /** The format with this id; throws {@link IllegalArgumentException} that names the nearest id and lists all. */
  public static ScaleFormat of(String id) {
    return find(id).orElseThrow(() -> new IllegalArgumentException(unknown(id)));
  }

  private static String unknown(String id) {
    String nearest = ALL.stream()
        .map(ScaleFormat::id)
        .min(Comparator.comparingInt(known -> distance(id, known)))
        .orElseThrow();
    String known = ALL.stream().map(ScaleFormat::id).collect(Collectors.joining(", "));
    return "no format '" + id + "'; nearest is '" + nearest + "'. Formats: " + known;
  }

  /** How many letters to change, add or leave out to make one text of the other (Levenshtein). */
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
