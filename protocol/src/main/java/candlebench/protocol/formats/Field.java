package candlebench.protocol.formats;

import candlebench.protocol.formats.Say.Topic;
import java.util.Set;

/** One field of a {@link LineTable}: how it is read and how it is written. */
interface Field {

  /** How many characters it has. */
  int width();

  /** Reads the field, at which the line stands, into the draft, and moves behind it. */
  void take(LineText line, Draft draft);

  /** Writes the field behind the text; false where it has no way to say it. */
  boolean write(Statement statement, StringBuilder text);

  /** What it can speak of. */
  default Set<Topic> topics() {
    return Set.of();
  }
}
