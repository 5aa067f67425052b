package candlebench.protocol.formats;

import static candlebench.protocol.LineSettings.listOf;

import candlebench.protocol.EndedFramer;
import candlebench.protocol.Ending;
import candlebench.protocol.FrameShape;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.PublishedFormat.UnitNamed;
import java.util.List;

/**
 * The formats of CAS indicators and scales, and the comma strings like them.
 *
 * <pre>
 * ST,GS,1L,000013.5 kg CR LF     cas/22: status, mode, device id and lamps (L: one byte with bit 7 set), data, blank or relays, unit
 * ST,GS,000013.5kg CR LF         cas/18: status, mode, data, unit
 * 000013.5 CR LF                 cas/10: data
 * SOH STX S 01.250KG g ETX EOT   cas/sw: status, sign, data, unit, exclusive or
 * wn00015.000kg CR LF            cas/ww: gross, net or tare, data, unit
 * ST,GS,     0.0,kg CR LF        cas/comma: all fields parted by commas (Dini Argeo)
 * </pre>
 *
 * <p>Sources: CAS CI-400 owner's manual p.104-106, CI-600D 10-1 to 10-3 p.75, CI-150A p.55, PDI 8-2 p.37, NT-200 p.49, PDS p.31, SW-II p.16,
 * AP-1 transmission protocol, DH p.6, CI-2400BS p.11 (negative numbers), CI-502A p.79, SW ECR 1.2; Salter Brecknell S122 5.8.3; Liden
 * LUW2001 appendix 1 p.16; Dini Argeo DGT4X p.52, LTP p.43. Captured by third parties: a T-Scale QHW ({@code cas/18} with blanks), an A12
 * ({@code cas/ww}). From memory: 9600 8N1 of the CI series; device 1 in commands; that ENQ and DC1 may be sent at once. Not printed
 * anywhere: what {@code cas/10}, {@code cas/sw} and {@code cas/ww} send beyond the range.
 *
 * <p>The framed command mode of the CI-502A is left out: its check characters are printed without the rule that makes them.
 */
final class CasFormats {
  private static final String CR_LF = "\r\n";
  private static final char ENQ = 0x05;
  private static final char DC1 = 0x11;

  private static final Ending ENDING_22 =
      FrameShape.ofEightBits("??,??,??,???????????" + CR_LF).or(Ending.ofLines());

  /** The answers to ENQ are single bytes between frames. */
  private static final Ending ENDING_SW = FrameShape.ofEightBits(
          "\u0001\u0002???????????\u0003\u0004")
      .or((gathered, length) -> {
        boolean answer = gathered[0] == CasTables.ACK || gathered[0] == CasTables.NAK;
        return answer && length == 1 ? 1 : 0;
      });

  /** Mode 1 of the CI-400, to device 1. A reply to RW is a frame in the chosen format; the others are echoed. */
  private static final Commands CI_400 = Commands.ending(CR_LF)
      .with(ScaleCommand.SEND, "01RW")
      .with(ScaleCommand.TARE, "01MT")
      .with(ScaleCommand.ZERO, "01MZ");

  /** What PDS, NT-200 and Caston are asked with; the end of a command is not printed, CR LF is that of the CI-400. */
  private static final Commands PDS = Commands.ending(CR_LF)
      .with(ScaleCommand.SEND, "WT")
      .with(ScaleCommand.TARE, "TR")
      .with(ScaleCommand.ZERO, "ZE");

  private static final List<LineSettings> CI_LINES =
      listOf("9600-8N1", "4800-8N1", "2400-8N1", "19200-8N1", "1200-8N1");

  private static final ScaleFormat TWENTY_TWO = PublishedFormat.ofLines(
          "cas/22",
          "CAS 22-byte format",
          "CAS CI-400 p.104-106, CI-600D p.75, CI-150A p.55, CI-2400BS p.11",
          CI_LINES,
          CasTables::twentyTwo,
          List.of(
              TableLayout.frame("ci-400", CasTables.CI_400, CasTables::twentyTwo),
              TableLayout.frame("ci-600d", CasTables.CI_600D, CasTables::twentyTwo),
              new TableLayout("replies", List.of(), CR_LF, CasTables::twentyTwo)))
      .endedBy(ENDING_22)
      .asked(CI_400);

