package candlebench.station;

import candlebench.station.batch.Product;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.journal.Purpose;
import candlebench.station.link.ScaleSettings;
import candlebench.station.view.ShownUnit;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What the bench is told once, at its start.
 *
 * @param purpose whether weights are for the record or for practice
 * @param scales in the order in which they were named; at least one
 * @param setup the same bench as guidance knows it, its scales in the same order
 * @param unit the unit of what is shown, unless a page asks for another
 */
public record StationConfig(
    Purpose purpose, List<ScaleSettings> scales, BenchSetup setup, ShownUnit unit) {

  public StationConfig {
    scales = List.copyOf(scales);
    if (setup.scales().size() != scales.size())
      throw new IllegalArgumentException("guidance is told of " + setup.scales().size()
          + " scales where " + scales.size() + " are connected");
    Set<String> names = new HashSet<>();
    for (BenchSetup.Scale scale : setup.scales())
      if (!names.add(scale.name()))
        throw new IllegalArgumentException(
            "two scales are named '" + scale.name() + "': give each its own name=");
  }

  /** A bench of no known pots, in grams, with the usual times. */
  public static StationConfig of(
      Purpose purpose, List<ScaleSettings> scales, List<? extends Product> products, ZoneId zone) {
    return new StationConfig(
        purpose,
        scales,
        new BenchSetup(named(scales), List.of(), products, BenchSetup.Timing.USUAL, zone),
        ShownUnit.GRAM);
  }

  /** The scales as guidance knows them; one that was given no name is called by its number. */
  public static List<BenchSetup.Scale> named(List<ScaleSettings> scales) {
    if (scales.isEmpty())
      throw new IllegalArgumentException(
          "a bench needs a scale: name one, such as" + " --scale 'serial:/dev/ttyUSB0?format=and'");
    List<BenchSetup.Scale> named = new ArrayList<>();
    for (ScaleSettings scale : scales)
      named.add(new BenchSetup.Scale(
          scale.name().orElse("Scale " + (named.size() + 1)), scale.division(), scale.capacity()));
    return named;
  }
}
