package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.TerminatedFramer;
import candlebench.protocol.WireLayout;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.util.List;
import java.util.Optional;

/**
 * The lines of Ohaus scales: number, unit, a question mark while the weight moves, and a legend that says what the number is.
 *
 * <p>There is no single layout, and printed examples do not always match the table in the same manual. So a line is read by its tokens,
 * not by offsets. The price: a digit lost on the line is not noticed.
 *
 * <p>Sources, all by Ohaus: RS232 kits for Scout Pro and Navigator EN-2 and EN-3, for SPX, SKX, SJX and STX EN-9; Navigator Ethernet
 * EN-2 and NVT USB EN-4; Scout Ethernet EN-5; CKW RS485/422 EN-6; Courier 7000 EN-55; Explorer EN-153 and EN-156; Adventurer service
 * p.14; Defender 3000 EN-35; T51P/T51XW EN-48; Defender 5000 EN-51; T71P EN-56; Ranger 7000 RS232 EN-4; Ranger 3000 USB EN-5; Ranger
 * Count 3000 EN-32; Ranger RC p.36; Ranger RP/RD p.48; CW-11 EN-32; Trooper EN-9; Trooper Count p.15; Scout II p.15. Captured by a third
 * party: Defender 3000 lines with a weight of 6 and a legend of one letter. From memory: 9600 8N1; second-hand: 2400 7N2. No manual says
 * what is sent on overload.
 */
final class OhausFormat implements ScaleFormat {
  /** A right-aligned unit of one letter is this far behind its number; a legend with the unit left out is farther. */
  private static final int FARTHEST_UNIT = 5;

  @Override
  public String id() {
    return "ohaus";
  }

  @Override
  public String title() {
    return "Ohaus print lines";
  }

  @Override
  public String source() {
    return "Ohaus RS232 kits EN-2 to EN-9, Defender 3000 EN-35, Defender 5000 EN-51, Ranger 7000 EN-4, Ranger RC p.36, CW-11 EN-32";
  }

  @Override
  public List<LineSettings> lines() {
    return LineSettings.listOf(
        "9600-8N1", "2400-7N2", "9600-7N2", "9600-7E1", "4800-8N1", "19200-8N1");
  }

  @Override
  public Framer newFramer() {
    return TerminatedFramer.ofSevenBits();
  }

  @Override
  public List<WireLayout> layouts() {
    return OhausLayouts.ALL;
  }

