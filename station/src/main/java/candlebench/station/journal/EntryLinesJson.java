package candlebench.station.journal;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.io.IOException;
import java.io.InputStream;

/**
 * The whole journal as JSON Lines: one entry a line, and the head as the last. The text of each event is written byte for byte as it
 * was hashed, so that whoever has the file can check the chain without this program. {@link #schema()} documents each field.
 */
public final class EntryLinesJson {
  private static final String SCHEMA = "entry-lines.schema.json";

  private EntryLinesJson() {}

  public static String line(JournalEntry entry) {
    return "{\"entry\":" + entry.sequence()
        + ",\"wall\":" + quoted(entry.wall())
        + ",\"kind\":" + quoted(entry.kind())
        + ",\"event\":" + entry.body()
        + ",\"previous\":" + quoted(entry.previous())
        + ",\"hash\":" + quoted(entry.hash()) + "}";
  }

  /** The last line: how many entries there are, and the head to compare with later. */
  public static String head(Purpose purpose, long entries, String head) {
    return "{\"kind\":\"head\",\"purpose\":" + quoted(purpose.word())
        + ",\"entries\":" + entries
        + ",\"head\":" + quoted(head) + "}";
  }

  /** The schema of the lines, JSON Schema 2020-12, as UTF-8. */
  public static byte[] schema() {
    try (InputStream in = EntryLinesJson.class.getResourceAsStream(SCHEMA)) {
      if (in == null) throw new IllegalStateException("the program lacks its own file " + SCHEMA);
      return in.readAllBytes();
    } catch (IOException unreadable) {
      throw new IllegalStateException("the program cannot read its own file " + SCHEMA, unreadable);
    }
  }

  private static String quoted(String text) {
    return '"' + String.valueOf(JsonStringEncoder.getInstance().quoteAsString(text)) + '"';
  }
}
