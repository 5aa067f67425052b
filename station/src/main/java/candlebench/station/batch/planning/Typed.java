package candlebench.station.batch.planning;

import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.NearestWord;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.LoadBasis;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a maker types, as values: a number with its unit. A refusal says what to type instead. An ounce is never guessed: a weight is in
 * oz, a capacity in US fl oz or imp fl oz.
 */
final class Typed {
  private static final Pattern AMOUNT = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,24})?) *(\\D.*|)");
  private static final Pattern COMMA = Pattern.compile("\\d+,\\d+.*");
  private static final Pattern RATIO = Pattern.compile("(\\d{1,18})/(\\d{1,18})");
  private static final List<MassUnit> WEIGHTS =
      List.of(MassUnit.MILLIGRAM, MassUnit.GRAM, MassUnit.KILOGRAM, MassUnit.OUNCE, MassUnit.POUND);

  /** More than a bench scale carries (common practice, no source). */
  private static final Mass MOST = Mass.ofGrams("100000");

  private Typed() {}

  private record Amount(BigDecimal number, String unit, String typed) {

    static Amount of(String typed) {
      if (COMMA.matcher(typed).matches())
        throw new IllegalArgumentException("'" + typed + "' has a comma: write a decimal point");
      Matcher parts = AMOUNT.matcher(typed.trim());
      if (!parts.matches())
        throw new IllegalArgumentException("'" + typed + "' is not a number with a unit");
      return new Amount(new BigDecimal(parts.group(1)), parts.group(2).trim(), typed);
    }
  }

  static Mass mass(String typed) {
    Amount amount = Amount.of(typed);
    if (amount.unit().isEmpty())
      throw new IllegalArgumentException("'" + typed + "' has no unit: write '" + typed + " g'");
    if (amount.unit().matches("(?i).*fl\\.? ?oz.*|m?l|.*gal.*"))
      throw new IllegalArgumentException(
          "'" + typed
              + "' is a volume, and a weight is asked for: weigh it, or give a capacity with a density where one may be given");
    if (amount.unit().equals("gr"))
      throw new IllegalArgumentException(
          "'gr' is the grain, 0.0648 g: write '" + amount.number().toPlainString() + " g'");
    for (MassUnit unit : WEIGHTS)
      if (unit.symbol().equals(amount.unit())) return bounded(amount, unit);
    throw new IllegalArgumentException(
        "'" + amount.unit() + "' is no unit of weight here: write mg, g, kg, oz or lb");
  }

  private static Mass bounded(Amount amount, MassUnit unit) {
    BigDecimal grams = amount.number().multiply(unit.grams());
    if (grams.compareTo(new BigDecimal(MOST.grams())) > 0)
      throw new IllegalArgumentException(
          "'" + amount.typed() + "' is more than " + MOST + ", which no bench scale carries");
    return Mass.of(amount.number(), unit);
  }

  static Volume volume(String typed) {
    Amount amount = Amount.of(typed);
    for (VolumeUnit unit : VolumeUnit.values())
      if (unit.symbol().equals(amount.unit())) return Volume.of(amount.number(), unit);
    throw new IllegalArgumentException(
        amount.unit().matches("(?i)(fl\\.? ?)?oz")
            ? "'" + typed
                + "' could be a weight or either of two capacities: write US fl oz or imp fl oz"
            : "'" + amount.unit()
                + "' is no unit of volume here: write mL, L, US fl oz or imp fl oz");
  }

  static Density density(String typed) {
    Amount amount = Amount.of(typed);
    if (!amount.unit().equals("g/mL"))
      throw new IllegalArgumentException(
          "'" + typed + "' is no density: write it in g/mL, such as 0.86 g/mL");
    return new Density(amount.number());
  }

  /** {@code 8 %}, or exactly {@code 2/25}. */
  static Fraction share(String typed) {
    Matcher ratio = RATIO.matcher(typed.trim());
    if (ratio.matches())
      return Fraction.of(Long.parseLong(ratio.group(1)), Long.parseLong(ratio.group(2)));
    Amount amount = Amount.of(typed);
    if (!amount.unit().equals("%"))
      throw new IllegalArgumentException(
          "'" + typed + "' is no share: write per cent, such as 8 %, or a fraction, such as 2/25");
    return Fraction.percent(amount.number().toPlainString());
  }

  /** {@code 0.5 g}, or {@code 1 %}. */
  static Margin margin(String typed) {
    return typed.contains("%") || typed.contains("/")
        ? new Margin.Share(share(typed))
        : new Margin.Grams(mass(typed));
  }

  static LoadBasis basis(String typed) {
    return switch (typed) {
      case "wax" -> LoadBasis.OF_WAX;
      case "total" -> LoadBasis.OF_TOTAL;
      default ->
        throw new IllegalArgumentException(
            "'" + typed + "' is not what a share can be of: write wax or total");
    };
  }

  static Duration duration(String typed) {
    Amount amount = Amount.of(typed);
    long seconds = switch (amount.unit()) {
      case "s" -> 1;
      case "min" -> 60;
      case "h" -> 3600;
      default ->
        throw new IllegalArgumentException(
            "'" + typed + "' is no time: write s, min or h, such as 25 min");
    };
    BigDecimal exact = amount.number().multiply(BigDecimal.valueOf(seconds)).stripTrailingZeros();
    if (exact.scale() > 0)
      throw new IllegalArgumentException("'" + typed + "' is no whole number of seconds");
    return Duration.ofSeconds(exact.longValueExact());
  }

  /** A temperature in tenths of a degree Celsius; one in Fahrenheit is rounded to that. */
  static int tenthsCelsius(String typed) {
    Amount amount = Amount.of(typed);
    BigDecimal celsius = switch (amount.unit()) {
      case "°C" -> amount.number();
      case "°F" ->
        amount
            .number()
            .subtract(BigDecimal.valueOf(32))
            .multiply(BigDecimal.valueOf(5))
            .divide(BigDecimal.valueOf(9), 1, RoundingMode.HALF_UP);
      default ->
        throw new IllegalArgumentException(
            "'" + typed + "' is no temperature: write it like \"75 °C\" or \"167 °F\"");
    };
    if (celsius.compareTo(BigDecimal.valueOf(200)) > 0)
      throw new IllegalArgumentException("'" + typed + "' is hotter than any wax is worked");
    return celsius.movePointRight(1).setScale(0, RoundingMode.HALF_UP).intValueExact();
  }

  static AccuracyClass accuracy(String typed) {
    return oneOf(typed, AccuracyClass.values(), AccuracyClass::name);
  }

  static SensitiserCategory category(String typed) {
    return oneOf(typed, SensitiserCategory.values(), SensitiserCategory::symbol);
  }

  static <T> T oneOf(String typed, T[] all, Function<T, String> word) {
    for (T each : all) if (word.apply(each).equals(typed)) return each;
    List<String> words = List.of(all).stream().map(word).toList();
    throw new IllegalArgumentException("'" + typed + "' is none of " + String.join(", ", words)
        + "; nearest is '" + NearestWord.to(typed, words) + "'");
  }
}
