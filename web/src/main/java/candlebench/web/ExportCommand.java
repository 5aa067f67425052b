package candlebench.web;

import candlebench.shared.NearestWord;
import candlebench.station.journal.EntryLinesJson;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.station.journal.RecordExport;
import candlebench.station.record.WeighingsCsv;
import candlebench.station.record.WeighingsCsv.Decimals;
import candlebench.web.Main.WrongUse;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the record out in forms that outlive this program. A bench may be writing to it meanwhile. */
@Command(
    name = "candlebench export",
    description = "Writes the record as JSON lines or as a table for a spreadsheet.")
final class ExportCommand implements Callable<Integer> {
  private static final List<String> FORMS = List.of("json", "schema", "csv", "csv-comma");

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Mixin
  private JournalOption of;

  @Option(
      names = "--as",
      paramLabel = "FORM",
      defaultValue = "json",
      description =
          "json: every entry as it was hashed, one a line; schema: what its fields mean; csv: the weighings;"
              + " csv-comma: the same with decimal commas (default: ${DEFAULT-VALUE})")
  private String form;

  @Override
  public Integer call() throws WrongUse {
    if (!FORMS.contains(form))
      throw new WrongUse("no form '" + form + "'; nearest is '" + NearestWord.to(form, FORMS)
          + "'. Forms: " + String.join(", ", FORMS));
    PrintWriter out = new PrintWriter(
        new OutputStreamWriter(new FileOutputStream(FileDescriptor.out), StandardCharsets.UTF_8));
    if (form.equals("schema"))
      out.print(new String(EntryLinesJson.schema(), StandardCharsets.UTF_8));
    else export(out);
    out.flush();
    if (out.checkError())
      throw new WrongUse("cannot write what was exported: make room, or write elsewhere");
    return Main.DONE;
  }

  private void export(PrintWriter out) throws WrongUse {
    try (JournalFile journal = of.open()) {
      if (form.equals("json"))
        RecordExport.lines(reader -> journal.scan(1, reader), journal.purpose(), out::print);
      else
        RecordExport.table(
            reader -> journal.scan(1, reader),
            new WeighingsCsv(form.equals("csv") ? Decimals.POINT : Decimals.COMMA),
            out::print);
    } catch (JournalFailed damaged) {
      throw new WrongUse(damaged.getMessage());
    }
  }
}
