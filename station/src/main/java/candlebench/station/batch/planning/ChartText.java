package candlebench.station.batch.planning;

import candlebench.station.batch.planning.BenchChart.Cell;
import candlebench.station.batch.planning.BenchChart.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A bench chart to be printed on one page. */
public final class ChartText {
  private static final int COLUMN = 14;

  private ChartText() {}

  public static String of(BenchChart chart) {
    Formula formula = chart.plan().order().formula();
    List<String> lines = new ArrayList<>();
    lines.add(formula.name() + ", " + formula.id() + " version " + formula.version());
    for (int i = 0; i < formula.ingredients().size(); i++) {
      Ingredient each = formula.ingredients().get(i);
      lines.add("  " + letter(i) + "  " + each.name() + ": " + Wording.load(each.load())
          + (each.isWax()
              ? ""
              : " as stated, " + Wording.percent(formula.ofWax(each)) + " of wax = "
                  + Wording.percent(formula.ofTotal(each)) + " of total"));
    }
    table(lines, "For so much wax", "wax", formula, chart.forWax());
    table(
        lines,
        "For so many vessels, from one pot with its loss",
        "vessels",
        formula,
        chart.forVessels());
    lines.add("");
    lines.add("Grams, each as its scale shows it. Oil follows the wax that is really in the pot.");
    boolean marked = Stream.concat(chart.forWax().stream(), chart.forVessels().stream())
        .flatMap(row -> row.parts().stream())
        .anyMatch(cell -> !cell.fineEnough());
    if (marked)
      lines.add("* too little for the tolerance on the scale planned for it: use a finer one.");
    return String.join("\n", lines) + "\n";
  }

  private static void table(
      List<String> lines, String title, String first, Formula formula, List<Row> rows) {
    if (rows.isEmpty()) return;
    lines.add("");
    lines.add(title);
    StringBuilder head = new StringBuilder(padded(first));
    for (int i = 0; i < formula.ingredients().size(); i++) head.append(padded(letter(i)));
    lines.add(head.append(padded("total")).toString());
    for (Row row : rows)
      lines.add(padded(row.amount())
          + row.parts().stream().map(ChartText::cell).collect(Collectors.joining())
          + padded(Wording.grams(row.total())));
  }

  private static String cell(Cell cell) {
    return padded(Wording.grams(cell.shown()) + (cell.fineEnough() ? " " : "*"));
  }

  private static String padded(String text) {
    return String.format("%" + COLUMN + "s", text);
  }

  /** Columns are lettered, so that long names of materials do not widen the page. */
  private static String letter(int part) {
    return part < 26 ? String.valueOf((char) ('A' + part)) : "A" + (char) ('A' + part - 26);
  }
}