  /** The commands of the newer scales. Older ones know P, T and Z only, and answer {@code ES} to the others. */
  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    return CrLf.ended(
        switch (command) {
          case SEND -> "IP";
          case SEND_STABLE -> "SP";
          case SEND_CONTINUOUSLY -> "CP";
          case STOP_SENDING -> "0P";
          case TARE -> "T";
          case ZERO -> "Z";
        });
  }

  @Override
  public Decoded decode(Frame frame) {
    return LineText.read(frame, OhausFormat::read);
  }

  private static Decoded read(LineText line) {
    if (line.isBlank()) return line.notALoad(Matter.BLANK);
    if (LineText.isLetter(line.next())) return reply(line);
    line.takeAddress();
    int start = line.place();
    Optional<String> number = line.number();
    if (number.isEmpty()) return line.notANumber();
    if (line.next() == ':') return inPoundsAndOunces(line.moveTo(start));
    return withUnit(line, number.get());
  }

  private static Decoded withUnit(LineText line, String number) {
    int gap = line.takeSpaces();
    if (line.atEnd() && gap == 0) return line.unknownUnit();
    if (!unitIsLeftOut(line, gap)) {
      Optional<WireUnit> unit = line.unitBefore('?');
      if (unit.isEmpty()) return line.unknownUnit();
      if (isPounds(number, unit.get()) && LineText.isDigit(line.charAt(line.nextMark())))
        return withOunces(line, number);
      return marked(line, number, unit.get());
    }
    return marked(line, number, WireUnit.NONE);
  }

  /** With the unit switched off its place is blank, and a mark or legend comes next. N is newton as a unit, net as a legend. */
  private static boolean unitIsLeftOut(LineText line, int gap) {
    if (line.atEnd() || line.next() == '?') return true;
    if (line.comesAlone("N")) return gap > FARTHEST_UNIT;
    return line.comesAlone("G")
        || line.comesAlone("T")
        || line.comesAlone("NET")
        || line.comesAlone("B/G")
        || line.comesAlone("PT")
        || line.comesAlone("TOTAL");
  }

  private static boolean isPounds(String number, WireUnit unit) {
    return unit.mass().equals(Optional.of(MassUnit.POUND)) && !number.contains(".");
  }

  /** {@code 2 lb    5.25 oz} is one weight. */
  private static Decoded withOunces(LineText line, String pounds) {
    Optional<String> ounces = line.number();
    if (ounces.isEmpty()) return line.notANumber();
    line.takeSpaces();
    Optional<WireUnit> unit = line.unitBefore('?');
    if (unit.isEmpty() || !unit.get().mass().equals(Optional.of(MassUnit.OUNCE)))
      return line.unknownUnit();
    return marked(line, PoundsAndOunces.ounces(pounds, ounces.get()));
  }

  /** {@code 2:05.3 lb:oz}, by the name of the unit in the lists of units; no manual prints a line of it. */
  private static Decoded inPoundsAndOunces(LineText line) {
    Optional<Indication> shown = PoundsAndOunces.take(line);
    if (shown.isEmpty()) return line.notANumber();
    line.takeSpaces();
    return line.take("lb:oz") ? marked(line, shown.get()) : line.unknownUnit();
  }

  private static Decoded marked(LineText line, String number, WireUnit unit) {
    Optional<Marks> marks = Marks.take(line);
    if (marks.isEmpty()) return line.unknownHeader();
    if (unit.matter().isPresent()) return line.notALoad(unit.matter().get());
    return marks.get().of(line, new Indication(number, unit.mass()));
  }

  private static Decoded marked(LineText line, Indication shown) {
    return Marks.take(line).map(marks -> marks.of(line, shown)).orElseGet(line::unknownHeader);
  }

  private static Decoded reply(LineText line) {
    if (line.isOnly("OK!") || line.isOnly("OK")) return line.acknowledged();
    if (line.isOnly("ES") || line.isOnly("CANT TARE")) return new InstrumentFault(line.rest());
    return line.unknownHeader();
  }

  /** What stands behind number and unit: the question mark and the legends. */
  private record Marks(Stability stability, Basis basis, boolean tare, Optional<Matter> matter) {

    /** Takes all marks to the end of the line; empty, at its place, where one is unknown. */
    private static Optional<Marks> take(LineText line) {
      Stability stability = Stability.STABLE;
      Basis basis = Basis.UNSTATED;
      boolean tare = false;
      Optional<Matter> matter = Optional.empty();
      for (line.takeSpaces(); !line.atEnd(); line.takeSpaces()) {
        if (line.take('?')) stability = Stability.UNSTABLE;
        else if (line.takeAlone("G") || line.takeAlone("B/G")) basis = Basis.GROSS;
        else if (line.takeAlone("N") || line.takeAlone("NET")) basis = Basis.NET;
        else if (line.takeAlone("T") || line.takeAlone("PT")) tare = true;
        else if (line.takeAlone("TOTAL")) matter = Optional.of(Matter.TOTAL);
        else if (line.takeAlone("WET WT") || line.takeAlone("AIR WT"))
          matter = Optional.of(Matter.DENSITY);
        else if (!line.takeAlone("Under")
            && !line.takeAlone("Accept")
            && !line.takeAlone("Over")
            && !line.takeDateOrTime()) return Optional.empty();
      }
      return Optional.of(new Marks(stability, basis, tare, matter));
    }

    private Decoded of(LineText line, Indication shown) {
      if (matter.isPresent()) return line.notALoad(matter.get());
      if (tare) return new Decoded.TareStated(shown, stability);
      return new Decoded.Weighed(shown, basis, stability);
    }
  }
}
