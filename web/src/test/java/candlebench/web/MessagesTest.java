package candlebench.web;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Recognition.Finding;
import candlebench.station.batch.planning.Severity;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.journal.JournalFailed.Trouble;
import candlebench.station.link.LinkState;
import candlebench.station.link.find.Found.Sending;
import candlebench.station.link.find.Search;
import candlebench.station.view.StationView.Cue;
import candlebench.station.view.StationView.PartState;
import candlebench.station.view.StationView.PotState;
import candlebench.station.view.StationView.Trust;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every sentence that the bench or the page can ask for is in the message file, and none stands there for nobody. */
class MessagesTest {
  private static final Path PAGE = Path.of("src/main/resources/page");
  private static final Pattern IN_FILE =
      Pattern.compile("^  \"([\\w.-]+)\": \"", Pattern.MULTILINE);
  private static final Pattern IN_JAVA = Pattern.compile("\"([a-z-]+\\.[a-z]+(?:-[a-z]+)*)\"");
  private static final Pattern UNDOABLE = Pattern.compile("undoable\\(at, \"([a-z-]+)\"");
  private static final Pattern IN_PAGE =
      Pattern.compile("[\"`]((?:page|figure|trust|cue)\\.[a-z-]+|amounts(?:\\.[a-z]+)?)[\"`]");

  @Test
  void every_key_has_its_sentence() throws IOException {
    Set<String> known = known();
    assertThat(known).hasSizeGreaterThan(100).containsAll(used());
  }

  @Test
  void no_sentence_stands_there_for_nobody() throws IOException {
    assertThat(known()).isSubsetOf(used());
  }

  private static Set<String> known() throws IOException {
    return found(IN_FILE, Files.readString(PAGE.resolve("messages.js")));
  }

  /** Keys that stand in the sources as text, and those that are made from the name of a case. */
  private static Set<String> used() throws IOException {
    Set<String> used = new TreeSet<>(Set.of("done"));
    Set<String> kinds = new TreeSet<>();
    for (String key : found(IN_FILE, Files.readString(PAGE.resolve("messages.js"))))
      kinds.add(key.split("\\.")[0]);
    for (String root : new String[] {"../station/src/main/java", "src/main/java"})
      for (String key : sources(root, ".java", IN_JAVA))
        if (kinds.contains(key.split("\\.")[0])) used.add(key);
    for (String step : sources("../station/src/main/java", ".java", UNDOABLE))
      used.add("undo." + step);
    used.addAll(sources(PAGE.toString(), ".js", IN_PAGE));
    for (Cue each : Cue.values()) if (each != Cue.NONE) used.add("cue." + word(each));
    for (Trust each : Trust.values()) used.add("trust." + word(each));
    for (LinkState each : LinkState.values()) {
      used.add("link." + word(each));
      if (each != LinkState.LIVE && each != LinkState.CONNECTING) used.add("scale." + word(each));
    }
    for (Search.Doing each : Search.Doing.values()) used.add("find." + word(each));
    for (Finding each : Finding.values()) used.add("find." + word(each));
    for (Sending each : Sending.values()) if (each != Sending.NEVER) used.add("find." + word(each));
    for (Trouble each : Trouble.values()) used.add("record-trouble." + word(each));
    for (Severity each : Severity.values()) used.add("severity." + word(each));
    used.remove("record.db");
    for (PartState each : PartState.values()) used.add("part." + word(each));
    for (PotState each : PotState.values())
      if (each != PotState.WAITING) used.add("pot." + word(each));
    for (String each : new String[] {"under", "within", "over"}) used.add("verdict." + each);
    for (String each : new String[] {"of_wax", "of_total"}) used.add("basis." + each);
    for (String each : new String[] {"part", "exact", "weigh", "where"})
      used.add("page.plan-" + each);
    for (String each : new String[] {
      "shows",
      "link",
      "frames",
      "format",
      "place",
      "capacity",
      "division",
      "sends",
      "last-check",
      "check-scale",
      "check-known",
      "check-unit",
      "check-person"
    }) used.add("page.scales-" + each);
    for (Class<?> each : GuidanceEvent.class.getPermittedSubclasses())
      used.add("record."
          + each.getSimpleName().replaceAll("(?<=.)([A-Z])", "-$1").toLowerCase(Locale.ROOT));
    return used;
  }

  private static Set<String> sources(String root, String ending, Pattern pattern)
      throws IOException {
    Set<String> keys = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of(root))) {
      files
          .filter(file -> file.toString().endsWith(ending) && !file.endsWith("messages.js"))
          .forEach(file -> keys.addAll(found(pattern, text(file))));
    }
    return keys;
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Set<String> found(Pattern pattern, String text) {
    Set<String> keys = new TreeSet<>();
    for (Matcher matcher = pattern.matcher(text); matcher.find(); ) keys.add(matcher.group(1));
    return keys;
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
