package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Verdict;
import candlebench.station.batch.LoadBasis;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Remedy;
import candlebench.station.guidance.BatchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.Place;
import candlebench.station.record.Deviation;
import candlebench.station.record.FillTarget;
import candlebench.station.record.Moment;
import candlebench.station.record.WeighingLine;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every case that the pages of the record can be sent has its words. */
class RecordWordsTest {
  private static final Pattern KEY = Pattern.compile("(?:\"([\\w-]+)\"|\\b([\\w-]+)): \"");

  static Stream<Map.Entry<String, Enum<?>[]>> cases() {
    return Stream.of(
        Map.entry("ending", BatchProgress.End.values()),
        Map.entry("basis", LoadBasis.values()),
        Map.entry("kind", PartKind.values()),
        Map.entry("kind", Place.Kind.values()),
        Map.entry("how", GuidanceEvent.How.values()),
        Map.entry("verdict", Verdict.values()),
        Map.entry("standing", WeighingLine.Standing.values()),
        Map.entry("what", GuidanceEvent.Correctable.values()),
        Map.entry("moment", Moment.What.values()),
        Map.entry("deviation", Deviation.Kind.values()),
        Map.entry("choice", Remedy.Kind.values()),
        Map.entry("rule", FillTarget.Rule.values()));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void every_case_has_its_words(Map.Entry<String, Enum<?>[]> cases) throws IOException {
    String file = Files.readString(Path.of("src/main/resources/page/record-words.js"));
    Matcher group = Pattern.compile(
            "^  " + cases.getKey() + ": \\{(.*?)\\}", Pattern.MULTILINE | Pattern.DOTALL)
        .matcher(file.replaceAll("\"[^\"\\n]*\\{[^\"\\n]*\"", "\"sentence\""));
    assertThat(group.find()).as(cases.getKey()).isTrue();
    Set<String> keys = new TreeSet<>();
    for (Matcher key = KEY.matcher(group.group(1)); key.find(); )
      keys.add(key.group(1) == null ? key.group(2) : key.group(1));
    for (Enum<?> each : cases.getValue())
      assertThat(keys).as(cases.getKey()).contains(SheetRows.word(each));
  }
}
