package candlebench.protocol.formats;

import static candlebench.protocol.LineSettings.listOf;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Decoded.Refused;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Frame;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.TerminatedFramer;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.PublishedFormat.UnitNamed;
import candlebench.shared.Basis;
import candlebench.shared.Stability;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * The formats of Kern scales.
 *
 * <pre>
 *       123.45 g   CR LF        kern/18: memory mark, number with its sign, unit; the unit is left out while the weight moves
 * ST,GS,+00123.45   g CR LF     kern/comma: status, mode, sign, number, unit; some models without the last comma
 * N+012.3456 CR LF              kern/gn: mode, sign, number
 * S    -      8.5 g   CR LF     kern/21: the Radwag text protocol
 * S +  CR LF                    kern/kcp: replies as in SICS
 * </pre>
 *
 * <p>Sources, by Kern: EMB-V-BA-e-1321 p.45 and e-1422 p.44, PCB-BA-e-1315 p.35, KDE-T-BA_IA-e-1210 p.36, FKB_A-BA-e-1513 p.37, PKS
 * e-1615 p.24, FKT/IKT/PKT e-1435 p.49, 572 7.4, PFB e-1741 p.33 (line settings); KXS/KXG-TM e-1420 section 14 p.70, KFB/KFN-TM e-1323
 * 10.3 and 10.4 p.49, KIB-TM e-1913 1.3 and 1.4, GAB-N e-1315 p.37; KEN-TM/KET-TM e-1420 16.2 and 16.3 p.167-174; CKE e-2132 13.1.
 * Captured by third parties: the minus before the first digit (572, 573, KB, DS, FKB), lines of a T-Scale NHB and QHW. From a public driver:
 * {@code =Overload=}. From memory: that capitals as commands want CR LF; line settings of the models not named. The weight reply of KCP
 * is told by third parties only, so it is read whatever its width, and not called net as SICS would.
 */
final class KernFormats {
  private static final String CR_LF = "\r\n";
  private static final List<LineSettings> LINES =
      listOf("9600-8N1", "4800-8N1", "2400-8N1", "19200-8N1", "1200-8N1");

  private static final ScaleFormat EIGHTEEN = PublishedFormat.ofLines(
          "kern/18",
          "Kern 18-byte format, unit at rest only",
          "Kern EMB-V e-1321 p.45, PCB e-1315 p.35, KDE-T e-1210 p.36, FKB e-1513 p.37",
          LINES,
          KernTables::eighteen,
          List.of(
              new Eighteen("sign-first", KernTables.EIGHTEEN_SIGN_FIRST, 16),
              new Eighteen("sign-at-digit", KernTables.EIGHTEEN, 16),
              new Eighteen("fkb", KernTables.EIGHTEEN, 12)))
      .asked(Commands.ending("")
          .with(ScaleCommand.SEND, "w")
          .with(ScaleCommand.SEND_STABLE, "s")
          .with(ScaleCommand.TARE, "t"))
      .unitNamed(UnitNamed.AT_REST);

  private static final ScaleFormat COMMA = PublishedFormat.ofLines(
          "kern/comma",
          "Kern lines with commas (KXS, KFB, KIB, T-Scale)",
          "Kern KXS/KXG-TM e-1420 p.70, KFB/KFN-TM e-1323 p.49, KIB-TM e-1913, GAB-N e-1315 p.37",
          LINES,
          KernTables::comma,
          List.of(
              TableLayout.line("kxs", KernTables.KXS_EIGHT, KernTables::comma),
              TableLayout.line("kxs-6", KernTables.KXS_SEVEN, KernTables::comma),
              TableLayout.line("kfb", KernTables.KFB, KernTables::comma),
              TableLayout.line("nhb", KernTables.NHB, KernTables::comma),
              TableLayout.line("qhw", KernTables.QHW, KernTables::comma)))
      .asked(Commands.ending(CR_LF)
          .with(ScaleCommand.SEND, "W")
          .with(ScaleCommand.SEND_STABLE, "S")
          .with(ScaleCommand.TARE, "T")
          .with(ScaleCommand.ZERO, "Z"));

  private static final ScaleFormat GN = PublishedFormat.ofLines(
          "kern/gn",
          "Kern lines of mode and number",
          "Kern KXS/KXG-TM e-1420 p.70",
          LINES,
          KernTables::gn,
          List.of(
              TableLayout.line("eight", KernTables.GN_EIGHT, KernTables::gn),
              TableLayout.line("seven", KernTables.GN_SEVEN, KernTables::gn)))
      .unitNamed(UnitNamed.NEVER);

