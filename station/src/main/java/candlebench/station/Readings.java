package candlebench.station;

import candlebench.protocol.Decoded;
import candlebench.protocol.Frame;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.station.guidance.GuidanceInput;
import candlebench.station.guidance.GuidanceInput.NoWeightShown;
import candlebench.station.guidance.GuidanceInput.NoWeightShown.Why;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import candlebench.station.link.ScaleSettings;
import java.util.Optional;

/**
 * What one scale's frames mean to guidance. The same frames in the same order give the same inputs; one thread at a time.
 *
 * <p>A unit comes from the frame itself. Where a frame names none: a format whose moving frames leave it out borrows the last one
 * named on the line, which is only assumed; else the unit of the settings holds, as long as the line never named one itself, since
 * then the maker has stated it; else there is no weight.
 */
final class Readings {
  private final int scale;
  private final ScaleSettings settings;
  private Optional<MassUnit> named = Optional.empty();

  Readings(int scale, ScaleSettings settings) {
    this.scale = scale;
    this.settings = settings;
  }

  /** What guidance is to learn of a frame; empty where it says nothing about what is on the pan. */
  Optional<GuidanceInput> of(Frame frame, Decoded decoded) {
    if (decoded instanceof Decoded.Weighed weighed) return Optional.of(weighed(frame, weighed));
    return whyNone(decoded).map(why -> new NoWeightShown(scale, why, frame.stamp()));
  }

  /** The unit that a number without one is in, if that is known. */
  Optional<MassUnit> unitUnlessNamed() {
    return isBorrowed() ? named : named.isPresent() ? Optional.empty() : settings.unit();
  }

  private GuidanceInput weighed(Frame frame, Decoded.Weighed weighed) {
    Optional<MassUnit> stated = weighed.indication().unit();
    if (stated.isPresent()) named = stated;
    Optional<MassUnit> unit = stated.isPresent() ? stated : unitUnlessNamed();
    if (unit.isEmpty()) return new NoWeightShown(scale, Why.NO_UNIT, frame.stamp());
    try {
      return new ReadingArrived(
          scale,
          new Reading(
              weighed.indication(),
              weighed.indication().mass(unit.get()),
              weighed.basis(),
              weighed.stability(),
              stated.isEmpty() && isBorrowed(),
              frame.stamp()));
    } catch (ArithmeticException beyondNineTonnes) {
      return new NoWeightShown(scale, Why.FAULT, frame.stamp());
    }
  }

  private boolean isBorrowed() {
    return settings.format().unitMayBeBorrowed() && named.isPresent();
  }

  private static Optional<Why> whyNone(Decoded decoded) {
    if (decoded instanceof Decoded.OutOfRange beyond)
      return Optional.of(
          switch (beyond.side()) {
            case OVER -> Why.OVERLOAD;
            case UNDER -> Why.UNDERLOAD;
          });
    if (decoded instanceof Decoded.InstrumentFault) return Optional.of(Why.FAULT);
    if (decoded instanceof Decoded.StatusOnly) return Optional.of(Why.BLANK);
    if (decoded instanceof Decoded.NotALoad line)
      return switch (line.matter()) {
        case PIECES, PERCENT, FORCE, DENSITY, OTHER_UNIT -> Optional.of(Why.NO_UNIT);
        case BLANK -> Optional.of(Why.BLANK);
        case TOTAL, REMARK -> Optional.empty();
      };
    // A stored tare, an acknowledgement and what was not understood say nothing about the pan.
    if (decoded instanceof Decoded.TareStated
        || decoded instanceof Decoded.Acknowledged
        || decoded instanceof Decoded.Refused) return Optional.empty();
    throw new AssertionError(decoded);
  }
}
