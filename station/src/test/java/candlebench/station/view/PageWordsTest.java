package candlebench.station.view;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.PageWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PageWordsTest {
  private static final Pattern KEY = Pattern.compile(
      "\"((?:now|detail|count-in|refused|trouble|confirm|choice|cost|closed|timer)\\.[a-z-]+)\"");

  private static final Pattern UNDO = Pattern.compile("undoable\\(at, \"([a-z-]+)\"\\)");

  @Test
  void every_key_that_guidance_can_say_has_its_sentence() throws IOException {
    Set<String> said = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/candlebench/station/guidance"))) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        Matcher keys = KEY.matcher(Files.readString(file));
        while (keys.find()) said.add(keys.group(1));
        Matcher undos = UNDO.matcher(Files.readString(file));
        while (undos.find()) said.add("undo." + undos.group(1));
      }
    }
    assertThat(said).hasSizeGreaterThan(60);
    assertThat(PageWords.ENGLISH.keys()).containsAll(said);
  }
}
