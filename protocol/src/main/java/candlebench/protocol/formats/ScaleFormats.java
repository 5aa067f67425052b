package candlebench.protocol.formats;

import candlebench.protocol.ScaleFormat;
import candlebench.shared.NearestWord;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The one list of all wire formats. A new format is a line here; every general test picks it up from the list. */
public final class ScaleFormats {
  private static final List<ScaleFormat> ALL = List.of(
      new SicsFormat(), new AndFormat(), new SbiFormat(), new OhausFormat(), new RadwagFormat());

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
    String nearest = NearestWord.to(id, ALL.stream().map(ScaleFormat::id).toList());
    String known = ALL.stream().map(ScaleFormat::id).collect(Collectors.joining(", "));
    return "no format '" + id + "'; nearest is '" + nearest + "'. Formats: " + known;
  }
}
