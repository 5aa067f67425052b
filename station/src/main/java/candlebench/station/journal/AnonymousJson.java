package candlebench.station.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.HashMap;
import java.util.Map;

/**
 * Entries and commands without what is personal: people, lots, scales' names and whatever a maker wrote in words become {@code person 1},
 * {@code lot 2}, …; the same always the same, so that a replay goes the same way. Empty stays empty. Recipes, weights, times and command
 * ids stay as they are.
 */
public final class AnonymousJson {
  private static final String RECIPE = "recipe";
  private static final String LOTS = "lots";

  /** What stands in these fields, wherever they are. */
  private static final Map<String, String> ALWAYS = Map.of(
      "person", "person",
      "lot", "lot",
      "scaleName", "scale",
      "reason", "words",
      "note", "words",
      "text", "words");

  private final Map<String, String> names = new HashMap<>();
  private final Map<String, Integer> counts = new HashMap<>();

  /** The name that stands for a scale's. */
  public String scale(String name) {
    return name("scale", name);
  }

  /** The name that stands for a lot's. */
  public String lot(String name) {
    return name("lot", name);
  }

  public EntryText entry(EntryText text) {
    return new EntryText(text.kind(), line(text.body()));
  }

  /** One line of JSON, as it was written but for the names. */
  public String line(String json) {
    try {
      JsonNode tree = EntryJson.JSON.readTree(json);
      hide(tree);
      return EntryJson.JSON.writeValueAsString(tree);
    } catch (JsonProcessingException unreadable) {
      throw new IllegalArgumentException("no line of JSON: " + json, unreadable);
    }
  }

  private void hide(JsonNode node) {
    if (node instanceof ArrayNode array) array.forEach(this::hide);
    if (!(node instanceof ObjectNode object)) return;
    boolean wordsCorrected = object.path("what").isTextual()
        && object.path("entry").isNumber()
        && !object.path("what").asText().equals("WEIGHT");
    object.properties().forEach(field -> {
      String key = field.getKey();
      JsonNode value = field.getValue();
      if (key.equals(RECIPE)) return;
      if (key.equals(LOTS) && value instanceof ObjectNode lots)
        lots.properties().forEach(lot -> lot.setValue(hidden("lot", lot.getValue())));
      else if (value.isTextual() && ALWAYS.containsKey(key))
        field.setValue(hidden(ALWAYS.get(key), value));
      else if (value.isTextual() && isOther(key, object, wordsCorrected))
        field.setValue(hidden(key.equals("scale") ? "scale" : "lot", value));
      else hide(value);
    });
  }

  /** A scale that a command names; the lots of a change; what was and is said where no weight is corrected. */
  private static boolean isOther(String key, ObjectNode object, boolean wordsCorrected) {
    return switch (key) {
      case "scale" -> true;
      case "from", "to" -> object.has("material");
      case "was", "now" -> wordsCorrected;
      default -> false;
    };
  }

  private TextNode hidden(String kind, JsonNode value) {
    return TextNode.valueOf(name(kind, value.asText()));
  }

  private String name(String kind, String real) {
    if (real.isBlank()) return real;
    return names.computeIfAbsent(
        kind + " " + real, unseen -> kind + " " + counts.merge(kind, 1, Integer::sum));
  }
}
