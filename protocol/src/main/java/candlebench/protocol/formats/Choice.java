package candlebench.protocol.formats;

import candlebench.protocol.Refusal.Reason;
import candlebench.protocol.formats.Say.Topic;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * A mark that is one of several, all of the same width. Of those that say the same, the first is written.
 *
 * @param marks what the marks say, in the order in which one is chosen
 */
record Choice(List<Mark> marks) implements Field {

  private record Mark(String text, List<Say> says) {}

  /** A choice of this mark only; others are added with {@link #or}. */
  static Choice of(String text, Say... says) {
    return new Choice(List.of(new Mark(text, List.of(says))));
  }

  Choice or(String text, Say... says) {
    if (text.length() != width())
      throw new IllegalArgumentException("all marks of a field have the same width: '" + text
          + "' and '" + marks.get(0).text + "' have not");
    List<Mark> more = new ArrayList<>(marks);
    more.add(new Mark(text, List.of(says)));
    return new Choice(List.copyOf(more));
  }

  @Override
  public int width() {
    return marks.get(0).text.length();
  }

  @Override
  public void take(LineText line, Draft draft) {
    for (Mark mark : marks) {
      if (!line.comes(mark.text)) continue;
      line.moveTo(line.place() + mark.text.length());
      for (Say say : mark.says) draft.say(say, mark.text);
      return;
    }
    draft.stop(line.refused(
        Reason.UNKNOWN_HEADER, "none of the marks that this layout has in this place"));
  }

  @Override
  public boolean write(Statement statement, StringBuilder text) {
    for (Mark mark : marks) {
      if (!isWritten(mark, statement)) continue;
      text.append(mark.text);
      return true;
    }
    return false;
  }

  private static boolean isWritten(Mark mark, Statement statement) {
    for (Say say : mark.says) if (!statement.is(say)) return false;
    return !mark.says.contains(Say.FAULT) || mark.text.strip().equals(statement.fault());
  }

  @Override
  public Set<Topic> topics() {
    Set<Topic> topics = EnumSet.noneOf(Topic.class);
    for (Mark mark : marks) for (Say say : mark.says) topics.add(say.topic());
    return topics;
  }
}
