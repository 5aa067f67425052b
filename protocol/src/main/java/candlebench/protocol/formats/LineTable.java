package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.formats.Say.Topic;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A line of fixed fields, one part per field in the order of the wire. It is read and written by the same table. */
final class LineTable {
  private final List<Part> parts;
  private final Part[] inOrder;
  private final int width;
  private final Set<Topic> topics = EnumSet.noneOf(Topic.class);

  private LineTable(List<Part> parts) {
    this.parts = parts;
    this.inOrder = parts.toArray(Part[]::new);
    this.width = parts.stream().mapToInt(Part::width).sum();
    parts.forEach(part -> topics.addAll(part.topics()));
  }

  static LineTable of(Part... parts) {
    return new LineTable(List.of(parts));
  }

  /** The same with more parts behind. */
  LineTable then(Part... more) {
    return then(new LineTable(List.of(more)));
  }

  /** The same with another table's parts behind. */
  LineTable then(LineTable behind) {
    List<Part> longer = new ArrayList<>(parts);
    longer.addAll(behind.parts);
    return new LineTable(List.copyOf(longer));
  }

  /** What is left of the line, by the table that is as wide. */
  static Decoded readFitting(LineText line, List<LineTable> tables) {
    for (LineTable table : tables) if (table.width == line.left()) return table.read(line);
    int widest = tables.stream().mapToInt(LineTable::width).max().orElseThrow();
    return line.moveTo(line.place() + Math.min(line.left(), widest)).wrongLength();
  }

  int width() {
    return width;
  }

  /** What is left of the line, which must be as wide as the table. */
  Decoded read(LineText line) {
    if (line.left() != width)
      return line.moveTo(line.place() + Math.min(line.left(), width)).wrongLength();
    Draft draft = new Draft();
    readInto(draft, line);
    return draft.decoded(line);
  }

  /** Takes what comes next, for lines in which something else than fixed fields follows. */
  void readInto(Draft draft, LineText line) {
    for (Part part : inOrder) {
      part.take(line, draft);
      if (draft.isStopped()) return;
    }
  }

  /** The line that says this, or empty where a part cannot, or none speaks of it. */
  Optional<String> write(Statement statement) {
    if (!topics.containsAll(statement.topics())) return Optional.empty();
    StringBuilder text = new StringBuilder(width);
    for (Part part : parts) if (!part.write(statement, text)) return Optional.empty();
    return Optional.of(text.toString());
  }
}
