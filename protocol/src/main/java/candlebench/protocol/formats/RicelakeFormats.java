package candlebench.protocol.formats;

import static candlebench.protocol.LineSettings.listOf;

import candlebench.protocol.FrameShape;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import java.util.List;

/**
 * The streams of Rice Lake and Cardinal indicators.
 *
 * <pre>
 * STX    12.50LG  CR LF           ricelake: polarity, weight, unit, mode, status (CR LF or CR alone)
 * STX    12.50LBG  CR LF          ricelake/unit2: the same with a unit of two letters (Tracer AV)
 * CR +0012.50  lb g   ETX         ricelake/cardinal: polarity, weight, status, unit, mode
 *   0012.50lbG   CR               ricelake/sb400: sign, weight, unit, mode, condition
 *   G+0012.50 lb CR LF            ricelake/wtx: mode, polarity, weight, unit
 * OK CR LF                        ricelake/cmd: replies to commands
 * </pre>
 *
 * <p>Sources: Rice Lake 680 Synergy Plus 11.3 p.63, 682 16.5 p.110, 482-AG p.33, 480 Legend p.64, Tracer AV 6.3 p.34, 880 10.6 and 10.7
 * p.99, 920i V1.05 9.1 p.72 and USB V5.05 11.8 p.123, 480-2A p.64, CW-90/90X table 6-9 p.53; Cardinal 200 series p.27, 201
 * 8400-M117-O1 p.67, 225 8200-M698-O1 p.117; Fairbanks FB3000 p.56. From memory: 9600 8N1; that scale 1 and port 1 are asked. Not printed:
 * the width of units of one letter in {@code cardinal}; what stands in the weight of an invalid or over-range frame.
 *
 * <p>A 920i prints grains with the letter of the gram and cannot be told from one that shows grams: set it to another unit.
 */
final class RicelakeFormats {

  /** A weight that is asked for comes in other words than the stream's: {@code ricelake/cmd}. */
  private static final Commands KEYS = Commands.ending("\r")
      .with(ScaleCommand.SEND_CONTINUOUSLY, "SX#1")
      .with(ScaleCommand.STOP_SENDING, "EX#1")
      .with(ScaleCommand.TARE, "KTARE")
      .with(ScaleCommand.ZERO, "KZERO");

  private static final List<LineSettings> LINES =
      listOf("9600-8N1", "9600-7E1", "4800-8N1", "2400-8N1", "1200-8N1", "19200-8N1", "38400-8N1");

  private static final ScaleFormat STREAM = PublishedFormat.ofLines(
          "ricelake",
          "Rice Lake stream",
          "Rice Lake 680 p.63, 682 p.110, 480 Legend p.64, 880 p.99, 920i p.123",
          LINES,
          RicelakeTables::stream,
          List.of(TableLayout.line("stream", RicelakeTables.STREAM, RicelakeTables::stream)))
      .asked(KEYS);

  private static final ScaleFormat UNIT_2 = PublishedFormat.ofLines(
          "ricelake/unit2",
          "Rice Lake stream with units of two letters (Tracer AV)",
          "Rice Lake Tracer AV 6.3 p.34",
          LINES,
          RicelakeTables::unit2,
          List.of(TableLayout.line("tracer", RicelakeTables.TRACER, RicelakeTables::unit2)))
      .asked(KEYS);

  private static final ScaleFormat CARDINAL = PublishedFormat.ofLines(
          "ricelake/cardinal",
          "Cardinal stream",
          "Rice Lake CW-90 table 6-9 p.53; Cardinal 200 series p.27, 225 p.117; Fairbanks FB3000 p.56",
          LINES,
          RicelakeTables::cardinal,
          List.of(TableLayout.frame("stream", RicelakeTables.CARDINAL, RicelakeTables::cardinal)))
      .endedBy(FrameShape.ofSevenBits("\r" + "?".repeat(16) + "\u0003"));

  private static final ScaleFormat SB_400 = PublishedFormat.ofLines(
      "ricelake/sb400",
      "Cardinal SB-400 stream",
      "Cardinal 201 8400-M117-O1 p.67, 225 8200-M698-O1 p.117",
      LINES,
      RicelakeTables::sb400,
      List.of(
          new TableLayout("stream", List.of(RicelakeTables.SB_400), "\r", RicelakeTables::sb400)));

  private static final ScaleFormat WTX = PublishedFormat.ofLines(
      "ricelake/wtx",
      "Rice Lake weight line: mode, weight, unit",
      "Rice Lake CW-90 table 6-9 p.53; Cardinal 225 8200-M698-O1 p.117",
      LINES,
      RicelakeTables::wtx,
      List.of(TableLayout.line("line", RicelakeTables.WTX, RicelakeTables::wtx)));

  static final List<ScaleFormat> ALL = List.of(STREAM, UNIT_2, CARDINAL, SB_400, WTX);

  /** Replies to commands, the weight being one of them. */
  static final List<ScaleFormat> FAMILIES = List.of(PublishedFormat.ofLines(
          "ricelake/cmd",
          "Rice Lake command mode: replies",
          "Rice Lake 920i V1.05 9.1 p.72",
          LINES,
          RicelakeTables::replies,
          List.of(new RicelakeTables.Reply()))
      .asked(KEYS.with(ScaleCommand.SEND, "XG#1")));

  private RicelakeFormats() {}
}
