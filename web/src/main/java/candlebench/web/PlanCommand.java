package candlebench.web;

import candlebench.station.batch.planning.BenchChart;
import candlebench.station.batch.planning.ChartText;
import candlebench.station.batch.planning.PlanJson;
import candlebench.station.batch.planning.PlanOrder;
import candlebench.station.batch.planning.PlanText;
import candlebench.station.batch.planning.WorkshopPlan;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.RecordExport;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.LossLearnt;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plans a batch: what goes into which pot, on which scale, and what speaks against it. */
@Command(
    name = "candlebench plan",
    description = "Plans a batch from a recipe file, and says what speaks against it.",
    footer = PlanCommand.FIELDS)
final class PlanCommand implements Callable<Integer> {
  static final String FIELDS = """

      A plan file is JSON. Amounts are text with their unit: "252 g" (mg, g, kg,
      oz, lb), "300 mL" (mL, L, US fl oz, imp fl oz), "0.86 g/mL", "8 %%" or the
      exact "2/25", "25 min". Start from --example; --schema is the whole of it.

      recipe  id, version, name; parts, in the order in which they go in;
              oilLoad {share, of}, where the oils share one load;
              testedLoad {share, of, reason}: the most the product was tested
              with; waits {melt, mix, set} and trim, for the bench; windows
              [{lot, melt, oil, pour}], each {from, to} such as "75 °C": of
              any lot of wax, or of the lot named
      parts   kind (wax, oil, additive, dye), name, way (poured, by pieces,
              from the bottle, in a cup), share, of (wax, total, or oil with
              oilLoad), tolerance ("1 %%", "0.5 g" or {under, over}),
              maximum {share, of, reason}: of a wax the most oil it holds, of
              any other part its supplier's maximum; a plan above a maximum is
              refused unless it gives the reason; sensitisers [{name, category
              (1, 1A, 1B), content of the part, specificLimit}]
      vessel  name, fill, tolerance, empty and spread of its own weight
      fill    {weight}, {waterWeight, density} or {capacity, density}
      pots    name, empty, room (said as a fill is)
      cup     empty, room: for parts too small for the scale under the pot
      scales  name, capacity, division d, class (I to IIII), interval e,
              repeatability s; the one to be preferred first
      batch   vessels; loss {perPot, perVessel}; charges: a number or "fewest",
              one per pot where left out; cureMargin: room kept to cure an
              over-pour, 10 %% where left out

      Exit codes: 0 planned, 1 refused, 2 wrong use or a file that cannot be read.
      """;

  private static final String EXAMPLE = "/plan-example.json";
  private static final String SCHEMA = "/candlebench/station/batch/planning/plan-file.schema.json";
  private static final String ANSWER_SCHEMA =
      "/candlebench/station/batch/planning/plan.schema.json";

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Option(names = "--json", description = "print the plan as one JSON object")
  private boolean json;

  @Option(
      names = "--chart",
      description = "print the loads for round amounts, to hang beside the bench")
  private boolean chart;

  @Option(names = "--example", description = "print an example of a plan file")
  private boolean example;

  @Option(
      names = "--schema",
      description = "print the JSON schema of a plan file; with --json, that of a plan")
  private boolean schema;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "a bench's data folder: tells what its finished batches of the recipe lost")
  private Optional<Path> data = Optional.empty();

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "the plan file")
  private Path file;

  @Override
  public Integer call() throws WrongUse {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    if (example) return print(out, example());
    if (schema) return print(out, resource(json ? ANSWER_SCHEMA : SCHEMA));
    if (json && chart) throw new WrongUse("--json holds the chart already: leave --chart out");
    WorkshopPlan plan = plan();
    if (json) out.println(PlanJson.text(plan));
    else out.print(chart ? ChartText.of(BenchChart.of(plan)) : PlanText.of(plan));
    return plan.isRefused() ? Main.NO : Main.DONE;
  }

  private WorkshopPlan plan() throws WrongUse {
    if (file == null)
      throw new WrongUse("name a plan file; candlebench plan --example prints one to start from");
    PlanOrder order = PlanFile.read(file);
    WorkshopPlan plan = WorkshopPlan.of(order);
    if (data.isEmpty()) return plan;
    return learnt(order.formula().id(), Purpose.RECORD.under(data.get()))
        .map(known -> plan.beside(known.loss(), known.batches()))
        .orElse(plan);
  }

  private static Optional<LossLearnt> learnt(String recipe, Path record) throws WrongUse {
    if (!Files.isRegularFile(record))
      throw new WrongUse("no record at '" + record + "': name a bench's data folder with --data");
    List<BatchRecord> batches = new ArrayList<>();
    try (JournalFile journal = JournalFile.open(record)) {
      RecordExport.eachBatch(reader -> journal.scan(1, reader), batches::add);
    } catch (JournalFailed damaged) {
      throw new WrongUse(damaged.getMessage());
    }
    return LossLearnt.of(recipe, batches);
  }

  private static int print(PrintStream out, String text) {
    out.print(text);
    return Main.DONE;
  }

  /** An example of a plan file. */
  static String example() {
    return resource(EXAMPLE);
  }

  private static String resource(String name) {
    try (InputStream in = PlanCommand.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException damaged) {
      throw new IllegalStateException("the program lacks " + name, damaged);
    }
  }
}
