package candlebench.protocol.formats;

import static candlebench.protocol.LineSettings.listOf;
import static candlebench.protocol.formats.Say.GROSS;
import static candlebench.protocol.formats.Say.MINUS;
import static candlebench.protocol.formats.Say.NET;
import static candlebench.protocol.formats.Say.PLUS;
import static candlebench.protocol.formats.Say.STABLE;
import static candlebench.protocol.formats.Say.UNSTABLE;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Frame;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.TerminatedFramer;
import candlebench.shared.Basis;
import candlebench.shared.Stability;
import java.util.List;
import java.util.Optional;

/**
 * The formats of Adam Equipment balances. Their MDW scales speak {@code nci}.
 *
 * <pre>
 * GS      123.45 g  CR LF       adam/f1 printed: header, number to place 14, unit in 3 places; then lines No. and Total
 * ST,NT      123.45 g  CR LF    adam/f1 continuous: status, mode, sign, number, unit
 *        123.45 g  CR LF        adam/f2: sign, number, unit
 * G  +    2.00 kg CR LF         adam/cpw: mode, sign, number, unit
 * !EU CR                        adam/pgl: errors
 * </pre>
 *
 * <p>Sources: Adam Equipment Highland manuals 2011 p.25, 2014 p.29, 2018 p.27; CPWplus 2008 p.14 and 2010 p.16; PGL 2008 p.28. From memory: 9600
 * 8N1 of CPWplus and PGL. The blanks of the CPWplus lines are not certain, so they are read by their tokens and a digit lost there
 * is not noticed. No manual says what is sent beyond the range. The lines of the CBC are left out: its manual shows their words
 * but not their columns.
 */
final class AdamFormats {
  private static final String CR_LF = "\r\n";
  private static final Choice SIGN = Choice.of(" ", PLUS).or("-", MINUS).or("+", PLUS);

  private static final LineTable F1_SHORT = LineTable.of(
      Choice.of("GS", GROSS).or("NT", NET), WeightField.signedSpaces(12), UnitField.middle(3));

  private static final LineTable F1_LONG = LineTable.of(
      Choice.of("GROSS", GROSS).or("NET  ", NET), WeightField.signedSpaces(9), UnitField.middle(3));

  private static final LineTable CONTINUOUS_HEAD = LineTable.of(
      Choice.of("ST", STABLE).or("US", UNSTABLE),
      new Fixed(","),
      Choice.of("GS", GROSS).or("NT", NET));

  /** The sign stands first; at the digits it is read too. */
  private static final LineTable F1_CONTINUOUS =
      CONTINUOUS_HEAD.then(WeightField.signedSpaces(12), UnitField.middle(3));

  private static final LineTable F1_CONTINUOUS_SIGN_FIRST =
      CONTINUOUS_HEAD.then(SIGN, WeightField.spaces(11), UnitField.middle(3));

  private static final LineTable F2 =
      LineTable.of(WeightField.signedSpaces(13), UnitField.middle(3));
  private static final LineTable F2_SIGN_FIRST =
      LineTable.of(SIGN, WeightField.spaces(12), UnitField.middle(3));

  private static final List<LineSettings> HIGHLAND_LINES =
      listOf("4800-8N1", "9600-8N1", "2400-8N1", "1200-8N1", "600-8N1", "19200-8N1");

  private static final Commands HIGHLAND = Commands.ending(CR_LF)
      .with(ScaleCommand.SEND, "P")
      .with(ScaleCommand.TARE, "T")
      .with(ScaleCommand.ZERO, "Z");

  private static final ScaleFormat FORMAT_1 = PublishedFormat.ofLines(
          "adam/f1",
          "Adam Highland format 1, printed and continuous",
          "Adam Highland 2011 p.25, 2018 p.27",
          HIGHLAND_LINES,
          AdamFormats::format1,
          List.of(
              TableLayout.line("continuous", F1_CONTINUOUS_SIGN_FIRST, AdamFormats::format1),
              TableLayout.line("printed", F1_SHORT, AdamFormats::format1),
              TableLayout.line("printed-words", F1_LONG, AdamFormats::format1)))
      .asked(HIGHLAND);

  private static final ScaleFormat FORMAT_2 = PublishedFormat.ofLines(
          "adam/f2",
          "Adam Highland format 2",
          "Adam Highland 2014 p.29",
          HIGHLAND_LINES,
          AdamFormats::format2,
          List.of(TableLayout.line("line", F2_SIGN_FIRST, AdamFormats::format2)))
      .asked(HIGHLAND);

  private static final ScaleFormat CPW = PublishedFormat.ofLines(
          "adam/cpw",
          "Adam CPWplus lines",
          "Adam CPWplus 2008 p.14 and 2010 p.16",
          listOf("9600-8N1", "4800-8N1", "2400-8N1"),
          AdamFormats::cpw,
          List.of(new Cpw()))
      .asked(Commands.ending(CR_LF)
          .with(ScaleCommand.SEND, "G")
          .with(ScaleCommand.TARE, "Z")
          .with(ScaleCommand.ZERO, "Z"));

