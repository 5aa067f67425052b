package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.StatusOnly;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.WireLayout;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The replies of {@link NciFormat} as one instrument writes them.
 *
 * @param statusBytes how many status bytes it sends; with three or more it says gross or net
 * @param constants the bits of the third and fourth byte that it always sets, such as those of its only range
 */
record NciLayout(String name, Display display, int statusBytes, int constants)
    implements WireLayout {
  private static final int DIGITS = 6;
  private static final int WIDE = 9;
  private static final int STATUS = 0x30;
  private static final int FOLLOWED = 0x70;

  static final List<WireLayout> ALL = List.of(
      new NciLayout("display", Display.ZEROS, 2, 0),
      new NciLayout("display-7", Display.SEVEN_ZEROS, 2, 0),
      new NciLayout("three-bytes", Display.ZEROS, 3, 0),
      new NciLayout("mdw", Display.WIDE_SPACES, 3, 1),
      new NciLayout("lb-oz", Display.POUNDS_AND_OUNCES, 4, 0),
      new NciLayout("ecr", Display.CAPITALS, 2, 0));

  /** How the weight is displayed, and so sent. */
  private enum Display {
    ZEROS,
    SEVEN_ZEROS,
    WIDE_SPACES,
    POUNDS_AND_OUNCES,
    /** As to cash registers: without sign, at rest only, units in capitals, the status led by S. */
    CAPITALS
  }

  @Override
  public Optional<byte[]> encode(Decoded said, Shown shown) {
    Optional<byte[]> bytes =
        text(said, shown).map(text -> text.getBytes(StandardCharsets.ISO_8859_1));
    return bytes.isPresent() ? bytes : AsSent.bytes(said, "", NciLayout::read);
  }

  private static Decoded read(Frame frame) {
    return NciFormat.read(LineText.ofEightBits(frame));
  }

  private Optional<String> text(Decoded said, Shown shown) {
    if (said instanceof StatusOnly only)
      return status(only.stability(), only.basis(), 0, false).map(NciLayout::alone);
    if (said instanceof InstrumentFault fault) return fault(fault, shown);
    return Statement.of(said, shown).filter(statement -> !statement.stored()).flatMap(this::text);
  }

  private Optional<String> text(Statement statement) {
    if (statement.number().isEmpty()) return outOfRange(statement);
    Indication number = statement.number().get();
    Optional<String> status =
        status(statement.stability(), statement.basis(), 0, Fields.isZero(number));
    return displayed(number, statement.stability())
        .flatMap(shown -> status.map(bytes -> divided(shown, bytes)));
  }

  private Optional<String> displayed(Indication number, Stability stability) {
    return switch (display) {
      case ZEROS -> zeros(number, DIGITS);
      case SEVEN_ZEROS -> zeros(number, DIGITS + 1);
      case WIDE_SPACES ->
        number
            .unit()
            .flatMap(
                unit -> Fields.right(number.number(), WIDE).map(digits -> digits + unit.symbol()));
      case POUNDS_AND_OUNCES -> poundsAndOunces(number);
      case CAPITALS ->
        zeros(number, DIGITS)
            .filter(text -> stability == Stability.STABLE && !Fields.isNegative(number))
            .map(text -> text.toUpperCase(Locale.ROOT));
    };
  }

  /** Leading zeros; whole grams in four places, with a space on either side. */
  private static Optional<String> zeros(Indication number, int digits) {
    if (number.unit().isEmpty()) return Optional.empty();
    String sign = Fields.isNegative(number) ? "-" : "";
    boolean wholeGrams = number.unit().equals(Optional.of(MassUnit.GRAM)) && number.decimals() == 0;
    return wholeGrams
        ? Fields.zeroFilled(number, 4).map(text -> sign + " " + text + "g ")
        : Fields.zeroFilled(number, digits).map(text -> sign + text + Fields.unit(number));
  }

  private static Optional<String> poundsAndOunces(Indication number) {
    boolean tenths = number.unit().equals(Optional.of(MassUnit.OUNCE)) && number.decimals() == 1;
    if (!tenths) return Optional.empty();
    BigDecimal[] parts =
        new BigDecimal(Fields.digits(number)).divideAndRemainder(BigDecimal.valueOf(16));
    if (parts[0].intValueExact() > 999) return Optional.empty();
    return Fields.zeroFilled(Indication.withoutUnit(parts[1].toPlainString()), 4)
        .map(ounces -> Fields.sign(number, ' ')
            + String.format(Locale.ROOT, "%03dlb %soz", parts[0].intValueExact(), ounces));
  }

  private Optional<String> outOfRange(Statement statement) {
    int bit = statement.is(Say.OVER) ? 2 : 1;
    Optional<String> status = status(Stability.STABLE, statement.basis(), bit, false);
    if (display == Display.CAPITALS) return status.map(NciLayout::alone);
    String mark = statement.is(Say.OVER) ? "^" : "_";
    String shown = mark.repeat(display == Display.WIDE_SPACES ? WIDE : DIGITS)
        + statement.scale().unit().symbol();
    return status.map(bytes -> divided(shown, bytes));
  }

  /** A question mark alone, dashes on the display, or the status with its error bits as it was sent. */
  private Optional<String> fault(InstrumentFault fault, Shown shown) {
    String code = fault.code();
    Optional<String> status = status(Stability.STABLE, fault.basis(), 0, false);
    boolean dashes = !code.isEmpty() && code.chars().allMatch(c -> c == '-');
    String text = dashes
        ? status
            .map(bytes -> divided(code + shown.unit().symbol(), withInitialZeroError(bytes)))
            .orElse("")
        : alone(code);
    return Optional.of(text).filter(sent -> isRead(sent, fault));
  }

  private String withInitialZeroError(String status) {
    if (statusBytes < 3) return status;
    return status.substring(0, 2) + (char) (status.charAt(2) | 8) + status.substring(3);
  }

  /** The status bytes, or empty where they cannot say this basis, or no stability was stated. */
  private Optional<String> status(Stability stability, Basis basis, int range, boolean zero) {
    boolean saysBasis = statusBytes > 2;
    if (stability == Stability.UNSTATED || saysBasis != (basis != Basis.UNSTATED))
      return Optional.empty();
    boolean moving = stability == Stability.UNSTABLE;
    StringBuilder bytes = new StringBuilder(display == Display.CAPITALS ? "S" : "");
    bytes.append((char) (STATUS | (moving ? 1 : 0) | (zero && !moving ? 2 : 0)));
    bytes.append((char) (lead(2) | range));
    if (statusBytes > 2) bytes.append((char) (lead(3) | constants | (basis == Basis.NET ? 4 : 0)));
    if (statusBytes > 3) bytes.append((char) lead(4));
    return Optional.of(bytes.toString());
  }

  private int lead(int number) {
    return number < statusBytes ? FOLLOWED : STATUS;
  }

  private static String alone(String text) {
    return "\n" + text + "\r" + NciFormat.ETX;
  }

  private static String divided(String shown, String status) {
    return "\n" + shown + "\r" + alone(status);
  }

  private static boolean isRead(String text, Decoded said) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    return read(new Frame(0, bytes, Framer.NEVER)).equals(said);
  }
}
