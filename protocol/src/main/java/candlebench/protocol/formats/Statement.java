package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.WireLayout.Shown;
import candlebench.protocol.formats.Say.Topic;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * What a line is to say.
 *
 * @param number the number to show, if it is in range
 * @param stored whether it is a stored tare
 * @param side which way out of range, if it is
 * @param fault the code of the fault, if it is one
 * @param scale how the instrument shows weights
 */
record Statement(
    Optional<Indication> number,
    Basis basis,
    Stability stability,
    boolean stored,
    Optional<Side> side,
    String fault,
    Shown scale) {

  /** Empty for what is said in words of its own, such as an acknowledgement. */
  static Optional<Statement> of(Decoded said, Shown scale) {
    if (said instanceof Weighed weighed)
      return Optional.of(of(weighed.indication(), weighed.basis(), weighed.stability(), scale));
    if (said instanceof TareStated tare)
      return Optional.of(new Statement(
          Optional.of(tare.indication()),
          Basis.UNSTATED,
          tare.stability(),
          true,
          Optional.empty(),
          "",
          scale));
    if (said instanceof OutOfRange out)
      return Optional.of(withoutNumber(out.basis(), Optional.of(out.side()), "", scale));
    if (said instanceof InstrumentFault fault && !fault.code().isEmpty())
      return Optional.of(withoutNumber(fault.basis(), Optional.empty(), fault.code(), scale));
    return Optional.empty();
  }

  private static Statement of(Indication shown, Basis basis, Stability stability, Shown scale) {
    return new Statement(Optional.of(shown), basis, stability, false, Optional.empty(), "", scale);
  }

  private static Statement withoutNumber(
      Basis basis, Optional<Side> side, String fault, Shown scale) {
    return new Statement(Optional.empty(), basis, Stability.UNSTATED, false, side, fault, scale);
  }

  /** Whether a mark that says this belongs in the line. */
  boolean is(Say say) {
    return switch (say) {
      case STABLE -> stability == Stability.STABLE;
      case UNSTABLE -> stability == Stability.UNSTABLE;
      case OVER -> side.equals(Optional.of(Side.OVER));
      case UNDER -> side.equals(Optional.of(Side.UNDER));
      case OUT -> side.isPresent();
      case FAULT -> !fault.isEmpty();
      case GROSS -> basis == Basis.GROSS;
      case NET -> basis == Basis.NET;
      case TARE -> stored;
      case MINUS -> isNegative();
      case PLUS -> !isNegative();
      case NOTHING -> true;
    };
  }

  /** All that the line must be able to speak of. */
  Set<Topic> topics() {
    Set<Topic> topics = EnumSet.noneOf(Topic.class);
    if (number.flatMap(Indication::unit).isPresent()) topics.add(Topic.UNIT);
    if (stability != Stability.UNSTATED) topics.add(Topic.STABILITY);
    if (basis != Basis.UNSTATED) topics.add(Topic.BASIS);
    if (stored) topics.add(Topic.TARE);
    if (side.isPresent()) topics.add(Topic.RANGE);
    if (!fault.isEmpty()) topics.add(Topic.FAULT);
    return topics;
  }

  private boolean isNegative() {
    return number.map(Fields::isNegative).orElse(side.equals(Optional.of(Side.UNDER)));
  }
}
