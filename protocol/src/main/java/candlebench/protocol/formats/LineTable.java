package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.formats.Say.Topic;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A line of fixed fields, its fields in the order of the wire. It is read and written by the same table. */
final class LineTable {
  private final List<Field> fields;
  private final Field[] inOrder;
  private final int width;
  private final Set<Topic> topics = EnumSet.noneOf(Topic.class);

  private LineTable(List<Field> fields) {
    this.fields = fields;
    this.inOrder = fields.toArray(Field[]::new);
    this.width = fields.stream().mapToInt(Field::width).sum();
    fields.forEach(field -> topics.addAll(field.topics()));
  }

  static LineTable of(Field... fields) {
    return new LineTable(List.of(fields));
  }

  /** The same with more fields behind. */
  LineTable then(Field... more) {
    return then(new LineTable(List.of(more)));
  }

  /** The same with another table's fields behind. */
  LineTable then(LineTable behind) {
    List<Field> longer = new ArrayList<>(fields);
    longer.addAll(behind.fields);
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
    for (Field field : inOrder) {
      field.take(line, draft);
      if (draft.isStopped()) return;
    }
  }

  /** The line that says this, or empty where a field cannot, or none speaks of it. */
  Optional<String> write(Statement statement) {
    if (!topics.containsAll(statement.topics())) return Optional.empty();
    StringBuilder text = new StringBuilder(width);
    for (Field field : fields) if (!field.write(statement, text)) return Optional.empty();
    return Optional.of(text.toString());
  }
}
