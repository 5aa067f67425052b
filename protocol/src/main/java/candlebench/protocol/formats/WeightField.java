package candlebench.protocol.formats;

import candlebench.shared.Indication;
import java.util.List;
import java.util.Optional;

/**
 * The number in a field of fixed width, at its right.
 *
 * @param signed whether a minus may stand among its characters; else the sign has a field of its own
 * @param fill what stands before the digits when written: zeros or spaces; both are read
 * @param last what stands behind the digits when written without decimals, as in a field that always has room for the point; else NUL
 * @param over what fills the field when the weight is over the range, the first of them being written; blanks where nothing is named
 * @param under the same when it is under the range
 */
record WeightField(
    int width, boolean signed, char fill, char last, List<String> over, List<String> under)
    implements Field {
  private static final char NOTHING = '\0';

  /** With its sign; written with leading zeros behind the minus. */
  static WeightField signedZeros(int width) {
    return new WeightField(width, true, '0', NOTHING, List.of(), List.of());
  }

  /** With its sign; written with spaces before the sign. */
  static WeightField signedSpaces(int width) {
    return new WeightField(width, true, ' ', NOTHING, List.of(), List.of());
  }

  static WeightField zeros(int width) {
    return new WeightField(width, false, '0', NOTHING, List.of(), List.of());
  }

  static WeightField spaces(int width) {
    return new WeightField(width, false, ' ', NOTHING, List.of(), List.of());
  }

  /** The same, with a point or a blank in the place of the point where there are no decimals. */
  WeightField endingIn(char mark) {
    return new WeightField(width, signed, fill, mark, over, under);
  }

  /** The same, with words for what is out of range. */
  WeightField orWords(List<String> overWords, List<String> underWords) {
    return new WeightField(width, signed, fill, last, overWords, underWords);
  }

  @Override
  public void take(LineText line, Draft draft) {
    int end = line.place() + width;
    int mark = line.nextMark();
    boolean unsigned = !LineText.isSign(line.charAt(mark));
    Optional<String> number =
        signed || unsigned ? line.number(NumberField.POINT, end) : Optional.empty();
    if (number.isPresent() && last == ' ' && line.place() == end - 1) line.take(' ');
    if (number.isPresent() && line.place() == end) draft.number(number.get());
    else inWords(line.text(end - width, end).strip(), line, draft);
    line.moveTo(end);
  }

  private void inWords(String word, LineText line, Draft draft) {
    if (over.contains(word)) draft.say(Say.OVER, word);
    else if (under.contains(word)) draft.say(Say.UNDER, word);
    else draft.flaw(line.notANumber());
  }

  @Override
  public boolean write(Statement statement, StringBuilder text) {
    if (statement.number().isEmpty()) {
      text.append(outOfRange(statement));
      return true;
    }
    Optional<String> field = field(statement.number().get());
    field.ifPresent(text::append);
    return field.isPresent();
  }

  private String outOfRange(Statement statement) {
    List<String> words =
        statement.is(Say.OVER) ? over : statement.is(Say.UNDER) ? under : List.of();
    return words.isEmpty() ? " ".repeat(width) : words.get(0);
  }

  private Optional<String> field(Indication shown) {
    String digits = Fields.digits(shown);
    if (last != NOTHING && shown.decimals() == 0) digits += last;
    String sign = signed && Fields.isNegative(shown) ? "-" : "";
    int room = width - sign.length();
    if (fill == ' ') return Fields.right(sign + digits, width);
    return Fields.right(digits, room).map(field -> sign + leadingZeros(field));
  }

  private static String leadingZeros(String field) {
    String digits = field.stripLeading();
    return "0".repeat(field.length() - digits.length()) + digits;
  }
}
