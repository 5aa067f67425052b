package candlebench.station.link;

import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.NearestWord;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How a scale is named on the command line: where it is and what it speaks: {@code serial:/dev/ttyUSB0?format=and&line=2400-7E1} or
 * {@code tcp:192.168.1.20:4001?format=sics}.
 *
 * <p>More may be said: {@code name=}, its name on the page; {@code d=0.1g}, its division; {@code max=5kg}, its capacity;
 * {@code unit=g}, for a scale that never names its unit; {@code ask=200ms}, for one that sends only when asked. A space is written
 * {@code %20}.
 */
public final class ScaleUri {
  private static final List<String> KEYS =
      List.of("format", "line", "name", "d", "max", "unit", "ask");
  private static final Pattern AMOUNT = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,9})?) ?([a-z]+)");
  private static final Pattern MILLIS = Pattern.compile("(\\d{1,6})ms");
  private static final Pattern HOST_AND_PORT =
      Pattern.compile("(\\[[0-9A-Fa-f:.%]+]|[^:/?\\[\\]\\s]+):(\\d{1,5})");
  private static final int FASTEST_ASKING_MILLIS = 20;
  private static final int SLOWEST_ASKING_MILLIS = 60_000;

  private ScaleUri() {}

  /** Reads it; throws {@link IllegalArgumentException} that says what is wrong and how to write it. */
  public static ScaleSettings of(String text) {
    int query = text.indexOf('?');
    String where = query < 0 ? text : text.substring(0, query);
    Map<String, String> said = query < 0 ? Map.of() : said(text, text.substring(query + 1));
    if (!said.containsKey("format"))
      throw wrong(text, "say which format the scale speaks, such as ?format=and");
    ScaleFormat format;
    try {
      format = ScaleFormats.of(said.get("format"));
    } catch (IllegalArgumentException unknown) {
      throw wrong(text, unknown.getMessage());
    }
    Optional<Duration> ask = Optional.ofNullable(said.get("ask")).map(value -> ask(text, value));
    if (ask.isPresent() && format.command(ScaleCommand.SEND).isEmpty())
      throw wrong(
          text,
          "the format " + format.id() + " has no command to ask for a weight: leave out ask=");
    Optional<MassUnit> unit = Optional.ofNullable(said.get("unit")).map(value -> unit(text, value));
    if (format.unitIsASetting() && unit.isEmpty())
      throw wrong(
          text, "the format " + format.id() + " never names its unit: say it, such as &unit=g");
    return new ScaleSettings(
        line(text, where, said, format),
        format,
        Optional.ofNullable(said.get("name")),
        Optional.ofNullable(said.get("d")).map(value -> division(text, value)),
        Optional.ofNullable(said.get("max")).map(value -> amount(text, "max", value)),
        unit,
        ask);
  }

  /** Names a scale on a serial device, as {@link #of} reads it. */
  public static String serial(String device, ScaleFormat format, LineSettings line, boolean asked) {
    String path = URLEncoder.encode(device, StandardCharsets.UTF_8)
        .replace("+", "%20")
        .replace("%2F", "/")
        .replace("%3A", ":");
    String ask = asked ? "&ask=" + Asking.UNLESS_SET.toMillis() + "ms" : "";
    return "serial:" + path + "?format=" + format.id() + "&line=" + line + ask;
  }

  private static Line line(
      String text, String where, Map<String, String> said, ScaleFormat format) {
    if (where.startsWith("serial:") && where.length() > "serial:".length())
      return new SerialLine(
          decoded(text, where.substring("serial:".length())),
          Optional.ofNullable(said.get("line"))
              .map(value -> settings(text, value))
              .orElse(format.lines().get(0)));
    if (!where.startsWith("tcp:"))
      throw wrong(text, "a scale is serial:DEVICE?format=ID or tcp:HOST:PORT?format=ID");
    if (said.containsKey("line"))
      throw wrong(
          text, "line= is for serial: only; over tcp: the server has the settings of the line");
    Matcher place = HOST_AND_PORT.matcher(where.substring("tcp:".length()));
    if (!place.matches())
      throw wrong(text, "after tcp: stands HOST:PORT, such as 192.168.1.20:4001");
    int port = Integer.parseInt(place.group(2));
    if (port < 1 || port > 65_535) throw wrong(text, "a port is 1 to 65535, not " + port);
    return new TcpLine(place.group(1), port);
  }

  private static Map<String, String> said(String text, String query) {
    Map<String, String> said = new LinkedHashMap<>();
    for (String piece : query.split("&", -1)) {
      int equals = piece.indexOf('=');
      if (equals < 1 || equals == piece.length() - 1)
        throw wrong(text, "'" + piece + "' is not KEY=VALUE");
      String key = piece.substring(0, equals);
      if (!KEYS.contains(key))
        throw wrong(
            text,
            "no key '" + key + "'; nearest is '" + NearestWord.to(key, KEYS) + "'. Keys: "
                + String.join(", ", KEYS));
      if (said.put(key, decoded(text, piece.substring(equals + 1))) != null)
        throw wrong(text, key + "= stands there twice");
    }
    return said;
  }

  private static String decoded(String text, String value) {
    try {
      return URLDecoder.decode(value.replace("+", "%2B"), StandardCharsets.UTF_8);
    } catch (IllegalArgumentException malformed) {
      throw wrong(text, "a per cent sign is written %25, a space %20");
    }
  }

  private static LineSettings settings(String text, String value) {
    try {
      return LineSettings.of(value);
    } catch (IllegalArgumentException malformed) {
      throw wrong(text, malformed.getMessage());
    }
  }

  private static Duration ask(String text, String value) {
    Matcher matcher = MILLIS.matcher(value);
    int millis = matcher.matches() ? Integer.parseInt(matcher.group(1)) : 0;
    if (millis < FASTEST_ASKING_MILLIS || millis > SLOWEST_ASKING_MILLIS)
      throw wrong(
          text,
          "ask= is a time of " + FASTEST_ASKING_MILLIS + "ms to " + SLOWEST_ASKING_MILLIS
              + "ms, such as 200ms, not '" + value + "'");
    return Duration.ofMillis(millis);
  }

  private static Division division(String text, String value) {
    Mass step = amount(text, "d", value);
    if (step.isZero()) throw wrong(text, "d= is the scale's smallest step, above zero");
    return new Division(step);
  }

  private static Mass amount(String text, String key, String value) {
    Matcher matcher = AMOUNT.matcher(value);
    if (!matcher.matches())
      throw wrong(
          text, key + "= is an amount with its unit, such as 0.1g or 5kg, not '" + value + "'");
    return Mass.of(matcher.group(1), unit(text, matcher.group(2)));
  }

  private static MassUnit unit(String text, String symbol) {
    for (MassUnit unit : MassUnit.values()) if (unit.symbol().equals(symbol)) return unit;
    throw wrong(text, "no unit '" + symbol + "'; units are mg, ct, gr, g, oz, lb, kg");
  }

  private static IllegalArgumentException wrong(String text, String words) {
    return new IllegalArgumentException("scale '" + text + "': " + words);
  }
}
