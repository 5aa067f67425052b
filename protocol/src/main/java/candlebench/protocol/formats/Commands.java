package candlebench.protocol.formats;

import candlebench.protocol.ScaleCommand;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * How a format asks for what, as text and an end that all its commands have.
 *
 * @param texts the commands it has
 */
record Commands(Map<ScaleCommand, String> texts, String end) {
  static final Commands NONE = ending("");

  static Commands ending(String end) {
    return new Commands(Map.of(), end);
  }

  Commands with(ScaleCommand command, String text) {
    Map<ScaleCommand, String> more = new EnumMap<>(ScaleCommand.class);
    more.putAll(texts);
    more.put(command, text);
    return new Commands(more, end);
  }

  Optional<byte[]> bytes(ScaleCommand command) {
    return Optional.ofNullable(texts.get(command))
        .map(text -> (text + end).getBytes(StandardCharsets.US_ASCII));
  }
}
