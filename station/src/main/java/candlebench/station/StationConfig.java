package candlebench.station;

import candlebench.station.journal.Purpose;
import candlebench.station.link.ScaleUri;
import java.util.List;

/**
 * What the bench is told once, at its start.
 *
 * @param purpose whether weights are for the record or for practice
 * @param scales in the order in which they were named; at least one
 */
public record StationConfig(Purpose purpose, List<ScaleUri> scales) {

  public StationConfig {
    scales = List.copyOf(scales);
    if (scales.isEmpty())
      throw new IllegalArgumentException("a bench needs a scale: name one with --scale, such as"
          + " --scale 'serial:/dev/ttyUSB0?format=and'");
    List<String> names = new java.util.ArrayList<>();
    for (int i = 0; i < scales.size(); i++) names.add(name(scales, i));
    for (String name : names)
      if (names.indexOf(name) != names.lastIndexOf(name))
        throw new IllegalArgumentException(
            "two scales are named '" + name + "': give each its own name=");
  }

  /** The name of a scale on the page and in the record: as set, else its number. */
  public String name(int scale) {
    return name(scales, scale);
  }

  private static String name(List<ScaleUri> scales, int scale) {
    return scales.get(scale).name().orElse("Scale " + (scale + 1));
  }
}