  private static final ScaleFormat EIGHTEEN = PublishedFormat.ofLines(
          "cas/18",
          "CAS 18-byte format",
          "CAS CI-400 p.104-106, PDI p.37; Salter Brecknell S122 5.8.3",
          listOf("9600-8N1", "9600-7E1", "9600-7O1", "4800-7E1", "2400-7E1", "19200-8N1"),
          CasTables::eighteen,
          List.of(
              TableLayout.line("zeros", CasTables.EIGHTEEN_ZEROS, CasTables::eighteen),
              TableLayout.line("blanks", CasTables.EIGHTEEN_BLANKS, CasTables::eighteen),
              TableLayout.line("sign-first", CasTables.EIGHTEEN_SIGN_FIRST, CasTables::eighteen)))
      .asked(CI_400);

  private static final ScaleFormat TEN = PublishedFormat.ofLines(
          "cas/10",
          "CAS 10-byte format: the number alone",
          "CAS CI-400 p.104-106, CI-600D p.75",
          CI_LINES,
          CasTables::ten,
          List.of(TableLayout.line("data", CasTables.TEN, CasTables::ten)))
      .asked(CI_400)
      .unitNamed(UnitNamed.NEVER);

  private static final ScaleFormat SW = PublishedFormat.ofLines(
          "cas/sw",
          "CAS SW-II and AP-1 format",
          "CAS SW-II p.16, AP-1 transmission protocol",
          listOf("9600-8N1", "4800-8N1", "2400-8N1"),
          CasTables::sw,
          List.of(
              TableLayout.frame("sw-ii", CasTables.SW_II, CasTables::sw),
              TableLayout.frame("ap-1", CasTables.AP_1, CasTables::sw)))
      .endedBy(ENDING_SW)
      .asked(Commands.ending("").with(ScaleCommand.SEND, ENQ + "" + DC1));

  static final ScaleFormat WW = PublishedFormat.ofLines(
      "cas/ww",
      "CAS DH format: ww, wn, wt",
      "CAS DH p.6; Liden LUW2001 appendix 1 p.16",
      listOf("9600-8N1", "4800-8N1", "2400-8N1", "1200-8N1"),
      CasTables::ww,
      List.of(
          TableLayout.line("nine", CasTables.WW_NINE, CasTables::ww),
          TableLayout.line("seven", CasTables.WW_SEVEN, CasTables::ww)));

  private static final ScaleFormat COMMA = PublishedFormat.ofLines(
      "cas/comma",
      "Comma string of Dini Argeo and others",
      "Dini Argeo DGT4X p.52, LTP p.43",
      listOf("9600-8N1", "4800-8N1", "2400-8N1", "19200-8N1"),
      CasTables::commas,
      List.of(
          TableLayout.line("standard", CasTables.COMMAS, CasTables::commas),
          TableLayout.line("addressed", CasTables.COMMAS_ADDRESSED, CasTables::commas)));

  static final List<ScaleFormat> ALL = List.of(TWENTY_TWO, EIGHTEEN, TEN, SW, WW, COMMA);

  private static final List<ScaleFormat> ASKED = List.of(TWENTY_TWO, EIGHTEEN, TEN);

  /** Several of them under one name. */
  static final List<ScaleFormat> FAMILIES = List.of(
      new FamilyFormat(
          "cas",
          "CAS, any of its formats",
          ALL,
          () -> new EndedFramer(ENDING_SW.or(ENDING_22)),
          CI_400),
      new FamilyFormat(
          "cas/cmd",
          "CAS command mode: replies, and weights in the chosen format",
          ASKED,
          () -> new EndedFramer(ENDING_22),
          CI_400),
      new FamilyFormat(
          "cas/pds",
          "CAS PDS, NT-200 and Caston, asked by two letters",
          ASKED,
          () -> new EndedFramer(ENDING_22),
          PDS));

  private CasFormats() {}
}
