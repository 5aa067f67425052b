package candlebench.protocol;

import candlebench.protocol.LineSettings.Parity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What came of listening to a line with these settings.
 *
 * @param line the settings listened with
 * @param recognition what was made of the bytes
 */
public record Heard(LineSettings line, Recognition recognition) {

  /**
   * The line settings to listen with, the most promising first, so that every format can be heard with one of its own. A line of 7 data bits
   * with parity, or with two stop bits, is heard as 8 data bits without.
   */
  public static List<LineSettings> plan(List<ScaleFormat> formats) {
    Map<LineSettings, Integer> promise = new HashMap<>();
    List<LineSettings> inOrder = new ArrayList<>();
    for (ScaleFormat format : formats) {
      int weight = format.lines().size();
      for (LineSettings line : format.lines()) {
        LineSettings heardWith = eightBits(line);
        if (promise.merge(heardWith, weight--, Integer::sum) == weight + 1) inOrder.add(heardWith);
      }
    }
    return inOrder.stream()
        .distinct()
        .sorted(Comparator.comparing(promise::get, Comparator.reverseOrder()))
        .toList();
  }

  /** How a line is heard when bit 7 may hold parity: as 8 data bits, as long as that is as many bits in all. */
  static LineSettings eightBits(LineSettings line) {
    boolean fillsEight =
        line.dataBits() == 7 && (line.parity() != Parity.NONE || line.stopBits() == 2);
    return fillsEight ? new LineSettings(line.baud(), 8, Parity.NONE, 1) : line;
  }

  /** The best of several, if there are any. */
  public static Optional<Heard> best(List<Heard> heard) {
    return heard.stream()
        .min(Comparator.comparing(Heard::finding)
            .thenComparing(Heard::written, Comparator.reverseOrder()));
  }

  /** The settings the scale seems to send with: those listened with, with the data bits and parity found in the bytes. */
  public LineSettings suggested() {
    boolean sevenBits = recognition.bitSeven() != BitSeven.CLEAR
        && recognition.bitSeven() != BitSeven.MIXED
        && line.dataBits() == 8;
    return sevenBits
        ? LineSettings.of(line.baud() + "-" + recognition.bitSeven().line())
        : line;
  }

  private Recognition.Finding finding() {
    return recognition.finding();
  }

  private int written() {
    return recognition.ranked().stream().mapToInt(Candidate::written).max().orElse(0);
  }
}
