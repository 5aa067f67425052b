package candlebench.protocol.formats;

import static candlebench.protocol.formats.Say.GROSS;
import static candlebench.protocol.formats.Say.MINUS;
import static candlebench.protocol.formats.Say.NET;
import static candlebench.protocol.formats.Say.NOTHING;
import static candlebench.protocol.formats.Say.OUT;
import static candlebench.protocol.formats.Say.OVER;
import static candlebench.protocol.formats.Say.PLUS;
import static candlebench.protocol.formats.Say.STABLE;
import static candlebench.protocol.formats.Say.TARE;
import static candlebench.protocol.formats.Say.UNSTABLE;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Frame;
import candlebench.protocol.formats.UnitField.Blank;
import candlebench.protocol.formats.UnitField.Names;
import candlebench.shared.Basis;
import java.util.List;
import java.util.Optional;

/** The lines of {@link KernFormats}, field by field. */
final class KernTables {
  static final String OVERLOAD = "=Overload=";
  static final String ERROR = "Error";

  private static final Fixed COMMA = new Fixed(",");
  private static final Fixed SPACE = new Fixed(" ");
  private static final Choice SIGN = Choice.of("+", PLUS).or("-", MINUS);
  private static final Choice BLANK_OR_MINUS = Choice.of(" ", PLUS).or("-", MINUS);
  private static final UnitField AT_REST = UnitField.left(3).whenBlank(Blank.MOVING);

  /** What the memory key prints is marked by M. */
  private static final Choice MEMORY = Choice.of(" ", NOTHING).or("M", NOTHING);

  /** The minus stands in place 2 or directly before the first digit; both are read. */
  static final LineTable EIGHTEEN =
      LineTable.of(MEMORY, WeightField.signedSpaces(11), SPACE, AT_REST);

  static final LineTable EIGHTEEN_SIGN_FIRST =
      LineTable.of(MEMORY, BLANK_OR_MINUS, WeightField.spaces(10), SPACE, AT_REST);

  /** Out of range: the sign tells which way. */
  private static final LineTable STATUS =
      LineTable.of(Choice.of("ST", STABLE).or("US", UNSTABLE).or("OL", OUT), COMMA);

  private static final Choice MODE_2 = Choice.of("GS", GROSS).or("NT", NET).or("TR", TARE);
  private static final Choice MODE_1 = Choice.of("G", GROSS).or("N", NET);

  private static final UnitField UNIT_4 = UnitField.right(4).whenBlank(Blank.OUT_OF_RANGE);
  private static final LineTable EIGHT = LineTable.of(COMMA, SIGN, WeightField.zeros(8), UNIT_4);
  private static final LineTable SEVEN = LineTable.of(COMMA, SIGN, WeightField.zeros(7), UNIT_4);
  private static final LineTable TEN =
      LineTable.of(COMMA, WeightField.signedSpaces(8), UnitField.right(2));

  private static final LineTable HEAD_2 = STATUS.then(MODE_2);
  private static final LineTable HEAD_1 = STATUS.then(MODE_1);

  static final LineTable KXS_EIGHT = HEAD_2.then(EIGHT);
  static final LineTable KXS_SEVEN = HEAD_2.then(SEVEN);

  /** Without a sign of its own the line can only be over the range. */
  private static final LineTable HEAD_OVER =
      LineTable.of(Choice.of("ST", STABLE).or("US", UNSTABLE).or("OL", OVER), COMMA, MODE_2);

  static final LineTable KFB =
      HEAD_OVER.then(WeightField.signedSpaces(11), UnitField.right(2).named(Names.CAPITALS));
  static final LineTable NHB = HEAD_OVER.then(WeightField.signedSpaces(8), UnitField.left(3));

  static final LineTable QHW = HEAD_OVER.then(TEN);

  private static final List<LineTable> MODES_OF_2 = List.of(KXS_EIGHT, KXS_SEVEN, QHW);
  private static final List<LineTable> MODES_OF_1 =
      List.of(HEAD_1.then(EIGHT), HEAD_1.then(SEVEN), HEAD_1.then(TEN));

  static final LineTable GN_EIGHT = gn(8);
  static final LineTable GN_SEVEN = gn(7);
  private static final List<LineTable> GN_ALL = List.of(GN_EIGHT, GN_SEVEN);

  private KernTables() {}

  private static LineTable gn(int width) {
    return LineTable.of(
        MODE_1, Choice.of("+", PLUS).or("-", MINUS).or(" ", PLUS), WeightField.zeros(width));
  }

  static Decoded eighteen(Frame frame) {
    return LineText.read(frame, KernTables::eighteen);
  }

  private static Decoded eighteen(LineText line) {
    if (line.isOnly(ERROR)) return new InstrumentFault(ERROR);
    if (line.isOnly(OVERLOAD)) return new OutOfRange(Side.OVER, Basis.UNSTATED);
    if (line.isBlank()) return line.notALoad(Matter.BLANK);
    return EIGHTEEN.read(line);
  }

  static Decoded gn(Frame frame) {
    return LineText.read(frame, line -> LineTable.readFitting(line, GN_ALL));
  }

  static Decoded comma(Frame frame) {
    return LineText.read(frame, KernTables::comma);
  }

  private static Decoded comma(LineText line) {
    boolean twoLetters = LineText.isLetter(line.charAt(4));
    if (line.charAt(twoLetters ? 5 : 4) == ',')
      return LineTable.readFitting(line, twoLetters ? MODES_OF_2 : MODES_OF_1);
    Draft draft = new Draft();
    (twoLetters ? HEAD_2 : HEAD_1).readInto(draft, line);
    if (!draft.isStopped()) numberAndUnit(line, draft);
    return draft.decoded(line);
  }

  /** Without a comma before the number its width differs from model to model, so a digit lost there is not noticed. */
  private static void numberAndUnit(LineText line, Draft draft) {
    Optional<String> number = line.number();
    if (number.isEmpty()) {
      draft.flaw(line.notANumber());
      return;
    }
    draft.number(number.get());
    Optional<WireUnit> unit = line.unit();
    if (unit.isEmpty() || unit.get() == WireUnit.NONE || !line.atEnd())
      draft.flaw(line.unknownUnit());
    else draft.unit(unit.get());
  }
}
