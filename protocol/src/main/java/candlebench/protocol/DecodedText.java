package candlebench.protocol;

import candlebench.protocol.Decoded.Acknowledged;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.Refused;
import candlebench.protocol.Decoded.StatusOnly;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;

/**
 * What a frame says, as the plain text fields that {@code candlebench decode} prints.
 *
 * @param status {@code stable unstable overload underload error ack none refused}
 * @param value the number as the scale showed it, or empty
 * @param unit the unit's symbol, or empty where the frame named none
 * @param kind {@code net gross tare unknown}
 * @param reason why it was refused, or empty
 * @param offset where in the stream reading stopped if it was refused, else where the frame began
 */
public record DecodedText(
    String status, String value, String unit, String kind, String reason, long offset) {
  private static final String REFUSED = "refused";

  public static DecodedText of(Frame frame, Decoded decoded) {
    return of(frame.offset(), decoded);
  }

  public boolean isRefused() {
    return status.equals(REFUSED);
  }

  /** The only place that tells the cases apart for printing; a test walks them all. */
  private static DecodedText of(long offset, Decoded decoded) {
    if (decoded instanceof Weighed weighed)
      return number(
          status(weighed.stability()), weighed.indication(), kind(weighed.basis()), offset);
    if (decoded instanceof TareStated tare)
      return number(status(tare.stability()), tare.indication(), "tare", offset);
    if (decoded instanceof OutOfRange out)
      return plain(status(out.side()), kind(out.basis()), offset);
    if (decoded instanceof StatusOnly only)
      return plain(status(only.stability()), kind(only.basis()), offset);
    if (decoded instanceof InstrumentFault fault)
      return plain("error", kind(fault.basis()), offset);
    if (decoded instanceof Acknowledged) return plain("ack", "unknown", offset);
    if (decoded instanceof NotALoad) return plain("none", "unknown", offset);
    if (decoded instanceof Refused refused) return refused(refused.refusal(), offset);
    throw new AssertionError(decoded);
  }

  private static DecodedText number(
      String status, Indication indication, String kind, long offset) {
    String unit = indication.unit().map(MassUnit::symbol).orElse("");
    return new DecodedText(status, indication.number(), unit, kind, "", offset);
  }

  private static DecodedText plain(String status, String kind, long offset) {
    return new DecodedText(status, "", "", kind, "", offset);
  }

  private static DecodedText refused(Refusal refusal, long offset) {
    String reason = refusal.reason() + ": " + refusal.words();
    return new DecodedText(REFUSED, "", "", "unknown", reason, offset + refusal.offset());
  }

  private static String status(Stability stability) {
    return switch (stability) {
      case STABLE -> "stable";
      case UNSTABLE -> "unstable";
      case UNSTATED -> "none";
    };
  }

  private static String status(OutOfRange.Side side) {
    return switch (side) {
      case OVER -> "overload";
      case UNDER -> "underload";
    };
  }

  private static String kind(Basis basis) {
    return switch (basis) {
      case GROSS -> "gross";
      case NET -> "net";
      case UNSTATED -> "unknown";
    };
  }
}
