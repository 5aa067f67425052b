package candlebench.protocol.formats;

import static candlebench.protocol.LineSettings.listOf;
import static candlebench.protocol.formats.Say.MINUS;
import static candlebench.protocol.formats.Say.PLUS;
import static candlebench.protocol.formats.Say.STABLE;
import static candlebench.protocol.formats.Say.UNSTABLE;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.protocol.ScaleFormat;
import java.util.List;

/**
 * The third continuous output of T-Scale bench scales, sold under many names. Their first is {@code kern/comma}, their second {@code toledo/crlf}.
 *
 * <pre>
 * SOH + 001.234kg0 CR LF      tscale/con3: sign, seven characters of number, unit, 0 stable or 1 moving
 * </pre>
 *
 * <p>Sources: T-Scale ROW manual p.15; WorldWeigh BWS manual p.22. Not printed anywhere: the sign of a positive number (a plus and a blank
 * are both taken), what is sent beyond the range. From memory: the speeds.
 */
final class TScaleFormat {
  private static final LineTable LINE = LineTable.of(
      new Fixed("\u0001"),
      Choice.of("+", PLUS).or("-", MINUS).or(" ", PLUS),
      WeightField.zeros(7),
      UnitField.right(2),
      Choice.of("0", STABLE).or("1", UNSTABLE));

  static final ScaleFormat CON_3 = PublishedFormat.ofLines(
      "tscale/con3",
      "T-Scale ROW and BWS, Con3",
      "T-Scale ROW p.15; WorldWeigh BWS p.22",
      listOf("9600-8N1", "4800-8N1", "2400-8N1", "1200-8N1", "600-8N1"),
      TScaleFormat::read,
      List.of(TableLayout.line("line", LINE, TScaleFormat::read)));

  private TScaleFormat() {}

  private static Decoded read(Frame frame) {
    return LineText.read(frame, LINE::read);
  }
}
