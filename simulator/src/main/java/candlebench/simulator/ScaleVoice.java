package candlebench.simulator;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.WireLayout;
import candlebench.protocol.WireLayout.Shown;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Says what a scale has to say through a layout, leaving out what the layout has no word for. */
final class ScaleVoice {
  private final WireLayout layout;
  private final boolean statesRest;

  ScaleVoice(WireLayout layout, boolean statesRest) {
    this.layout = layout;
    this.statesRest = statesRest;
  }

  /** The frame of a weight, or empty where the layout cannot send it now, as one that sends at rest only. */
  Optional<byte[]> weight(String number, boolean tared, boolean stable, Shown shown) {
    Indication withUnit = Indication.of(number, shown.unit());
    Indication withoutUnit = Indication.withoutUnit(number);
    for (Basis basis : bases(tared))
      for (Stability stability : stabilities(stable)) {
        Optional<byte[]> frame = layout.encode(new Weighed(withUnit, basis, stability), shown);
        if (frame.isEmpty())
          frame = layout.encode(new Weighed(withoutUnit, basis, stability), shown);
        if (frame.isPresent()) return frame;
      }
    return Optional.empty();
  }

  /** The frame of a reading beyond the range, or empty where the layout has none and the scale falls silent. */
  Optional<byte[]> outOfRange(OutOfRange.Side side, boolean tared, Shown shown) {
    for (Basis basis : bases(tared)) {
      Optional<byte[]> frame = layout.encode(new OutOfRange(side, basis), shown);
      if (frame.isPresent()) return frame;
    }
    return Optional.empty();
  }

  Optional<byte[]> say(Decoded said, Shown shown) {
    return layout.encode(said, shown);
  }

  /** A scale that is not tared may call its weight net, as protocols do whose every weight is net by definition. */
  private static List<Basis> bases(boolean tared) {
    return tared
        ? List.of(Basis.NET, Basis.UNSTATED)
        : List.of(Basis.GROSS, Basis.UNSTATED, Basis.NET);
  }

  private List<Stability> stabilities(boolean stable) {
    List<Stability> order = new ArrayList<>(3);
    if (statesRest) order.add(stable ? Stability.STABLE : Stability.UNSTABLE);
    order.add(Stability.UNSTATED);
    if (!statesRest) order.add(Stability.UNSTABLE);
    return order;
  }
}
