package candlebench.station.batch.planning;

import candlebench.shared.NearestWord;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/** An object of a plan file, with its place in the file. Every refusal names the field and the fix. */
final class FieldsJson {
  private static final JsonMapper JSON = JsonMapper.builder()
      .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
      .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
      .build();

  /** Where the library says that an object began, in words of its own. */
  private static final Pattern START_MARKER = Pattern.compile(" ?\\(start marker at .*\\)");

  /** Longer text is no name and no amount. */
  private static final int LONGEST_TEXT = 400;

  private static final int LONGEST_QUOTE = 60;

  private final String place;
  private final JsonNode node;

  private FieldsJson(String place, JsonNode node, List<String> known) {
    this.place = place;
    this.node = node;
    for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!known.contains(name))
        throw new FieldWrong(
            at(quoted(name)),
            "no such field; nearest is \"" + NearestWord.to(name, known) + "\". There are "
                + String.join(", ", known));
    }
  }

  static FieldsJson read(String text, String... known) {
    JsonNode node;
    try {
      node = JSON.readTree(text);
    } catch (JsonProcessingException wrong) {
      String where = wrong.getLocation() == null
          ? ""
          : "line " + wrong.getLocation().getLineNr() + ", column "
              + wrong.getLocation().getColumnNr();
      throw new FieldWrong(
          where,
          "not JSON: "
              + oneLine(START_MARKER.matcher(wrong.getOriginalMessage()).replaceAll("")));
    }
    if (!node.isObject())
      throw new FieldWrong("", "not a plan file: it is a JSON object, from { to }");
    return new FieldsJson("", node, List.of(known));
  }

  /** @param fix what to give, as the rest of "missing: give …" */
  FieldsJson object(String name, String fix, String... known) {
    return new FieldsJson(
        at(name), needed(name, fix, JsonNode::isObject, "an object"), List.of(known));
  }

  Optional<FieldsJson> objectIfAny(String name, String... known) {
    return node.has(name) ? Optional.of(object(name, "", known)) : Optional.empty();
  }

  List<FieldsJson> objects(String name, String fix, String... known) {
    JsonNode list = needed(name, fix, JsonNode::isArray, "a list, from [ to ]");
    List<FieldsJson> objects = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      String each = at(name) + "[" + i + "]";
      if (!list.get(i).isObject()) throw new FieldWrong(each, "not an object, from { to }");
      objects.add(new FieldsJson(each, list.get(i), List.of(known)));
    }
    return objects;
  }

  List<FieldsJson> objectsIfAny(String name, String... known) {
    return node.has(name) ? objects(name, "", known) : List.of();
  }

  String text(String name, String fix) {
    String text = needed(
            name, fix, JsonNode::isTextual, "text: put it in double quotes, a number with its unit")
        .textValue();
    if (text.isBlank()) throw new FieldWrong(at(name), "empty: give " + fix);
    if (text.length() > LONGEST_TEXT || text.chars().anyMatch(Character::isISOControl))
      throw new FieldWrong(at(name), "not a line of at most " + LONGEST_TEXT + " characters");
    return text;
  }

  Optional<String> textIfAny(String name) {
    return node.has(name)
        ? Optional.of(text(name, "something, or leave the field out"))
        : Optional.empty();
  }

  <T> T typed(String name, Function<String, T> read, String fix) {
    String text = text(name, fix);
    try {
      return read.apply(text);
    } catch (IllegalArgumentException wrong) {
      throw new FieldWrong(at(name), oneLine(wrong.getMessage()));
    }
  }

  <T> Optional<T> typedIfAny(String name, Function<String, T> read) {
    return node.has(name)
        ? Optional.of(typed(name, read, "something, or leave the field out"))
        : Optional.empty();
  }

  int count(String name, String fix) {
    JsonNode number =
        needed(name, fix, JsonNode::isIntegralNumber, "a whole number, without quotes");
    if (!number.canConvertToInt())
      throw new FieldWrong(at(name), number.asText() + " is beyond any count of this kind");
    return number.intValue();
  }

  boolean has(String name) {
    return node.has(name);
  }

  boolean isText(String name) {
    return node.path(name).isTextual();
  }

  /** A value made of this object's fields; what its constructor refuses is told with this place. */
  <T> T made(Supplier<T> value) {
    try {
      return value.get();
    } catch (FieldWrong known) {
      throw known;
    } catch (IllegalArgumentException wrong) {
      throw new FieldWrong(place, oneLine(wrong.getMessage()));
    }
  }

  FieldWrong wrong(String name, String words) {
    return new FieldWrong(at(name), words);
  }

  private JsonNode needed(String name, String fix, Predicate<JsonNode> kind, String asked) {
    JsonNode value = node.get(name);
    if (value == null) throw new FieldWrong(at(name), "missing: give " + fix);
    if (value.isNull())
      throw new FieldWrong(at(name), "null: give a value, or leave the field out");
    if (!kind.test(value))
      throw new FieldWrong(at(name), quoted(value.toString()) + " is not " + asked);
    return value;
  }

  private String at(String name) {
    return place.isEmpty() ? name : place + "." + name;
  }

  private static String quoted(String text) {
    String line = oneLine(text);
    return line.length() <= LONGEST_QUOTE ? line : line.substring(0, LONGEST_QUOTE) + "…";
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\p{Cntrl}+", " ").trim();
  }

  /** A field that cannot be read. */
  static final class FieldWrong extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    FieldWrong(String place, String words) {
      super(place.isEmpty() ? words : place + ": " + words);
    }
  }
}
