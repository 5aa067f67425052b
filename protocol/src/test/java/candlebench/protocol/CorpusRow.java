package candlebench.protocol;

import candlebench.protocol.WireLayout.Shown;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.MassUnit;
import candlebench.shared.Stamp;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A frame, what it means, how we write it and where it is from: a row of {@code frames/<format>.tsv}.
 *
 * @param status as {@code candlebench decode} prints it; {@code none} is followed by the matter of a line that is no load
 * @param value the number shown; for {@code refused} the reason and the place in the frame
 * @param written the layout that writes this frame, with unit and decimals shown and address where they matter, such as {@code standard
 *     kg/3@7}; or a dash and why we do not write it
 * @param origin M: printed in the manual named; C: composed by the layout
 */
public record CorpusRow(
    ScaleFormat format,
    int line,
    byte[] bytes,
    String status,
    String value,
    String unit,
    String kind,
    String written,
    String origin) {
  private static final Pattern WRITTEN = Pattern.compile(
      "(?<name>[a-z0-9-]+)(?: (?:(?<unit>[a-z]+)/(?<decimals>\\d))?(?:@(?<address>\\d+))?)?");

  public static final Stamp STAMP = new Stamp(Instant.parse("2026-11-25T08:00:00Z"), 1);

  /** Every format that has a corpus: those an unknown scale may speak, and the other names by which bytes are read. */
  public static Stream<ScaleFormat> formats() {
    return Stream.concat(ScaleFormats.all().stream(), ScaleFormats.families().stream());
  }

  public static List<CorpusRow> of(ScaleFormat format) {
    String name = "/frames/" + format.id() + ".tsv";
    try (InputStream in = CorpusRow.class.getResourceAsStream(name)) {
      if (in == null) throw new AssertionError("no corpus " + name + " for this format");
      List<String> lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
          .lines()
          .toList();
      return IntStream.range(1, lines.size())
          .mapToObj(at -> row(format, at + 1, lines.get(at)))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static CorpusRow row(ScaleFormat format, int line, String text) {
    String[] cells = text.split("\t", -1);
    if (cells.length != 7 || cells[6].isBlank())
      throw new AssertionError(
          format.id() + ".tsv line " + line + " needs 7 columns, the last one its origin");
    return new CorpusRow(
        format,
        line,
        EscapedBytes.bytes(cells[0]),
        cells[1],
        cells[2],
        cells[3],
        cells[4],
        cells[5],
        cells[6]);
  }

  public Frame frame() {
    return new Frame(0, bytes, STAMP);
  }

  public Decoded decoded() {
    return format.decode(frame());
  }

  public boolean isWritten() {
    return !written.startsWith("-");
  }

  /** The frame as the layout named here writes it. */
  public Optional<byte[]> encoded() {
    Matcher matcher = WRITTEN.matcher(written);
    if (!matcher.matches()) throw new AssertionError("no way of writing: " + this);
    WireLayout layout = format.layouts().stream()
        .filter(each -> each.name().equals(matcher.group("name")))
        .findFirst()
        .orElseThrow(
            () -> new AssertionError("no layout '" + matcher.group("name") + "': " + this));
    String unit = Optional.ofNullable(matcher.group("unit")).orElse("g");
    String decimals = Optional.ofNullable(matcher.group("decimals")).orElse("2");
    String address = Optional.ofNullable(matcher.group("address")).orElse("0");
    Shown shown = new Shown(unit(unit), Integer.parseInt(decimals), Integer.parseInt(address));
    return layout.encode(decoded(), shown);
  }

  private static MassUnit unit(String symbol) {
    for (MassUnit unit : MassUnit.values()) if (unit.symbol().equals(symbol)) return unit;
    throw new AssertionError("no unit " + symbol);
  }

  @Override
  public String toString() {
    return format.id() + ":" + line + " " + EscapedBytes.text(bytes);
  }
}
