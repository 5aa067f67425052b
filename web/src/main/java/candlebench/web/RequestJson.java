package candlebench.web;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The body of a request: one object of texts, and in {@code lots}, if it is there, one more. Nothing else is taken: no number that could
 * be read two ways, no field twice, nothing after the end.
 */
record RequestJson(Map<String, String> texts, Map<String, String> lots) {
  private static final JsonFactory JSON =
      JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();
  private static final int TEXT_MOST = 500;

  /** Throws {@link IllegalArgumentException} that says what to send instead. */
  static RequestJson of(byte[] body) {
    Map<String, String> texts = new LinkedHashMap<>();
    Map<String, String> lots = new LinkedHashMap<>();
    try (JsonParser in = JSON.createParser(body)) {
      if (in.nextToken() != JsonToken.START_OBJECT)
        throw new IllegalArgumentException(
            "a command is a JSON object such as {\"id\":\"a1\",\"command\":\"go-on\"}");
      while (in.nextToken() == JsonToken.FIELD_NAME) {
        String field = in.currentName();
        if (field.equals("lots")) readLots(in, lots);
        else texts.put(field, text(field, in));
      }
      if (in.nextToken() != null)
        throw new IllegalArgumentException("something follows the command: send one at a time");
    } catch (JsonProcessingException malformed) {
      throw new IllegalArgumentException(
          "the body is not the JSON of one command: " + malformed.getOriginalMessage());
    } catch (IOException impossible) {
      throw new UncheckedIOException("reading from memory failed", impossible);
    }
    return new RequestJson(texts, lots);
  }

  private static void readLots(JsonParser in, Map<String, String> lots) throws IOException {
    if (in.nextToken() != JsonToken.START_OBJECT)
      throw new IllegalArgumentException("'lots' is an object of lot numbers by material");
    while (in.nextToken() == JsonToken.FIELD_NAME) {
      String material = checked("lots", in.currentName());
      lots.put(material, text(material, in));
    }
  }

  private static String text(String field, JsonParser in) throws IOException {
    if (in.nextToken() != JsonToken.VALUE_STRING)
      throw new IllegalArgumentException("'" + field + "' is text: put it in quotes");
    return checked(field, in.getText());
  }

  /** Only what can be written down and read again. */
  private static String checked(String field, String text) {
    if (text.length() > TEXT_MOST)
      throw new IllegalArgumentException(
          "'" + field + "' is too long: keep it under " + TEXT_MOST + " characters");
    if (text.codePoints().anyMatch(c -> Character.getType(c) == Character.SURROGATE))
      throw new IllegalArgumentException(
          "'" + field + "' holds half a character: type it anew, without what was pasted");
    return text;
  }
}
