package candlebench.protocol;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;

/** What one frame says. Values only; nothing here is guessed beyond what the frame or the protocol's definition states. */
public sealed interface Decoded {

  /** A live weight. Its indication has no unit where the frame named none. */
  record Weighed(Indication indication, Basis basis, Stability stability) implements Decoded {}

  /** More or less than the scale can weigh. Carries no value, whatever digits the frame showed. */
  record OutOfRange(Side side, Basis basis) implements Decoded {
    /** Which way out of the range. */
    public enum Side {
      OVER,
      UNDER
    }
  }

  /** Moving or still, without a number. */
  record StatusOnly(Stability stability, Basis basis) implements Decoded {
    public StatusOnly(Stability stability) {
      this(stability, Basis.UNSTATED);
    }
  }

  /** A stored tare read back: not a live load. */
  record TareStated(Indication indication, Stability stability) implements Decoded {}

  /** A valid line that is no load: pieces, per cent, a total, a ticket number, a blank display. */
  record NotALoad(Matter matter, String text) implements Decoded {
    /** What the line is about. */
    public enum Matter {
      PIECES,
      PERCENT,
      FORCE,
      DENSITY,
      TOTAL,
      OTHER_UNIT,
      BLANK,
      REMARK
    }
  }

  /** The instrument reports a fault, or refuses a command; the code is as sent. */
  record InstrumentFault(String code, Basis basis) implements Decoded {
    public InstrumentFault(String code) {
      this(code, Basis.UNSTATED);
    }
  }

  /** A command was taken; the text is the reply as sent, without its terminator. */
  record Acknowledged(String text) implements Decoded {}

  /** Not understood. Counted and shown, never thrown. */
  record Refused(Refusal refusal) implements Decoded {}
}