  private static final ScaleFormat PGL = PublishedFormat.ofLines(
          "adam/pgl",
          "Adam PGL errors",
          "Adam PGL series 2008 p.28",
          listOf("9600-8N1", "4800-8N1", "2400-8N1"),
          AdamFormats::pgl,
          List.of(new TableLayout("error", List.of(), "\r", AdamFormats::pgl)))
      .asked(Commands.ending("\r").with(ScaleCommand.SEND, "!KP").with(ScaleCommand.TARE, "!KT"));

  static final List<ScaleFormat> ALL = List.of(FORMAT_1, FORMAT_2, CPW);

  /** The errors, of which no weight is known, and all under one name. */
  static final List<ScaleFormat> FAMILIES = List.of(
      PGL,
      new FamilyFormat(
          "adam",
          "Adam Equipment, any of its formats",
          List.of(FORMAT_1, FORMAT_2, CPW, PGL),
          TerminatedFramer::ofSevenBits,
          HIGHLAND));

  private AdamFormats() {}

  private static Decoded format1(Frame frame) {
    return LineText.read(
        frame, line -> remark(line).orElseGet(() -> format1Table(line).read(line)));
  }

  private static LineTable format1Table(LineText line) {
    if (line.charAt(2) == ',') return F1_CONTINUOUS;
    return line.comes("GR") || line.comes("NE") ? F1_LONG : F1_SHORT;
  }

  private static Decoded format2(Frame frame) {
    return LineText.read(frame, line -> remark(line).orElseGet(() -> F2.read(line)));
  }

  /** Lines that go with a weight but are none: ticket number, total, weight of a piece, pieces, date and time. */
  private static Optional<Decoded> remark(LineText line) {
    if (line.isBlank()) return Optional.of(line.notALoad(Matter.BLANK));
    if (line.comes("Total") || line.comes("TOTAL")) return Optional.of(line.notALoad(Matter.TOTAL));
    boolean named = line.comes("No") || line.comes("NO") || line.comes("Unit");
    boolean dated = LineText.isDigit(line.next()) && line.takeDateOrTime();
    if (named || dated || line.comes("Date") || line.comes("Time"))
      return Optional.of(line.moveTo(0).notALoad(Matter.REMARK));
    line.moveTo(0);
    boolean pieces = line.comes("PCS") || line.endsWith("PCS");
    return pieces ? Optional.of(line.notALoad(Matter.PIECES)) : Optional.empty();
  }

  private static Decoded cpw(Frame frame) {
    return LineText.read(frame, AdamFormats::cpw);
  }

  /** The blanks between mode, sign, number and unit are as they come. */
  private static Decoded cpw(LineText line) {
    boolean net = line.take('N');
    if (!net && !line.take('G')) return line.unknownHeader();
    if (line.takeSpaces() == 0) return line.wrongLength();
    if (!LineText.isSign(line.next())) return line.notANumber();
    Optional<String> number = line.number();
    if (number.isEmpty()) return line.notANumber();
    if (line.next() != ' ') return line.wrongLength();
    Optional<WireUnit> unit = line.unit();
    if (unit.isEmpty() || unit.get() == WireUnit.NONE || !line.atEnd()) return line.unknownUnit();
    return line.weighed(
        number.get(), unit.get(), net ? Basis.NET : Basis.GROSS, Stability.UNSTATED);
  }

  /** {@code !E} and the cause: U not K, K not T or P, F the CR is in the wrong place. */
  private static Decoded pgl(Frame frame) {
    return LineText.read(
        frame,
        line -> line.length() == 3 && line.comes("!E") && LineText.isLetter(line.charAt(2))
            ? new InstrumentFault(line.text())
            : line.unknownHeader());
  }

  /** Mode, two blanks, sign, number in eight places, a blank, unit. */
  private record Cpw() implements TextLayout {
    private static final int NUMBER = 8;

    @Override
    public String name() {
      return "line";
    }

    @Override
    public ScaleFormat format() {
      return CPW;
    }

    @Override
    public Optional<String> weighed(Decoded.Weighed said, Shown shown) {
      boolean canSay = said.basis() != Basis.UNSTATED
          && said.stability() == Stability.UNSTATED
          && said.indication().unit().isPresent();
      if (!canSay) return Optional.empty();
      String mode = said.basis() == Basis.NET ? "N  " : "G  ";
      return Fields.right(Fields.digits(said.indication()), NUMBER)
          .map(number -> mode
              + Fields.sign(said.indication(), '+')
              + number
              + " "
              + Fields.unit(said.indication()));
    }
  }
}
