package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Acknowledged;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.Refused;
import candlebench.protocol.Decoded.StatusOnly;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** A layout that is a line of text: it says each kind of message it can as text, the terminator being added here. */
interface TextLayout extends WireLayout {

  Optional<String> weighed(Weighed said, Shown shown);

  default Optional<String> outOfRange(OutOfRange said, Shown shown) {
    return Optional.empty();
  }

  default Optional<String> tareStated(TareStated said, Shown shown) {
    return Optional.empty();
  }

  default Optional<String> statusOnly(StatusOnly said, Shown shown) {
    return Optional.empty();
  }

  default Optional<String> fault(InstrumentFault said, Shown shown) {
    return Optional.empty();
  }

  /** The format this is a layout of. */
  ScaleFormat format();

  /** A text that is kept as it was sent, if it means this in the format. */
  default Optional<String> asSent(Decoded said, String text) {
    Frame frame = new Frame(0, bytes(text), Framer.NEVER);
    return format().decode(frame).equals(said) ? Optional.of(text) : Optional.empty();
  }

  default String terminator() {
    return "\r\n";
  }

  @Override
  default Optional<byte[]> encode(Decoded said, Shown shown) {
    return line(said, shown).map(this::bytes);
  }

  private byte[] bytes(String line) {
    return (line + terminator()).getBytes(StandardCharsets.ISO_8859_1);
  }

  private Optional<String> line(Decoded said, Shown shown) {
    if (said instanceof Weighed weighed) return weighed(weighed, shown);
    if (said instanceof OutOfRange out) return outOfRange(out, shown);
    if (said instanceof TareStated tare) return tareStated(tare, shown);
    if (said instanceof StatusOnly status) return statusOnly(status, shown);
    if (said instanceof InstrumentFault fault) return fault(fault, shown);
    if (said instanceof Acknowledged acknowledged) return asSent(said, acknowledged.text());
    if (said instanceof NotALoad other) return asSent(said, other.text());
    if (said instanceof Refused) return Optional.empty();
    throw new AssertionError(said);
  }
}
