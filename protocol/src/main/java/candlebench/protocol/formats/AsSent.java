package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Acknowledged;
import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.NotALoad;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Function;

/** Messages that keep their text as it was sent: acknowledgements, faults, lines that are no load. */
final class AsSent {

  private AsSent() {}

  /** The text kept and its terminator, if they mean this to the decoder. */
  static Optional<byte[]> bytes(Decoded said, String terminator, Function<Frame, Decoded> decoder) {
    return text(said)
        .map(text -> (text + terminator).getBytes(StandardCharsets.ISO_8859_1))
        .filter(bytes -> decoder.apply(new Frame(0, bytes, Framer.NEVER)).equals(said));
  }

  private static Optional<String> text(Decoded said) {
    if (said instanceof Acknowledged acknowledged) return Optional.of(acknowledged.text());
    if (said instanceof NotALoad other) return Optional.of(other.text());
    if (said instanceof InstrumentFault fault) return Optional.of(fault.code());
    return Optional.empty();
  }
}
