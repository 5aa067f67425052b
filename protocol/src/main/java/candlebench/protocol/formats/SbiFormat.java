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
import candlebench.shared.Stability;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * The Sartorius balance interface: lines of 14 characters, or of 20 with an ID of 6 in front.
 *
 * <pre>
 * N     +   123.56 g    ID 6 (in the long form), sign 1, number 9 at the right, space 1, unit 3
 * </pre>
 *
 * <p>Sources, all by Sartorius: CP p.55-60, LE p.51-52, EB p.62, Master p.5-3 to 5-5 and 5-13, MC1 p.111 and p.113, ME215S p.135,
 * Quintix p.87, WZA p.23, Combics 1 p.97-98, Combics 3 p.95, Extend p.43, Cubis MSE p.70-72, Cubis MSA p.155, Entris II interface
 * description p.3-5, WZB p.33 (errors, special outputs), CB p.34, QC p.145. From memory: that commands get no reply. Inferred: the
 * place of High and Low in the long form. Second-hand: 9600 8O1 of the newer balances.
 *
 * <p>There is no flag of stability: the unit is left out while the weight moves (Master, MC1).
 */
final class SbiFormat implements ScaleFormat {
  static final int SHORT = 14;
  static final int LONG = 20;
  static final int ID = LONG - SHORT;

  private static final int NUMBER_END = 10;
  private static final char ESC = 0x1B;

  @Override
  public String id() {
    return "sbi";
  }

  @Override
  public String title() {
    return "SBI, the Sartorius balance interface";
  }

  @Override
  public String source() {
    return "Sartorius manuals Combics 1 p.97-98, Combics 3 p.95, Master p.5-3 to 5-13, MC1 p.111, WZA p.23, WZB p.33, Quintix p.87";
  }

  @Override
  public List<LineSettings> lines() {
    return LineSettings.listOf(
        "1200-7O1", "9600-8O1", "9600-8N1", "9600-7O1", "9600-7E1", "1200-7E1", "19200-8N1");
  }

  @Override
  public Framer newFramer() {
    return TerminatedFramer.ofSevenBits();
  }

  @Override
  public List<WireLayout> layouts() {
    return SbiLayouts.ALL;
  }

  @Override
  public boolean unitMayBeBorrowed() {
    return true;
  }

  /** Continuous output and waiting for stability are settings of the balance, not commands. */
  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    return switch (command) {
      case SEND -> escape('P');
      case TARE -> escape('T');
      case ZERO -> escape('V');
      case SEND_STABLE, SEND_CONTINUOUSLY, STOP_SENDING -> Optional.empty();
    };
  }

  private static Optional<byte[]> escape(char letter) {
    return Optional.of((ESC + "" + letter + "\r\n").getBytes(StandardCharsets.US_ASCII));
  }

  @Override
  public Decoded decode(Frame frame) {
    return LineText.read(frame, SbiFormat::read);
  }

  private static Decoded read(LineText line) {
    if (line.isBlank()) return line.notALoad(Matter.BLANK);
    return switch (line.length()) {
      case SHORT -> weighing(line, 0, Id.NONE);
      case LONG -> identified(line);
      default -> line.moveTo(Math.min(line.length(), LONG)).wrongLength();
    };
  }

  private static Decoded identified(LineText line) {
    Id id = Id.of(line.text(0, ID).strip());
    if (id == Id.NOT_A_LOAD) return line.notALoad(Matter.REMARK);
    Decoded said = weighing(line, ID, id);
    if (id != Id.OTHER) return said;
    return said instanceof Decoded.Refused
        ? line.moveTo(0).unknownHeader()
        : line.notALoad(Matter.REMARK);
  }

  /** The 14 characters from a place on: sign 1, number to 10, a space, unit 12-14. */
  private static Decoded weighing(LineText line, int start, Id id) {
    line.moveTo(start);
    int mark = line.nextMark();
    if (LineText.isLetter(line.charAt(mark)) || line.comes("      --")) return word(line, id);
    if (mark == line.length()) return line.notALoad(Matter.BLANK);
    if (id == Id.STATUS) return line.unknownHeader();
    boolean signed = mark == start && LineText.isSign(line.next());
    boolean unsigned = mark > start && !LineText.isSign(line.charAt(mark));
    if (!signed && !unsigned) return line.moveTo(mark).notANumber();
    Optional<String> number = line.number(NumberField.POINT_AND_BRACKETS, start + NUMBER_END + 1);
    if (number.isEmpty()) return line.notANumber();
    boolean bracketed = line.charAt(line.place() - 1) == ']';
    if (line.place() != start + NUMBER_END + (bracketed ? 1 : 0)) return line.notANumber();
    if (!bracketed && !line.take(' ')) return line.wrongLength();
    return withUnit(line, id, number.get());
  }

  /** A mark of exclamation stands by values that were calculated (Combics). */
  private static Decoded withUnit(LineText line, Id id, String number) {
    for (int at = line.place(); at < line.length(); at++)
      if (line.charAt(at) == '!') return line.notALoad(Matter.REMARK);
    Optional<WireUnit> unit = line.unitAtLeft();
    if (unit.isEmpty() || !line.atEnd()) return line.unknownUnit();
    Stability stability = unit.get() == WireUnit.NONE ? Stability.UNSTABLE : Stability.STABLE;
    if (id == Id.TARE) return line.tareStated(number, unit.get(), stability);
    return line.weighed(number, unit.get(), id.basis, stability);
  }

  /** The special outputs and errors, told by their words wherever they stand. HH and LL are results of checkweighing. */
  private static Decoded word(LineText line, Id id) {
    String word = line.rest();
    return switch (word) {
      case "High", "H" -> new OutOfRange(Side.OVER, id.basis);
      case "Low", "L" -> new OutOfRange(Side.UNDER, id.basis);
      case "HH", "LL", "C", "Cal.Ext.", "Cal.Int.", "--" -> line.notALoad(Matter.REMARK);
      case "APP.ERR", "DIS.ERR", "PRT.ERR" -> new InstrumentFault(word);
      default -> isNumberedError(word) ? new InstrumentFault(word) : line.unknownHeader();
    };
  }

  /** {@code Err 101}, {@code ERR  54}, {@code E 101}. */
  private static boolean isNumberedError(String word) {
    String digits = word.startsWith("Err ") || word.startsWith("ERR ")
        ? word.substring(4).stripLeading()
        : word.startsWith("E ") ? word.substring(2).stripLeading() : "";
    return !digits.isEmpty()
        && digits.length() <= 3
        && digits.chars().allMatch(c -> c >= '0' && c <= '9');
  }

  /** The ID codes of the long form. */
  enum Id {
    NONE(Basis.UNSTATED),
    GROSS(Basis.GROSS),
    NET(Basis.NET),
    TARE(Basis.UNSTATED),
    STATUS(Basis.UNSTATED),
    NOT_A_LOAD(Basis.UNSTATED),
    OTHER(Basis.UNSTATED);

    private final Basis basis;

    Id(Basis basis) {
      this.basis = basis;
    }

    private static Id of(String text) {
      return switch (text) {
        case "" -> NONE;
        case "N", "N1" -> NET;
        case "G#", "G" -> GROSS;
        case "T", "T1", "T2", "PT", "PT1", "PT2" -> TARE;
        case "Stat" -> STATUS;
        case "Qnt", "Prc", "Nom.", "Diff", "n", "Setp", "Min", "Max" -> NOT_A_LOAD;
        default -> OTHER;
      };
    }
  }
}
