package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Acknowledged;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.util.List;
import java.util.Optional;

/** The layouts of {@link AndFormat}, written as the instruments write them. */
final class AndLayouts {

  static final List<WireLayout> ALL = List.of(
      new Balance("standard", 8, "ST", "", false, Overload.NINES),
      new Balance("micro", 9, "ST", "", false, Overload.NINES),
      new Balance("exponent", 8, "ST", "", false, Overload.EXPONENT),
      new Balance("csv", 8, "ST", ",", false, Overload.NINES),
      new Balance("csv-comma", 8, "ST", ";", false, Overload.NINES),
      new Balance("hc", 8, "WT", "", false, Overload.NINES),
      new Balance("rs485", 8, "ST", "", true, Overload.NINES),
      new BareAck(),
      new Indicator(),
      new Numeric(),
      new KarlFischer(),
      new ShortHeaded("mt", "S ", "SD"),
      new ShortHeaded("mt-key", "  ", " D"),
      new Padded());

  private AndLayouts() {}

  private static boolean isPlain(Weighed said) {
    return said.basis() == Basis.UNSTATED && said.indication().unit().isPresent();
  }

  private static Optional<String> fault(InstrumentFault said) {
    return said.basis() == Basis.UNSTATED ? Optional.of("EC," + said.code()) : Optional.empty();
  }

  /** All digits of a field at nine, with as many decimals as the instrument shows. */
  private static String nines(int width, int decimals) {
    if (decimals == 0) return "9".repeat(width);
    return "9".repeat(Math.max(0, width - 1 - decimals)) + "." + "9".repeat(decimals);
  }

  private static String sign(OutOfRange said) {
    return said.side() == OutOfRange.Side.UNDER ? "-" : "+";
  }

  private interface AndLayout extends TextLayout {
    @Override
    default ScaleFormat format() {
      return new AndFormat();
    }
  }

  private enum Overload {
    NINES,
    EXPONENT
  }

  /** Header, sign, digits with leading zeros, unit in 3 characters; with separators in the CSV forms. */
  private record Balance(
      String name,
      int digits,
      String stable,
      String separator,
      boolean addressed,
      Overload overload)
      implements AndLayout {

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      if (!isPlain(said) || said.stability() == Stability.UNSTATED) return Optional.empty();
      String header = said.stability() == Stability.STABLE ? stable : "US";
      return measured(header, said.indication(), shown);
    }

    @Override
    public Optional<String> tareStated(TareStated said, Shown shown) {
      if (said.stability() != Stability.UNSTATED || said.indication().unit().isEmpty())
        return Optional.empty();
      return measured("TR", said.indication(), shown);
    }

    private Optional<String> measured(String header, Indication indication, Shown shown) {
      return Fields.zeroFilled(indication, digits)
          .flatMap(number -> Fields.right(Fields.unit(indication), 3)
              .map(unit -> address(shown)
                  + header
                  + headerEnd()
                  + Fields.sign(indication, '+')
                  + decimal(number)
                  + separator
                  + unit));
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      if (said.basis() != Basis.UNSTATED) return Optional.empty();
      String start = address(shown) + "OL" + headerEnd() + sign(said);
      if (overload == Overload.EXPONENT) return Optional.of(start + "9999999E+19");
      return Fields.right(shown.unit().symbol(), 3)
          .map(unit -> start + decimal(nines(digits, shown.decimals())) + separator + unit);
    }

    @Override
    public Optional<String> fault(InstrumentFault said, Shown shown) {
      return AndLayouts.fault(said).map(text -> address(shown) + text);
    }

    private String address(Shown shown) {
      return addressed ? String.format("@%02d", shown.address()) : "";
    }

    private String headerEnd() {
      return separator.isEmpty() ? "," : separator;
    }

