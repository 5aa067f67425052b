package candlebench.protocol.speed;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Decoded.Weighed;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A decoder as a capable person writes it in an hour: lines as text, a regular expression with named groups, compiled once. Of each format
 * it reads the usual layout only, weights and overloads. For comparison, not for use.
 */
final class RegexDecoder {
  private static final Map<String, MassUnit> UNITS = Map.of(
      "g", MassUnit.GRAM, "kg", MassUnit.KILOGRAM, "oz", MassUnit.OUNCE, "lb", MassUnit.POUND);
  private static final String NUMBER = "0*(?<number>\\d+(?:\\.\\d+)?)";

  private static final Map<String, RegexDecoder> ALL = Map.of(
      "and",
          of("(?<head>ST|US|OL),(?<sign>[+-])" + NUMBER + " {1,2}(?<unit>[a-z]{1,2})", at -> {
            if (at.group("head").equals("OL")) return out(at.group("sign"), Basis.UNSTATED);
            return weighed(at, Basis.UNSTATED, at.group("head").equals("ST"));
          }),
      "sics",
          of(
              "S (?:(?<head>[SD]) +(?<sign>-?)" + NUMBER + " (?<unit>[a-z]{1,2})|(?<out>[+-]))",
              at -> {
                if (at.group("out") != null) return out(at.group("out"), Basis.UNSTATED);
                return weighed(at, Basis.NET, at.group("head").equals("S"));
              }),
      "ohaus",
          of(
              " *(?<sign>-?)" + NUMBER + " (?<unit>[a-z]{1,2})(?<moving> \\?)?",
              at -> weighed(at, Basis.UNSTATED, at.group("moving") == null)),
      "sbi",
          of("(?<sign>[+ -]) *" + NUMBER + " (?<unit>[a-z ]{3})| +(?<out>High|Low) *", at -> {
            if (at.group("out") != null)
              return out(at.group("out").equals("Low") ? "-" : "+", Basis.UNSTATED);
            return weighed(at, Basis.UNSTATED, !at.group("unit").isBlank());
          }),
      "cas/18",
          of(
              "(?<head>ST|US|OL|UL),(?<basis>GS|NT),(?:(?<sign>-?)" + NUMBER
                  + "| +) ?(?<unit>[a-z]{1,2})",
              at -> {
                Basis basis = at.group("basis").equals("GS") ? Basis.GROSS : Basis.NET;
                if (at.group("head").equals("OL")) return out("+", basis);
                if (at.group("head").equals("UL")) return out("-", basis);
                return weighed(at, basis, at.group("head").equals("ST"));
              }),
      "kern/comma",
          of(
              "(?<head>ST|US|OL),(?<basis>GS|NT),(?<sign>[+-])(?:" + NUMBER
                  + " {2,3}(?<unit>[a-z]{1,2})| +)",
              at -> {
                Basis basis = at.group("basis").equals("GS") ? Basis.GROSS : Basis.NET;
                if (at.group("head").equals("OL")) return out(at.group("sign"), basis);
                return weighed(at, basis, at.group("head").equals("ST"));
              }));

  private final Pattern pattern;
  private final Function<Matcher, Decoded> reader;
  private final StringBuilder gathered = new StringBuilder();

  private RegexDecoder(Pattern pattern, Function<Matcher, Decoded> reader) {
    this.pattern = pattern;
    this.reader = reader;
  }

  private static RegexDecoder of(String line, Function<Matcher, Decoded> reader) {
    return new RegexDecoder(Pattern.compile(line), reader);
  }

  static RegexDecoder of(String format) {
    return ALL.get(format);
  }

  static Iterable<String> formats() {
    return ALL.keySet();
  }

  /** Takes a piece of a stream, cuts lines off what is gathered, and reads each. */
  void feed(byte[] piece, int length, Consumer<Decoded> sink) {
    gathered.append(new String(piece, 0, length, StandardCharsets.US_ASCII));
    for (int end = gathered.indexOf("\r\n"); end >= 0; end = gathered.indexOf("\r\n")) {
      Matcher matcher = pattern.matcher(gathered.substring(0, end));
      if (matcher.matches()) sink.accept(reader.apply(matcher));
      gathered.delete(0, end + 2);
    }
  }

  private static Weighed weighed(Matcher at, Basis basis, boolean stable) {
    String number = at.group("sign").equals("-") ? "-" + at.group("number") : at.group("number");
    MassUnit unit = UNITS.get(at.group("unit").strip());
    Indication shown = unit == null ? Indication.withoutUnit(number) : Indication.of(number, unit);
    return new Weighed(shown, basis, stable ? Stability.STABLE : Stability.UNSTABLE);
  }

  private static OutOfRange out(String sign, Basis basis) {
    return new OutOfRange(sign.equals("-") ? Side.UNDER : Side.OVER, basis);
  }
}
