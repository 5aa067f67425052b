package candlebench.protocol.formats;

import static candlebench.protocol.formats.Say.FAULT;
import static candlebench.protocol.formats.Say.GROSS;
import static candlebench.protocol.formats.Say.MINUS;
import static candlebench.protocol.formats.Say.NET;
import static candlebench.protocol.formats.Say.OUT;
import static candlebench.protocol.formats.Say.OVER;
import static candlebench.protocol.formats.Say.PLUS;
import static candlebench.protocol.formats.Say.STABLE;
import static candlebench.protocol.formats.Say.UNDER;
import static candlebench.protocol.formats.Say.UNSTABLE;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Frame;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.UnitField.Blank;
import candlebench.protocol.formats.UnitField.Names;
import candlebench.shared.Basis;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.util.List;
import java.util.Optional;

/** The lines of {@link RicelakeFormats}, field by field. */
final class RicelakeTables {
  private static final char STX = 0x02;
  private static final char ETX = 0x03;
  private static final Fixed START = new Fixed(String.valueOf(STX));

  private static final Choice MODE = Choice.of("G", GROSS).or("N", NET);

  /** Space valid, Z at zero, M motion, O out of range, I invalid. */
  private static final Choice STATUS =
      Choice.of(" ", STABLE).or("M", UNSTABLE).or("O", OUT).or("I", FAULT).or("Z", STABLE);

  private static final List<String> CARETS = List.of("^^^^^^^", "OVERFL");
  private static final List<String> BRACKETS = List.of("]]]]]]]");

  static final LineTable STREAM = LineTable.of(
      START,
      Choice.of(" ", PLUS).or("-", MINUS).or("+", PLUS).or("^", OVER).or("]", UNDER),
      WeightField.spaces(7).orWords(CARETS, BRACKETS),
      new UnitField(1, new Letters(), UnitField.Place.LEFT, Blank.REFUSED),
      MODE,
      STATUS);

  static final LineTable TRACER = LineTable.of(
      START,
      Choice.of("^", OVER).or("]", UNDER).or(" ", PLUS).or("-", MINUS).or("+", PLUS),
      WeightField.spaces(7).orWords(CARETS, BRACKETS),
      new UnitField(2, new Pairs(), UnitField.Place.LEFT, Blank.NO_UNIT),
      MODE,
      STATUS);

  static final LineTable CARDINAL = LineTable.of(
      new Fixed("\r"),
      Choice.of("+", PLUS).or("-", MINUS),
      WeightField.zeros(7).endingIn('.'),
      Choice.of(" ", STABLE).or("m", UNSTABLE).or("o", OUT).or("e", FAULT),
      new Fixed(" "),
      UnitField.left(2).whenBlank(Blank.NO_UNIT),
      new Fixed(" "),
      Choice.of("g", GROSS).or("n", NET),
      new Fixed("  " + ETX));

  static final LineTable SB_400 = LineTable.of(
      Choice.of(" ", PLUS).or("-", MINUS).or("+", PLUS),
      WeightField.zeros(7).endingIn('.'),
      UnitField.left(2),
      MODE,
      Choice.of("  ", STABLE)
          .or("MO", UNSTABLE)
          .or("OC", OVER)
          .or("BZ", UNDER)
          .or("CZ", STABLE)
          .or("ee", FAULT)
          .or("EE", FAULT));

  static final LineTable WTX = LineTable.of(
      new Fixed(" "),
      MODE,
      Choice.of("+", PLUS).or("-", MINUS),
      WeightField.zeros(7).endingIn('.'),
      new Fixed(" "),
      UnitField.left(2));

  private RicelakeTables() {}

  /** A frame, or the reply to a command given meanwhile. */
  static Decoded stream(Frame frame) {
    return LineText.read(frame, line -> line.next() == STX ? STREAM.read(line) : okOrNot(line));
  }

  static Decoded unit2(Frame frame) {
    return LineText.read(frame, line -> line.next() == STX ? TRACER.read(line) : okOrNot(line));
  }

