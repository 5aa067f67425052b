package candlebench.simulator;

import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * Hears commands as a format says them, byte by byte, with whatever line end the host uses. A command that has no line end is heard
 * behind anything else, since nothing marks its beginning.
 */
final class CommandEar {
  private static final int LONGEST = 64;

  private final Map<ScaleCommand, byte[]> words = new EnumMap<>(ScaleCommand.class);
  private final Map<ScaleCommand, Boolean> ended = new EnumMap<>(ScaleCommand.class);
  private final byte[] heard = new byte[LONGEST];
  private int length;
  private long notUnderstood;

  CommandEar(ScaleFormat format) {
    for (ScaleCommand command : ScaleCommand.values())
      format.command(command).ifPresent(bytes -> {
        byte[] word = withoutLineEnd(bytes);
        words.put(command, word);
        ended.put(command, word.length < bytes.length);
      });
  }

  /** Takes a byte; gives the command that it completes. */
  Optional<ScaleCommand> hear(byte b) {
    if (b == '\r' || b == '\n') return lineEnds();
    if (length == LONGEST) {
      notUnderstood++;
      length = 0;
    }
    heard[length++] = b;
    Optional<ScaleCommand> command = matching(false);
    if (command.isPresent()) length = 0;
    return command;
  }

  /** How many lines were no command. */
  long notUnderstood() {
    return notUnderstood;
  }

  private Optional<ScaleCommand> lineEnds() {
    if (length == 0) return Optional.empty();
    Optional<ScaleCommand> command = matching(true);
    if (command.isEmpty()) notUnderstood++;
    length = 0;
    return command;
  }

  private Optional<ScaleCommand> matching(boolean lineEnded) {
    for (Map.Entry<ScaleCommand, byte[]> entry : words.entrySet()) {
      byte[] word = entry.getValue();
      int start = lineEnded ? 0 : Math.max(0, length - word.length);
      if (ended.get(entry.getKey()) == lineEnded
          && Arrays.equals(word, 0, word.length, heard, start, length))
        return Optional.of(entry.getKey());
    }
    return Optional.empty();
  }

  private static byte[] withoutLineEnd(byte[] bytes) {
    int end = bytes.length;
    while (end > 0 && (bytes[end - 1] == '\r' || bytes[end - 1] == '\n')) end--;
    return Arrays.copyOf(bytes, end);
  }
}