  private static final ScaleFormat RADWAG = new RadwagFormat();
  private static final ScaleFormat SICS = new SicsFormat();

  private static final ScaleFormat TWENTY_ONE = PublishedFormat.ofLines(
          "kern/21",
          "Kern KEN-TM and KET-TM, which speak the Radwag text protocol",
          "Kern KEN-TM/KET-TM e-1420 16.2 and 16.3 p.167-174",
          RADWAG.lines(),
          RADWAG::decode,
          RADWAG.layouts())
      .asked(Commands.ending(CR_LF)
          .with(ScaleCommand.SEND, "SI")
          .with(ScaleCommand.SEND_STABLE, "S")
          .with(ScaleCommand.SEND_CONTINUOUSLY, "C1")
          .with(ScaleCommand.STOP_SENDING, "C0")
          .with(ScaleCommand.TARE, "T")
          .with(ScaleCommand.ZERO, "Z"));

  private static final ScaleFormat KCP = PublishedFormat.ofLines(
          "kern/kcp",
          "Kern communications protocol",
          "Kern CKE e-2132 13.1",
          SICS.lines(),
          KernFormats::kcp,
          List.of(new Kcp()))
      .asked(Commands.ending(CR_LF)
          .with(ScaleCommand.SEND, "SI")
          .with(ScaleCommand.SEND_STABLE, "S")
          .with(ScaleCommand.SEND_CONTINUOUSLY, "SIR")
          .with(ScaleCommand.STOP_SENDING, "SI")
          .with(ScaleCommand.TARE, "T")
          .with(ScaleCommand.ZERO, "Z"));

  static final List<ScaleFormat> ALL = List.of(EIGHTEEN, COMMA, GN);

  /** Those that send the very lines of another maker's format, and all under one name. */
  static final List<ScaleFormat> FAMILIES = List.of(
      TWENTY_ONE,
      KCP,
      new FamilyFormat(
          "kern",
          "Kern, any of its formats",
          List.of(EIGHTEEN, COMMA, GN, TWENTY_ONE, KCP),
          TerminatedFramer::ofSevenBits,
          Commands.NONE));

  private KernFormats() {}

  private static Decoded kcp(Frame frame) {
    Decoded said = SICS.decode(frame);
    if (said instanceof Weighed weighed)
      return new Weighed(weighed.indication(), Basis.UNSTATED, weighed.stability());
    return said instanceof Refused
        ? LineText.read(frame, line -> kcpWeight(line).orElse(said))
        : said;
  }

  /** {@code S S} or {@code S D}, number and unit, blanks between them as they come. */
  private static Optional<Decoded> kcpWeight(LineText line) {
    boolean stable = line.take("S S ");
    if (!stable && !line.take("S D ")) return Optional.empty();
    Optional<String> number = line.number();
    Optional<WireUnit> unit = number.isEmpty() ? Optional.empty() : line.unit();
    if (unit.isEmpty() || unit.get() == WireUnit.NONE || !line.atEnd()) return Optional.empty();
    return Optional.of(line.weighed(
        number.get(), unit.get(), Basis.UNSTATED, stable ? Stability.STABLE : Stability.UNSTABLE));
  }

  /** As SICS writes it, without calling it net. */
  private record Kcp() implements WireLayout {
    @Override
    public String name() {
      return "reply";
    }

    @Override
    public Optional<byte[]> encode(Decoded said, Shown shown) {
      WireLayout sics = SICS.layouts().get(0);
      if (!(said instanceof Weighed weighed)) return sics.encode(said, shown);
      if (weighed.basis() != Basis.UNSTATED) return Optional.empty();
      return sics.encode(new Weighed(weighed.indication(), Basis.NET, weighed.stability()), shown);
    }
  }

  /** Words at the right of the line for what is no weight. */
  private record Eighteen(String name, LineTable table, int wordsEndAt) implements WireLayout {
    @Override
    public Optional<byte[]> encode(Decoded said, Shown shown) {
      if (said.equals(new Decoded.InstrumentFault(KernTables.ERROR))) return word(KernTables.ERROR);
      if (said.equals(new OutOfRange(Side.OVER, Basis.UNSTATED))) return word(KernTables.OVERLOAD);
      return TableLayout.line(name, table, KernTables::eighteen).encode(said, shown);
    }

    private Optional<byte[]> word(String word) {
      return Fields.right(word, wordsEndAt)
          .map(text -> (text + CR_LF).getBytes(StandardCharsets.US_ASCII));
    }
  }
}