    private String decimal(String number) {
      return separator.equals(";") ? number.replace('.', ',') : number;
    }
  }

  /** The acknowledgement of HC-i scales, which has no terminator. */
  private record BareAck() implements WireLayout {
    private static final Acknowledged ACK = new Acknowledged("\u0006");

    @Override
    public String name() {
      return "bare-ack";
    }

    @Override
    public Optional<byte[]> encode(Decoded said, Shown shown) {
      return said.equals(ACK) ? Optional.of(new byte[] {0x06}) : Optional.empty();
    }
  }

  /** Two headers, sign and 7 characters, unit in 2 characters. */
  private record Indicator() implements AndLayout {

    @Override
    public String name() {
      return "indicator";
    }

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      if (said.basis() == Basis.UNSTATED) return Optional.empty();
      return measured(said.stability(), load(said.basis()), said.indication());
    }

    @Override
    public Optional<String> tareStated(TareStated said, Shown shown) {
      return measured(said.stability(), "TR", said.indication());
    }

    private static Optional<String> measured(
        Stability stability, String load, Indication indication) {
      if (stability == Stability.UNSTATED) return Optional.empty();
      String header = stability == Stability.STABLE ? "ST" : "US";
      return Fields.zeroFilled(indication, 7)
          .flatMap(number -> Fields.right(Fields.unit(indication), 2)
              .map(unit ->
                  header + "," + load + "," + Fields.sign(indication, '+') + number + unit));
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      if (said.basis() == Basis.UNSTATED) return Optional.empty();
      String blank = nines(7, shown.decimals()).replace('9', ' ');
      return Fields.right(shown.unit().symbol(), 2)
          .map(unit -> "OL," + load(said.basis()) + "," + sign(said) + blank + unit);
    }

    @Override
    public Optional<String> fault(InstrumentFault said, Shown shown) {
      return AndLayouts.fault(said);
    }

    private static String load(Basis basis) {
      return basis == Basis.NET ? "NT" : "GS";
    }
  }

  /** NU: sign and digits only. */
  private record Numeric() implements AndLayout {
    private static final int DIGITS = 8;

    @Override
    public String name() {
      return "nu";
    }

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      Indication indication = said.indication();
      if (said.basis() != Basis.UNSTATED
          || said.stability() != Stability.UNSTATED
          || indication.unit().isPresent()) return Optional.empty();
      return Fields.zeroFilled(indication, DIGITS)
          .filter(number -> !number.equals(nines(DIGITS, 0)))
          .map(number -> Fields.sign(indication, '+') + number);
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      return said.basis() == Basis.UNSTATED
          ? Optional.of(sign(said) + nines(DIGITS, 0))
          : Optional.empty();
    }
  }

  /** KF: sign, blank at zero; number to place 10; unit to place 14 while stable. */
  private record KarlFischer() implements AndLayout {

    @Override
    public String name() {
      return "kf";
    }

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      Indication indication = said.indication();
      boolean stable = said.stability() == Stability.STABLE;
      if (said.basis() != Basis.UNSTATED
          || said.stability() == Stability.UNSTATED
          || stable != indication.unit().isPresent()) return Optional.empty();
      char sign = Fields.sign(indication, isZero(indication) ? ' ' : '+');
      return Fields.right(Fields.digits(indication), 9)
          .flatMap(number ->
              Fields.left(" " + Fields.unit(indication), 4).map(unit -> sign + number + unit));
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      if (said.basis() != Basis.UNSTATED) return Optional.empty();
      return Optional.of(said.side() == OutOfRange.Side.UNDER ? "L" : "H");
    }
  }

  /** MT: a short header, the number after blanks, the unit as wide as it is. */
  private record ShortHeaded(String name, String stable, String moving) implements AndLayout {

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      if (!isPlain(said) || said.stability() == Stability.UNSTATED) return Optional.empty();
      String header = said.stability() == Stability.STABLE ? stable : moving;
      return Fields.right(said.indication().number(), 10)
          .map(number -> header + number + " " + Fields.unit(said.indication()));
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      if (said.basis() != Basis.UNSTATED) return Optional.empty();
      return Optional.of("SI" + sign(said));
    }
  }

  /** DP: header 1-2, number to place 13 with its sign before the first digit, none at zero; unit 14-16. */
  private record Padded() implements AndLayout {

    @Override
    public String name() {
      return "dp";
    }

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      if (!isPlain(said) || said.stability() == Stability.UNSTATED) return Optional.empty();
      Indication indication = said.indication();
      String sign = isZero(indication) || Fields.isNegative(indication) ? "" : "+";
      String header = said.stability() == Stability.STABLE ? "WT" : "US";
      return Fields.right(sign + indication.number(), 11)
          .flatMap(number ->
              Fields.right(Fields.unit(indication), 3).map(unit -> header + number + unit));
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      if (said.basis() != Basis.UNSTATED) return Optional.empty();
      return Optional.of(said.side() == OutOfRange.Side.UNDER ? "-E" : "E");
    }
  }

  private static boolean isZero(Indication indication) {
    return indication.number().chars().allMatch(c -> c == '0' || c == '.');
  }
}
