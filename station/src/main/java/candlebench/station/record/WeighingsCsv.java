package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;

/**
 * Weighings as a table for a spreadsheet, one row each, those that were taken back too; then the batch's corrections and notes; at the
 * end of the file the journal's head.
 *
 * <p>Commas and line ends by RFC 4180, in UTF-8 with a byte order mark, by which spreadsheets know it. Masses are net grams, exact,
 * and plain numbers; all else is text (see {@link CsvText}).
 */
public final class WeighingsCsv {

  /** How the numbers of a spreadsheet are written where the maker lives. */
  public enum Decimals {
    POINT(',', '.'),
    COMMA(';', ',');

    private final char between;
    private final char mark;

    Decimals(char between, char mark) {
      this.between = between;
      this.mark = mark;
    }
  }

  private static final char BYTE_ORDER_MARK = '\uFEFF';
  private static final String LINE_END = "\r\n";

  private static final List<String> COLUMNS = List.of(
      "row",
      "batch",
      "recipe",
      "entry",
      "time",
      "place",
      "material",
      "lots",
      "target_g",
      "shown_target_g",
      "under_g",
      "over_g",
      "net_g",
      "difference_g",
      "net_as_written_g",
      "verdict",
      "how",
      "standing",
      "scale",
      "indication",
      "tare_g",
      "gross_g",
      "person",
      "note");

  private final Decimals decimals;

  public WeighingsCsv(Decimals decimals) {
    this.decimals = decimals;
  }

  /** The first line of the file. */
  public String heading() {
    return BYTE_ORDER_MARK + row(COLUMNS);
  }

  /** The lines of one batch. */
  public String rows(BatchRecord batch) {
    StringBuilder rows = new StringBuilder();
    for (WeighingLine line : batch.weighings()) rows.append(weighing(batch, line));
    for (Correction each : batch.corrections()) rows.append(correction(batch, each));
    for (Remark each : batch.remarks())
      rows.append(remark(
          batch, "note", each.entry(), each.wall(), "", each.written().person(), each.text()));
    return rows.toString();
  }

  /** The last line of the file: the head of the journal it was taken from, to be compared with later. */
  public String head(long entries, String head) {
    Cells cells = new Cells();
    cells
        .text("head")
        .text("")
        .text("")
        .number(entries)
        .text("")
        .text("")
        .text("")
        .text("");
    for (int i = 8; i < COLUMNS.size() - 1; i++) cells.text("");
    return row(cells.text(head).cells);
  }

  private String weighing(BatchRecord batch, WeighingLine line) {
    WeightAccepted counts = line.counts();
    return row(new Cells()
        .text("weighing")
        .text(batch.code())
        .text(batch.recipe().name())
        .number(line.entry())
        .text(line.wall())
        .text(line.place().toString())
        .text(counts.name())
        .text(line.isVessel() ? vesselLots(batch, line) : lots(line))
        .mass(counts.target())
        .mass(counts.shownTarget())
        .mass(counts.tolerance().under())
        .mass(counts.tolerance().over())
        .mass(counts.net())
        .mass(line.difference())
        .mass(line.written().net())
        .text(word(counts.verdict()))
        .text(word(counts.how()))
        .text(word(line.standing()))
        .text(counts.scaleName())
        .text(line.written().indication().toString())
        .mass(counts.tare())
        .mass(counts.gross())
        .text(counts.person())
        .text(counts.reason())
        .cells);
  }

  private String correction(BatchRecord batch, Correction correction) {
    Corrected made = correction.corrected();
    String words = word(made.what()) + " of entry " + made.entry() + ": '" + made.was() + "' is '"
        + made.now() + "'; " + made.reason();
    return remark(
        batch,
        "correction",
        correction.entry(),
        correction.wall(),
        made.material(),
        made.person(),
        words);
  }

  private String remark(
      BatchRecord batch,
      String row,
      long entry,
      String wall,
      String material,
      String person,
      String words) {
    Cells cells = new Cells()
        .text(row)
        .text(batch.code())
        .text(batch.recipe().name())
        .number(entry)
        .text(wall)
        .text("")
        .text(material);
    for (int i = 7; i < COLUMNS.size() - 2; i++) cells.text("");
    return row(cells.text(person).text(words).cells);
  }

  private static String lots(WeighingLine line) {
    if (line.lots().size() == 1) return lot(line.lots().get(0).lot());
    StringJoiner lots = new StringJoiner(" + ");
    for (LotShare share : line.lots()) lots.add(lot(share.lot()) + " (" + share.amount() + ")");
    return lots.toString();
  }

  private static String vesselLots(BatchRecord batch, WeighingLine line) {
    return lot(line.lotsInUse().getOrDefault(batch.recipe().vessel().name(), ""));
  }

  private static String lot(String number) {
    return number.isEmpty() ? "unknown" : number;
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private String row(List<String> cells) {
    return String.join(String.valueOf(decimals.between), cells) + LINE_END;
  }

  /** The cells of one row, in the order of the columns. */
  private final class Cells {
    final List<String> cells = new ArrayList<>();

    Cells text(String text) {
      cells.add(CsvText.cell(text));
      return this;
    }

    Cells number(long number) {
      cells.add(Long.toString(number));
      return this;
    }

    Cells mass(Mass mass) {
      cells.add(mass.grams().replace('.', decimals.mark));
      return this;
    }
  }
}
