package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.ToledoFormat.Kind;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * The frames of {@link ToledoFormat} as one instrument writes them.
 *
 * @param step the bits of the last digit's step: 1, 2, 3 for 1, 2, 5, or 0 as T-Scale leaves them
 * @param metric whether the bit for kilograms is set with grams and ounces too
 * @param blanks whether leading zeros and an unused tare are spaces
 */
record ToledoLayout(String name, Kind kind, int step, boolean metric, boolean blanks)
    implements WireLayout {
  private static final int MOST_DECIMALS = 5;
  private static final int CONSTANT = 0x20;
  private static final int NO_UNIT = 7;

  /** What an instrument beyond its range shows here; no manual says what stands in the digits then. */
  private static final String NINES = "9".repeat(ToledoFormat.DIGITS);

  static List<WireLayout> of(Kind kind) {
    if (kind.isLine()) return List.of(new ToledoLayout("t-scale", kind, 0, false, false));
    return List.of(
        new ToledoLayout("step-1", kind, 1, true, false),
        new ToledoLayout("step-2", kind, 2, true, false),
        new ToledoLayout("step-5", kind, 3, true, false),
        new ToledoLayout("blanks", kind, 1, true, true));
  }

  @Override
  public Optional<byte[]> encode(Decoded said, Shown shown) {
    Optional<byte[]> frame = Statement.of(said, shown).flatMap(this::frame);
    return frame.isPresent()
        ? frame
        : AsSent.bytes(said, "", new ToledoFormat("toledo", kind)::decode);
  }

  private Optional<byte[]> frame(Statement statement) {
    boolean out = statement.side().isPresent();
    boolean stated = out || statement.stability() != Stability.UNSTATED;
    int decimals =
        statement.number().map(Indication::decimals).orElse(statement.scale().decimals());
    Optional<Integer> unit = unit(statement);
    Optional<String> digits = statement
        .number()
        .map(ImpliedPoint::digits)
        .or(() -> Optional.of(statement.is(Say.OVER) ? NINES : "0"))
        .filter(text -> text.length() <= ToledoFormat.DIGITS);
    boolean canSay = stated
        && statement.basis() != Basis.UNSTATED
        && statement.fault().isEmpty()
        && !statement.stored()
        && decimals <= MOST_DECIMALS;
    if (!canSay || unit.isEmpty() || digits.isEmpty()) return Optional.empty();

    StringBuilder frame = new StringBuilder(20)
        .append(ToledoFormat.STX)
        .append((char) (CONSTANT | step << 3 | ToledoFormat.NO_DECIMALS + decimals))
        .append((char) (CONSTANT | marks(statement) | (isMetric(unit.get(), statement) ? 0x10 : 0)))
        .append((char) (CONSTANT | unit.get()))
        .append(field(digits.get()));
    if (kind.hasTare()) frame.append((blanks ? " " : "0").repeat(ToledoFormat.DIGITS));
    frame.append(kind.isLine() ? "\r\n" : "\r");
    if (kind.isChecked()) frame.append(checksum(frame));
    return Optional.of(frame.toString().getBytes(StandardCharsets.ISO_8859_1));
  }

  private static int marks(Statement statement) {
    return (statement.is(Say.NET) ? 1 : 0)
        | (statement.is(Say.MINUS) ? 2 : 0)
        | (statement.is(Say.OUT) ? 4 : 0)
        | (statement.is(Say.UNSTABLE) ? 8 : 0);
  }

  private static Optional<MassUnit> massUnit(Statement statement) {
    return statement.number().isPresent()
        ? statement.number().flatMap(Indication::unit)
        : Optional.of(statement.scale().unit());
  }

  private static Optional<Integer> unit(Statement statement) {
    Optional<MassUnit> unit = massUnit(statement);
    if (unit.isEmpty()) return Optional.of(NO_UNIT);
    return switch (unit.get()) {
      case KILOGRAM, POUND -> Optional.of(0);
      case GRAM -> Optional.of(1);
      case OUNCE -> Optional.of(3);
      case MILLIGRAM, CARAT, GRAIN -> Optional.empty();
    };
  }

  private boolean isMetric(int code, Statement statement) {
    return code == 0 ? massUnit(statement).equals(Optional.of(MassUnit.KILOGRAM)) : metric;
  }

  private String field(String digits) {
    return (blanks ? " " : "0").repeat(ToledoFormat.DIGITS - digits.length()) + digits;
  }

  /** The two's complement of the sum's seven low bits. */
  private static char checksum(StringBuilder frame) {
    return (char) (-frame.chars().sum() & 0x7F);
  }
}
