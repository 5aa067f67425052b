package candlebench.protocol.formats;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.util.List;
import java.util.Optional;

/**
 * A layout written as the row of its columns, from left to right.
 *
 * @param columns what stands side by side; where one of them cannot say its part, the row cannot be written
 */
record Columns(List<Column> columns) {

  /**
   * What a row says.
   *
   * @param stored whether it is a stored tare
   */
  record Row(Indication shown, Basis basis, Stability stability, boolean stored) {}

  /** One field of a row. */
  interface Column {
    Optional<String> of(Row row);
  }

  static Columns of(Column... columns) {
    return new Columns(List.of(columns));
  }

  Optional<String> write(Row row) {
    StringBuilder line = new StringBuilder();
    for (Column column : columns) {
      Optional<String> field = column.of(row);
      if (field.isEmpty()) return Optional.empty();
      line.append(field.get());
    }
    return Optional.of(line.toString());
  }

  static Column text(String text) {
    return row -> Optional.of(text);
  }

  /** The number with its minus before the first digit, at the right of its field. */
  static Column weight(int width) {
    return row -> Fields.right(row.shown.number(), width);
  }

  /** The number without its sign, at the right of its field. */
  static Column digits(int width) {
    return row -> Fields.right(Fields.digits(row.shown), width);
  }

  /** The same with its last digit in square brackets. */
  static Column digitsLastBracketed(int width) {
    return row -> {
      String digits = Fields.digits(row.shown);
      int last = digits.length() - 1;
      return Fields.right(digits.substring(0, last) + "[" + digits.charAt(last) + "]", width);
    };
  }

  /** A minus, or a space. */
  static Column polarity() {
    return row -> Optional.of(String.valueOf(Fields.sign(row.shown, ' ')));
  }

  /** The unit as wide as it is; a unit must be named. */
  static Column unit() {
    return row -> row.shown.unit().map(unit -> unit.symbol());
  }

  static Column unitLeft(int width) {
    return row -> unit().of(row).flatMap(symbol -> Fields.left(symbol, width));
  }

  static Column unitRight(int width) {
    return row -> unit().of(row).flatMap(symbol -> Fields.right(symbol, width));
  }

  /** A question mark while the weight moves, else what stands in its place. */
  static Column unstableMark(String stable) {
    return row -> switch (row.stability) {
      case STABLE -> Optional.of(stable);
      case UNSTABLE -> Optional.of("?");
      case UNSTATED -> Optional.empty();
    };
  }

  /** What the number is, by these marks for gross, net and a stored tare. */
  static Column legend(int width, String gross, String net, String tare) {
    return row -> {
      if (row.stored) return Fields.left(tare, width);
      return switch (row.basis) {
        case GROSS -> Fields.left(gross, width);
        case NET -> Fields.left(net, width);
        case UNSTATED -> Optional.empty();
      };
    };
  }

  /** Nothing, for rows that do not say what the number is. */
  static Column noLegend(String text) {
    return row -> row.basis == Basis.UNSTATED && !row.stored ? Optional.of(text) : Optional.empty();
  }
}
