package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Decoded.StatusOnly;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.util.Optional;

/**
 * What has been read of a frame so far, field by field. A fault counts before out of range, that before all else, since the digits mean
 * nothing beside it: so a number that cannot be read is remembered as a flaw, and only the whole frame tells whether it matters.
 */
final class Draft {
  private Optional<Decoded> stopped = Optional.empty();
  private Optional<Decoded> flaw = Optional.empty();
  private Optional<String> fault = Optional.empty();
  private Optional<Side> side = Optional.empty();
  private boolean outBySign;
  private boolean negative;
  private Stability stability = Stability.UNSTATED;
  private Basis basis = Basis.UNSTATED;
  private boolean stored;
  private String number = "";
  private Optional<MassUnit> unit = Optional.empty();
  private Optional<Matter> matter = Optional.empty();

  /** What a mark says; its text is the code if it is a fault. */
  void say(Say say, String mark) {
    switch (say) {
      case STABLE -> stability = Stability.STABLE;
      case UNSTABLE -> stability = Stability.UNSTABLE;
      case OVER -> side = Optional.of(Side.OVER);
      case UNDER -> side = Optional.of(Side.UNDER);
      case OUT -> outBySign = true;
      case FAULT -> fault = Optional.of(mark.strip());
      case GROSS -> basis = Basis.GROSS;
      case NET -> basis = Basis.NET;
      case TARE -> stored = true;
      case MINUS -> negative = true;
      case PLUS, NOTHING -> {}
    }
  }

  /** The digits, with a minus if it stood among them. */
  void number(String digits) {
    number = digits;
  }

  void unit(WireUnit named) {
    unit = named.mass();
    matter = named.matter();
  }

  void shown(Indication shown) {
    number = shown.number();
    unit = shown.unit();
  }

  /** What cannot be read, unless the digits turn out to mean nothing. The first one counts. */
  void flaw(Decoded refusal) {
    if (flaw.isEmpty()) flaw = Optional.of(refusal);
  }

  /** What cannot be read, whatever the rest of the frame says. */
  void stop(Decoded refusal) {
    stopped = Optional.of(refusal);
  }

  boolean isStopped() {
    return stopped.isPresent();
  }

  /** What the frame says. */
  Decoded decoded(LineText line) {
    if (stopped.isPresent()) return stopped.get();
    if (fault.isPresent()) return new InstrumentFault(fault.get(), basis);
    if (side.isPresent()) return new OutOfRange(side.get(), basis);
    if (outBySign) return new OutOfRange(negative ? Side.UNDER : Side.OVER, basis);
    if (flaw.isPresent()) return flaw.get();
    if (matter.isPresent()) return line.notALoad(matter.get());
    if (number.isEmpty()) return line.notANumber();
    Indication shown = new Indication(negative ? "-" + number : number, unit);
    return stored
        ? new Decoded.TareStated(shown, stability)
        : new Decoded.Weighed(shown, basis, stability);
  }

  /** What a frame of marks alone says. */
  Decoded status(LineText line) {
    boolean marksOnly = stopped.isEmpty() && fault.isEmpty() && side.isEmpty() && !outBySign;
    return marksOnly ? new StatusOnly(stability, basis) : decoded(line);
  }
}
