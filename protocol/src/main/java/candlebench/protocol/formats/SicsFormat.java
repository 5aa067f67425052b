package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.TerminatedFramer;
import candlebench.protocol.WireLayout;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The standard interface command set of Mettler-Toledo, levels 0 and 1, which other makers speak too.
 *
 * <pre>
 * S S     100.00 g      ID, status, weight in 10 characters at the right, unit of 1 to 5 characters, not padded
 * </pre>
 *
 * <p>Sources: Mettler-Toledo MT-SICS reference manual for Excellence balances (11780711), read in part: syntax, replies without
 * weight, ES ET EL; operating instructions AT p.23 and p.87, L-S p.16, p.25 and p.31, ML p.79: example of S, {@code S I}, {@code S +},
 * {@code S -}, net weight, line settings; JS p.30; platform terminal manual ME 22017083 p.49. Ohaus 7000 series (T72XW) EN-101 to
 * EN-105 and EN-112: field widths, replies of I1 to I4, Z and @. From memory and third-party drivers: the replies of T, TI, TA, TAC,
 * ZI, D R, the closing line of I0, the unit field of up to 5 characters. A user's report only: a parcel scale that sends pounds and
 * ounces as one value, read as {@code 2:05.3 lb:oz}.
 *
 * <p>A weight in reply to S is net by the definition of the command. A reply to T or TI states the tare that was taken.
 */
final class SicsFormat implements ScaleFormat {
  private static final int WEIGHT = 10;
  private static final int LONGEST_ID = 4;

  @Override
  public String id() {
    return "sics";
  }

  @Override
  public String title() {
    return "SICS, the Mettler-Toledo standard interface command set, levels 0 and 1";
  }

  @Override
  public String source() {
    return "Mettler-Toledo MT-SICS reference 11780711, AT p.23 and p.87, L-S p.16-31, ML p.79; Ohaus 7000 series EN-101 to EN-112";
  }

  @Override
  public List<LineSettings> lines() {
    return LineSettings.listOf(
        "9600-8N1",
        "9600-7E1",
        "9600-7O1",
        "9600-7N1",
        "2400-7E1",
        "4800-8N1",
        "19200-8N1",
        "38400-8N1");
  }

  @Override
  public Framer newFramer() {
    return TerminatedFramer.ofSevenBits();
  }

  @Override
  public List<WireLayout> layouts() {
    return List.of(new Reply());
  }

