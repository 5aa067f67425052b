package candlebench.station;

import candlebench.station.view.StationView.Say;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The page's own message file, as a page would use it: what has no sentence, or a value missing, is found here. */
public final class PageWords {
  private static final Pattern LINE =
      Pattern.compile("^  \"([a-z._-]+)\": \"((?:[^\"\\\\]|\\\\.)*)\",$", Pattern.MULTILINE);
  private static final Pattern PLACEHOLDER = Pattern.compile("\\{([a-zA-Z]+)}");

  public static final PageWords ENGLISH = new PageWords(file());

  private final Map<String, String> sentences = new LinkedHashMap<>();

  /** From the module's folder, or from the root. */
  private static Path file() {
    Path fromModule = Path.of("../web/src/main/resources/page/messages.js");
    return Files.exists(fromModule)
        ? fromModule
        : Path.of("web/src/main/resources/page/messages.js");
  }

  private PageWords(Path file) {
    try {
      Matcher lines = LINE.matcher(Files.readString(file));
      while (lines.find()) sentences.put(lines.group(1), lines.group(2));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public Set<String> keys() {
    return sentences.keySet();
  }

  /** The sentence as it would be read; throws {@link IllegalArgumentException} where the page would show a hole. */
  public String read(Say say) {
    String sentence = sentences.get(say.key());
    if (sentence == null) throw new IllegalArgumentException("no sentence for " + say.key());
    return PLACEHOLDER.matcher(sentence).replaceAll(hole -> {
      String value = say.with().get(hole.group(1));
      if (value == null) throw new IllegalArgumentException(say.key() + " lacks " + hole.group(1));
      return Matcher.quoteReplacement(value);
    });
  }
}