  static Decoded cardinal(Frame frame) {
    return CARDINAL.read(LineText.ofSevenBits(frame));
  }

  static Decoded sb400(Frame frame) {
    return LineText.read(frame, SB_400::read);
  }

  static Decoded wtx(Frame frame) {
    return LineText.read(frame, WTX::read);
  }

  /** On a shared line STX and an address stand before the reply, and ETX CR behind its end, which is a line of its own here. */
  static Decoded replies(Frame frame) {
    return LineText.read(frame, RicelakeTables::reply);
  }

  private static Decoded reply(LineText line) {
    if (line.isLast(String.valueOf(ETX))) return line.notALoad(Matter.BLANK);
    if (line.take(STX)) line.moveTo(line.place() + 1);
    boolean weight = !LineText.isLetter(line.next()) && line.next() != '?';
    return weight ? weight(line) : okOrNot(line);
  }

  /** Number, a space, the unit: what XG is answered. */
  private static Decoded weight(LineText line) {
    Optional<String> number = line.number();
    if (number.isEmpty()) return line.notANumber();
    if (!line.take(' ')) return line.wrongLength();
    Optional<WireUnit> unit = line.unit();
    if (unit.isEmpty() || unit.get() == WireUnit.NONE || !line.atEnd()) return line.unknownUnit();
    return line.weighed(number.get(), unit.get(), Basis.UNSTATED, Stability.UNSTATED);
  }

  private static Decoded okOrNot(LineText line) {
    if (line.isLast("OK")) return line.acknowledged();
    if (line.isLast("??")) return new InstrumentFault(line.text());
    return line.unknownHeader();
  }

  /** Units of one letter. */
  private record Letters() implements Names {
    @Override
    public String of(MassUnit unit) {
      return switch (unit) {
        case POUND -> "L";
        case KILOGRAM -> "K";
        case GRAM -> "G";
        case OUNCE -> "O";
        case MILLIGRAM, CARAT, GRAIN ->
          unit.symbol(); // has no letter, and is too wide for the field
      };
    }

    @Override
    public Optional<WireUnit> take(LineText line, int end) {
      Optional<WireUnit> unit = switch (line.next()) {
        case 'L', 'l' -> Optional.of(WireUnit.of(MassUnit.POUND));
        case 'K', 'k' -> Optional.of(WireUnit.of(MassUnit.KILOGRAM));
        case 'G', 'g' -> Optional.of(WireUnit.of(MassUnit.GRAM));
        case 'O', 'o' -> Optional.of(WireUnit.of(MassUnit.OUNCE));
        case 'T', 't' -> Optional.of(WireUnit.of(Matter.OTHER_UNIT));
        case ' ' -> Optional.of(WireUnit.NONE);
        default -> Optional.empty();
      };
      if (unit.isPresent()) line.moveTo(end);
      return unit;
    }
  }

  /** Units of two letters, the gram being GM. */
  private record Pairs() implements Names {
    @Override
    public String of(MassUnit unit) {
      return unit == MassUnit.GRAM ? "GM" : Names.CAPITALS.of(unit);
    }

    @Override
    public Optional<WireUnit> take(LineText line, int end) {
      boolean gram = line.take("GM") || line.take("gm");
      return gram ? Optional.of(WireUnit.of(MassUnit.GRAM)) : line.unit(end);
    }
  }

  /** Replies to commands. */
  record Reply() implements WireLayout {
    @Override
    public String name() {
      return "reply";
    }

    @Override
    public Optional<byte[]> encode(Decoded said, Shown shown) {
      if (!(said instanceof Weighed weighed))
        return AsSent.bytes(said, "\r\n", RicelakeTables::replies);
      boolean canSay = weighed.basis() == Basis.UNSTATED
          && weighed.stability() == Stability.UNSTATED
          && weighed.indication().unit().isPresent();
      return canSay ? CrLf.ended(weighed.indication().toString()) : Optional.empty();
    }
  }
}
