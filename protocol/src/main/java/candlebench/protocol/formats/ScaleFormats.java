package candlebench.protocol.formats;

import candlebench.protocol.ScaleFormat;
import candlebench.shared.NearestWord;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The one list of all wire formats. A new format is a line here; every general test picks it up from the list. */
public final class ScaleFormats {
  private static final List<ScaleFormat> ALL = joined(List.of(
      List.of(
          new SicsFormat(),
          new AndFormat(),
          new SbiFormat(),
          new OhausFormat(),
          new RadwagFormat(),
          new NciFormat()),
      NciRelatives.ALL,
      ToledoFormat.ALL,
      CasFormats.ALL,
      RicelakeFormats.ALL,
      KernFormats.ALL,
      AdamFormats.ALL,
      YaohuaFormats.ALL,
      List.of(TScaleFormat.CON_3)));

  private static final List<ScaleFormat> FAMILIES = joined(List.of(
      CasFormats.FAMILIES,
      RicelakeFormats.FAMILIES,
      KernFormats.FAMILIES,
      AdamFormats.FAMILIES,
      YaohuaFormats.FAMILIES));

  private static final List<ScaleFormat> ACCEPTED = joined(List.of(ALL, FAMILIES));

  private ScaleFormats() {}

  /** The formats that differ from one another in what their scales send, among which an unknown scale is looked for. */
  public static List<ScaleFormat> all() {
    return ALL;
  }

  /** Other names by which bytes may be read: several formats under one name, replies without weights, what another format sends too. */
  public static List<ScaleFormat> families() {
    return FAMILIES;
  }

  public static Optional<ScaleFormat> find(String id) {
    return ACCEPTED.stream().filter(format -> format.id().equals(id)).findFirst();
  }

  /** The format with this id; throws {@link IllegalArgumentException} that names the nearest id and lists all. */
  public static ScaleFormat of(String id) {
    return find(id).orElseThrow(() -> new IllegalArgumentException(unknown(id)));
  }

  private static List<ScaleFormat> joined(List<List<ScaleFormat>> lists) {
    return lists.stream().flatMap(List::stream).toList();
  }

  private static String unknown(String id) {
    String nearest = NearestWord.to(id, ACCEPTED.stream().map(ScaleFormat::id).toList());
    String known = ACCEPTED.stream().map(ScaleFormat::id).collect(Collectors.joining(", "));
    return "no format '" + id + "'; nearest is '" + nearest + "'. Formats: " + known;
  }
}
