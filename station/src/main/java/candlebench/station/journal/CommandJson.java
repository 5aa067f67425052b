package candlebench.station.journal;

import candlebench.station.guidance.MakerCommand;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What the maker said as one line of JSON, its kind under {@code "command"}, for the trace of inputs. */
public final class CommandJson {
  private static final String KIND = "command";

  private static final Map<String, Class<?>> BY_KIND = Arrays.stream(
          MakerCommand.class.getPermittedSubclasses())
      .collect(Collectors.toUnmodifiableMap(EntryJson::kind, Function.identity()));

  private CommandJson() {}

  /** The kind of a command: {@code go-on}. */
  public static String kind(MakerCommand command) {
    return EntryJson.kind(command.getClass());
  }

  public static String text(MakerCommand command) {
    ObjectNode object = EntryJson.JSON.createObjectNode().put(KIND, kind(command));
    object.setAll(EntryJson.JSON.<ObjectNode>valueToTree(command));
    return object.toString();
  }

  /** Reads it back; throws {@link IllegalArgumentException} if it is none. */
  public static MakerCommand command(String text) {
    try {
      JsonNode tree = EntryJson.JSON.readTree(text);
      Class<?> type = BY_KIND.get(tree.path(KIND).asText());
      if (type == null || !(tree instanceof ObjectNode object))
        throw new IllegalArgumentException("no command: " + text);
      object.remove(KIND);
      return (MakerCommand) EntryJson.JSON.treeToValue(object, type);
    } catch (JsonProcessingException unreadable) {
      throw new IllegalArgumentException("no command: " + text, unreadable);
    }
  }
}
