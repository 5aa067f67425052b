package candlebench.web;

import candlebench.shared.Mass;
import candlebench.station.journal.BatchRow;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.LotHit;
import candlebench.station.journal.LotStock;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.RecordExport;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.LabelClaim;
import candlebench.station.record.WeighingsCsv;
import candlebench.station.record.WeighingsCsv.Decimals;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the pages of the record ask for. */
final class RecordPages {
  private static final int BATCHES_AT_ONCE = 50;
  private static final int LOTS_AT_ONCE = 500;

  private final RecordBook book;

  private RecordPages(RecordBook book) {
    this.book = book;
  }

  /** The paths under which the record is read; where the station has none, it says so there. */
  static void routes(JavalinConfig config, Optional<RecordBook> book) {
    Map<String, Handler> handlers = book.map(RecordPages::new)
        .map(pages -> Map.<String, Handler>of(
            "/api/batches", answering(pages::batches),
            "/api/batch", answering(pages::sheet),
            "/api/lots", answering(pages::lots),
            "/api/export", pages::export))
        .orElse(Map.of());
    for (String path : List.of("/api/batches", "/api/batch", "/api/lots", "/api/export"))
      config.routes.get(path, handlers.getOrDefault(path, RecordPages::noRecord));
  }

  private static void noRecord(Context request) {
    throw new RequestGuard.TurnedAway(
        404, "no record is open here: start the station with a scale, and its batches are here");
  }

  private record Batches(
      boolean practice, List<BatchRow> batches, boolean more, long entries, String head) {}

  private Object batches(Context request) throws JournalFailed {
    List<BatchRow> rows = book.lists().batches(before(request), BATCHES_AT_ONCE + 1);
    boolean more = rows.size() > BATCHES_AT_ONCE;
    return new Batches(
        practice(),
        more ? rows.subList(0, BATCHES_AT_ONCE) : rows,
        more,
        book.journal().length(),
        book.journal().head());
  }

  private static long before(Context request) {
    String before = asked(request, "before");
    if (before.isEmpty()) return Long.MAX_VALUE;
    if (!before.matches("\\d{1,15}"))
      throw new IllegalArgumentException(
          "'before' is the number of an entry, not '" + before + "'");
    return Long.parseLong(before);
  }

  private Object sheet(Context request) throws JournalFailed {
    BatchRecord batch = book.batch(asked(request, "code"));
    String stated = asked(request, "label");
    LabelClaim claim = stated.isEmpty()
        ? LabelClaim.ofFill(batch.recipe().vessel().fill())
        : LabelClaim.parse(stated);
    return Sheet.of(
        batch,
        checks(batch),
        claim,
        book.offsets(batch),
        practice(),
        book.journal().length(),
        book.journal().head());
  }

  private List<SheetRows.Check> checks(BatchRecord batch) throws JournalFailed {
    List<SheetRows.Check> checks = new ArrayList<>();
    for (String scale : batch.scales())
      checks.add(SheetRows.Check.of(scale, book.lists().lastCheck(scale, batch.firstEntry())));
    return checks;
  }

  private record Lots(List<Use> uses, List<Stock> stock) {}

  private record Use(BatchRow batch, SheetRows.Lot lot) {
    static Use of(LotHit hit) {
      return new Use(hit.batch(), SheetRows.Lot.of(hit.use()));
    }
  }

  private record Stock(
      String material, String lot, String received, String used, String left, int batches) {
    static Stock of(LotStock stock) {
      return new Stock(
          stock.material(),
          stock.lot(),
          stock.isCounted() ? stock.received().toString() : "",
          stock.used().equals(Mass.ZERO) ? "" : stock.used().toString(),
          stock.isCounted() ? stock.left().toString() : "",
          stock.batches());
    }
  }

  /** The batches of one lot or, where none is asked for, how all lots stand. */
  private Object lots(Context request) throws JournalFailed {
    String lot = asked(request, "lot");
    boolean unknown = asked(request, "unknown").equals("true");
    if (lot.isEmpty() && !unknown)
      return new Lots(
          List.of(), book.lists().stock(LOTS_AT_ONCE).stream().map(Stock::of).toList());
    return new Lots(
        book.lists().batchesOf(lot, asked(request, "material")).stream()
            .map(Use::of)
            .toList(),
        List.of());
  }

  /** The whole record as a file: {@code as} is json, csv or csv-comma. */
  private void export(Context request) throws JournalFailed {
    String form = asked(request, "as");
    boolean lines = form.equals("json");
    if (!lines && !form.equals("csv") && !form.equals("csv-comma"))
      throw new IllegalArgumentException("'as' is json, csv or csv-comma, not '" + form + "'");
    String name = "candlebench-" + purpose().word() + (lines ? ".jsonl" : ".csv");
    request
        .contentType(lines ? "application/x-ndjson" : "text/csv; charset=utf-8")
        .header("Content-Disposition", "attachment; filename=\"" + name + "\"");
    try (Writer out = new OutputStreamWriter(request.outputStream(), StandardCharsets.UTF_8)) {
      RecordExport.Entries entries = reader -> book.journal().read(1, reader);
      if (lines) RecordExport.lines(entries, purpose(), text -> write(out, text));
      else
        RecordExport.table(
            entries,
            new WeighingsCsv(form.equals("csv") ? Decimals.POINT : Decimals.COMMA),
            text -> write(out, text));
    } catch (IOException gone) {
      throw new UncheckedIOException("the page that asked for the export is gone", gone);
    }
  }

  private static void write(Writer out, String text) {
    try {
      out.write(text);
    } catch (IOException gone) {
      throw new UncheckedIOException("the page that asked for the export is gone", gone);
    }
  }

  private boolean practice() {
    return purpose() == Purpose.PRACTICE;
  }

  private Purpose purpose() {
    return book.journal().purpose();
  }

  private static String asked(Context request, String name) {
    String value = request.queryParam(name);
    return value == null ? "" : value.strip();
  }

  /** Answers with rows. */
  private interface Answer {
    Object to(Context request) throws JournalFailed;
  }

  private static Handler answering(Answer answer) {
    return request ->
        request.contentType("application/json").result(RecordJson.bytes(answer.to(request)));
  }
}
