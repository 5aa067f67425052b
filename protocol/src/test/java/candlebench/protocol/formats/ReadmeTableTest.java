package candlebench.protocol.formats;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.CorpusRow;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The README's table of scales is the list of formats, told to users. */
class ReadmeTableTest {

  @Test
  void every_family_has_its_row_and_each_row_is_true() throws IOException {
    List<String> rows = Files.readAllLines(Path.of("../README.md")).stream()
        .dropWhile(line -> !line.startsWith("| Scales |"))
        .skip(2)
        .takeWhile(line -> line.startsWith("|"))
        .toList();
    Map<String, List<ScaleFormat>> families = CorpusRow.formats()
        .collect(Collectors.groupingBy(
            format -> format.id().replaceFirst("/.*", ""),
            LinkedHashMap::new,
            Collectors.toList()));
    assertThat(rows.stream().map(ReadmeTableTest::withoutName))
        .containsExactlyElementsOf(
            families.values().stream().map(ReadmeTableTest::row).toList());
    assertThat(rows).noneMatch(row -> row.startsWith("|  |"));
  }

  private static String withoutName(String row) {
    return row.substring(row.indexOf('|', 1));
  }

  private static String row(List<ScaleFormat> family) {
    return String.join(
        " | ",
        "| " + ids(family),
        family.get(0).lines().get(0).toString(),
        which(family, format -> format.command(ScaleCommand.SEND).isPresent()),
        which(family, ScaleFormat::unitIsASetting) + " |");
  }

  private static String which(List<ScaleFormat> family, Predicate<ScaleFormat> so) {
    List<ScaleFormat> those = family.stream().filter(so).toList();
    if (those.isEmpty()) return "no";
    return those.size() == family.size() ? "yes" : ids(those);
  }

  private static String ids(Collection<ScaleFormat> formats) {
    return formats.stream().map(format -> "`" + format.id() + "`").collect(Collectors.joining(" "));
  }
}