  /** SIR is ended by any weight command; SI ends it with one more reply and, unlike @, leaves the tare alone. */
  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    return CrLf.ended(
        switch (command) {
          case SEND, STOP_SENDING -> "SI";
          case SEND_STABLE -> "S";
          case SEND_CONTINUOUSLY -> "SIR";
          case TARE -> "T";
          case ZERO -> "Z";
        });
  }

  @Override
  public Decoded decode(Frame frame) {
    return LineText.read(frame, SicsFormat::read);
  }

  private static Decoded read(LineText line) {
    if (line.isOnly("ES") || line.isOnly("ET") || line.isOnly("EL"))
      return new InstrumentFault(line.text());
    String id = id(line);
    if (id.isEmpty()) return noReply(line);
    char status = line.charAt(id.length() + 1);
    line.moveTo(id.length() + 2);
    if (!line.atEnd() && line.next() != ' ') return line.unknownHeader();
    return switch (id) {
      case "S" -> weight(line, status);
      case "T" -> tare(line, status, Stability.STABLE);
      case "TI" -> tare(line, status, status == 'D' ? Stability.UNSTABLE : Stability.STABLE);
      case "TA" -> status == 'A' ? tareStated(line, Stability.UNSTATED) : refusal(line, status);
      case "Z", "ZI" -> zero(line, id, status);
      case "SI", "SU", "SUI" ->
        line.moveTo(0).unknownHeader(); // another protocol's, whose IDs these are
      default -> reply(line, status);
    };
  }

  /** The reply's ID: up to four capitals, digits or {@code @}, and the space behind it; empty where there is none. */
  private static String id(LineText line) {
    int end = 0;
    while (end <= LONGEST_ID && isIdLetter(line.charAt(end))) end++;
    boolean whole =
        end > 0 && end <= LONGEST_ID && line.charAt(end) == ' ' && end + 1 < line.length();
    return whole ? line.text(0, end) : "";
  }

  private static boolean isIdLetter(char c) {
    return c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '@';
  }

  private static Decoded weight(LineText line, char status) {
    return switch (status) {
      case 'S' -> weighed(line, Stability.STABLE);
      case 'D' -> weighed(line, Stability.UNSTABLE);
      case '+' -> alone(line, new OutOfRange(Side.OVER, Basis.UNSTATED));
      case '-' -> alone(line, new OutOfRange(Side.UNDER, Basis.UNSTATED));
      default -> refusal(line, status);
    };
  }

  private static Decoded tare(LineText line, char status, Stability stability) {
    boolean taken = status == 'S' || status == 'D' && stability == Stability.UNSTABLE;
    return taken ? tareStated(line, stability) : refusal(line, status);
  }

  /** {@code A} of Z; {@code S} and {@code D} of ZI. */
  private static Decoded zero(LineText line, String id, char status) {
    boolean done = id.equals("Z") ? status == 'A' : status == 'S' || status == 'D';
    return done ? alone(line, line.acknowledged()) : refusal(line, status);
  }

  /** {@code A} done, {@code B} more lines follow, {@code R} the text was cut to the display; what follows is for a person. */
  private static Decoded reply(LineText line, char status) {
    boolean done = status == 'A' || status == 'B' || status == 'R';
    return done ? line.acknowledged() : refusal(line, status);
  }

  /** {@code I} not now, {@code L} not possible, {@code +} and {@code -} outside the range of zero or tare. */
  private static Decoded refusal(LineText line, char status) {
    boolean known = status == 'I' || status == 'L' || status == '+' || status == '-';
    if (known) return alone(line, new InstrumentFault(line.text()));
    return line.moveTo(line.place() - 1).unknownHeader();
  }

  private static Decoded alone(LineText line, Decoded said) {
    return line.atEnd() ? said : line.wrongLength();
  }

  private static Decoded weighed(LineText line, Stability stability) {
    return measured(line, shown -> new Decoded.Weighed(shown, Basis.NET, stability));
  }

  private static Decoded tareStated(LineText line, Stability stability) {
    return measured(line, shown -> new Decoded.TareStated(shown, stability));
  }

  /** A space, 10 characters of weight, a space, the unit. */
  private static Decoded measured(LineText line, Function<Indication, Decoded> said) {
    if (!line.take(' ')) return line.wrongLength();
    int end = line.place() + WEIGHT;
    if (line.endsWith(" lb:oz")) return inPoundsAndOunces(line, end, said);
    Optional<String> number = line.number(NumberField.POINT, end);
    if (number.isEmpty()) return line.notANumber();
    if (line.place() != end || !line.take(' ') || line.next() == ' ') return line.wrongLength();
    Optional<WireUnit> unit = line.unit();
    if (unit.isEmpty() || unit.get() == WireUnit.NONE || !line.atEnd()) return line.unknownUnit();
    if (unit.get().matter().isPresent())
      return line.notALoad(unit.get().matter().get());
    return said.apply(new Indication(number.get(), unit.get().mass()));
  }

  private static Decoded inPoundsAndOunces(
      LineText line, int end, Function<Indication, Decoded> said) {
    Optional<Indication> shown = PoundsAndOunces.take(line);
    if (shown.isEmpty()) return line.notANumber();
    return line.place() == end ? said.apply(shown.get()) : line.wrongLength();
  }

  private static Decoded noReply(LineText line) {
    if (line.isBlank()) return line.notALoad(Matter.BLANK);
    if (line.next() == ' ')
      return line.notThisFormat(
          "a reply begins with the command's letters: a balance that prints by itself is to be set to host mode");
    return line.unknownHeader();
  }

  /** Replies to the commands. */
  private record Reply() implements TextLayout {

    @Override
    public String name() {
      return "reply";
    }

    @Override
    public ScaleFormat format() {
      return new SicsFormat();
    }

    @Override
    public Optional<String> weighed(Decoded.Weighed said, Shown shown) {
      if (said.basis() != Basis.NET) return Optional.empty();
      return switch (said.stability()) {
        case STABLE -> measured("S S ", said.indication());
        case UNSTABLE -> measured("S D ", said.indication());
        case UNSTATED -> Optional.empty();
      };
    }

    @Override
    public Optional<String> tareStated(Decoded.TareStated said, Shown shown) {
      return switch (said.stability()) {
        case STABLE -> measured("T S ", said.indication());
        case UNSTABLE -> measured("TI D ", said.indication());
        case UNSTATED -> measured("TA A ", said.indication());
      };
    }

    private static Optional<String> measured(String start, Indication shown) {
      if (shown.unit().isEmpty()) return Optional.empty();
      return Fields.right(shown.number(), WEIGHT)
          .map(number -> start + number + " " + Fields.unit(shown));
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      if (said.basis() != Basis.UNSTATED) return Optional.empty();
      return Optional.of(said.side() == Side.OVER ? "S +" : "S -");
    }

    @Override
    public Optional<String> fault(InstrumentFault said, Shown shown) {
      return asSent(said, said.code());
    }
  }
}
