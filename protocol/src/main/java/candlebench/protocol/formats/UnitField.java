package candlebench.protocol.formats;

import candlebench.protocol.formats.Say.Topic;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The unit in a field of fixed width, spaces around it.
 *
 * @param names how units are named in it
 * @param place where it is written
 * @param whenBlank what a blank field is
 */
record UnitField(int width, Names names, Place place, Blank whenBlank) implements Field {

  /** Where the unit stands in its field. Read wherever it stands. */
  enum Place {
    LEFT,
    RIGHT,
    /** In the middle if it has one letter in a field of three, else at the left. */
    MIDDLE
  }

  /** What a blank field is. */
  enum Blank {
    /** A fault: a unit is always named. */
    REFUSED,
    /** A fault, unless the weight is out of range. */
    OUT_OF_RANGE,
    /** No unit. */
    NO_UNIT,
    /** The weight moves, and its unit is left out until it rests. */
    MOVING
  }

  /** How units are named. */
  interface Names {
    /** By their symbols, in lower case. */
    Names SYMBOLS = MassUnit::symbol;
    /** By their symbols in capitals. */
    Names CAPITALS = unit -> unit.symbol().toUpperCase(Locale.ROOT);

    String of(MassUnit unit);

    /** Takes the field that ends before a place; empty where nothing we know stands there. */
    default Optional<WireUnit> take(LineText line, int end) {
      return line.unit(end);
    }
  }

  static UnitField left(int width) {
    return new UnitField(width, Names.SYMBOLS, Place.LEFT, Blank.REFUSED);
  }

  static UnitField right(int width) {
    return new UnitField(width, Names.SYMBOLS, Place.RIGHT, Blank.REFUSED);
  }

  static UnitField middle(int width) {
    return new UnitField(width, Names.SYMBOLS, Place.MIDDLE, Blank.REFUSED);
  }

  UnitField named(Names others) {
    return new UnitField(width, others, place, whenBlank);
  }

  UnitField whenBlank(Blank other) {
    return new UnitField(width, names, place, other);
  }

  @Override
  public void take(LineText line, Draft draft) {
    int start = line.place();
    int end = start + width;
    Optional<WireUnit> unit = names.take(line, end);
    boolean blank = unit.isPresent() && unit.get() == WireUnit.NONE;
    boolean named = !blank || whenBlank == Blank.NO_UNIT || whenBlank == Blank.MOVING;
    if (unit.isPresent() && named) draft.unit(unit.get());
    else draft.flaw((blank ? line.moveTo(start) : line).unknownUnit());
    if (whenBlank == Blank.MOVING) draft.say(blank ? Say.UNSTABLE : Say.STABLE, "");
    line.moveTo(end);
  }

  @Override
  public boolean write(Statement statement, StringBuilder text) {
    Optional<MassUnit> unit = unit(statement);
    boolean mayBeBlank = statement.number().isEmpty() || whenBlank == Blank.NO_UNIT;
    boolean written = whenBlank == Blank.MOVING
        ? statement.is(unit.isPresent() ? Say.STABLE : Say.UNSTABLE)
        : unit.isPresent() || mayBeBlank;
    if (!written) return false;
    Optional<String> field = placed(unit.map(names::of).orElse(""));
    field.ifPresent(text::append);
    return field.isPresent();
  }

  private Optional<MassUnit> unit(Statement statement) {
    if (statement.number().isPresent()) return statement.number().flatMap(Indication::unit);
    return whenBlank == Blank.OUT_OF_RANGE
        ? Optional.empty()
        : Optional.of(statement.scale().unit());
  }

  private Optional<String> placed(String name) {
    return switch (place) {
      case LEFT -> Fields.left(name, width);
      case RIGHT -> Fields.right(name, width);
      case MIDDLE -> Fields.left(name.length() == 1 && width > 2 ? " " + name : name, width);
    };
  }

  @Override
  public Set<Topic> topics() {
    return whenBlank == Blank.MOVING
        ? EnumSet.of(Topic.UNIT, Topic.STABILITY)
        : EnumSet.of(Topic.UNIT);
  }
}
