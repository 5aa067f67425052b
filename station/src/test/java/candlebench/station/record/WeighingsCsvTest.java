package candlebench.station.record;

import static candlebench.station.record.BatchScript.OIL;
import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.record.WeighingsCsv.Decimals;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class WeighingsCsvTest {
  private static final String HEAD = "ab".repeat(32);

  private static BatchRecord batch() {
    BatchScript script =
        BatchScript.candles("20261125-1", 2, Map.of(OIL, "=1+2;\"x\"", BatchRecord.WICK, "007"));
    return script
        .noted("@ the third; one \"odd\" glass")
        .corrected(1, Correctable.LOT, BatchRecord.WICK, "007", "008", "-misread")
        .record();
  }

  private static String file(Decimals decimals) {
    WeighingsCsv csv = new WeighingsCsv(decimals);
    return csv.heading() + csv.rows(batch()) + csv.head(31, HEAD);
  }

  /** RFC 4180 as a spreadsheet reads it. */
  private static List<List<String>> read(String file, char between) {
    List<List<String>> rows = new ArrayList<>();
    List<String> row = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < file.length(); i++) {
      char c = file.charAt(i);
      if (quoted && c == '"' && i + 1 < file.length() && file.charAt(i + 1) == '"') {
        cell.append('"');
        i++;
      } else if (c == '"') quoted = !quoted;
      else if (!quoted && (c == between || c == '\n')) {
        row.add(cell.toString());
        cell.setLength(0);
        if (c == '\n') {
          rows.add(row);
          row = new ArrayList<>();
        }
      } else if (quoted || c != '\r') cell.append(c);
    }
    assertThat(cell.length() + row.size()).as("the file ends with a line end").isZero();
    return rows;
  }

  @ParameterizedTest
  @EnumSource
  void every_row_has_every_column_in_both_conventions(Decimals decimals) {
    List<List<String>> rows = read(file(decimals), decimals == Decimals.POINT ? ',' : ';');
    assertThat(rows)
        .hasSize(1 + 4 + 1 + 1 + 1)
        .allSatisfy(row -> assertThat(row).hasSize(24));
    assertThat(rows.get(0).get(0)).isEqualTo("\uFEFFrow");
    String mark = decimals == Decimals.POINT ? "." : ",";
    List<String> vessel = rows.get(3);
    assertThat(vessel)
        .contains("vessel 1", "252", "252" + mark + "1", "0" + mark + "1", "433" + mark + "4");
    assertThat(rows.get(rows.size() - 1)).contains("head", "31", HEAD);
  }

  @Test
  void what_the_maker_typed_comes_back_as_text_and_never_as_a_formula() {
    List<List<String>> rows = read(file(Decimals.COMMA), ';');
    assertThat(rows.get(2)).contains("'=1+2;\"x\"");
    assertThat(rows.get(6)).contains("'@ the third; one \"odd\" glass");
    for (List<String> row : rows)
      for (String cell : row)
        if (!cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0)
          assertThat(cell).as("only a number may begin so").matches("-?\\d+([.,]\\d+)?");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=cmd|' /C calc'!A0", "+1", "-1", "@SUM(A1)", "\t=1", " =1", "＝1", "007", "7", "1E5", "1,5",
        "3-4", "3/4", "2026-11-25", "12:30", "MAR1", "1 Sep", "10-DEC", "true", "5%", "$5", "1 000"
      })
  void text_that_a_spreadsheet_would_change_is_marked_as_text(String text) {
    assertThat(read(CsvText.cell(text) + "\r\n", ',').get(0)).containsExactly("'" + text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Q-31",
        "20261125-1",
        "lot 7",
        "Märzlot 3",
        "W12",
        "2026-11-25T09:00:00+01:00",
        "810.7 g",
        "",
        "a=b",
        "Marble"
      })
  void other_text_is_left_as_it_is(String text) {
    assertThat(read(CsvText.cell(text) + "\r\n", ',').get(0)).containsExactly(text);
  }
}
