package candlebench.simulator;

import candlebench.protocol.LineSettings;
import candlebench.protocol.LineSettings.Parity;
import java.io.ByteArrayOutputStream;

/**
 * What a receiver hears on a serial line that is set otherwise at its far end, worked out bit by bit.
 *
 * <p>An asynchronous character is a low start bit, the data bits with the lowest first, a parity bit if there is one, and one or two
 * high stop bits; the idle line is high (common practice, also in every manual that draws it). The receiver waits for a falling edge
 * and then looks at the middle of each bit by its own clock. A host that listens without parity is handed every character as it was
 * heard; one that listens with parity never sees a character whose parity or stop bit is wrong. Both are what the settings of our
 * serial library make of a Linux port (INPCK and IGNPAR with parity, neither without; read back from a pseudo-terminal).
 */
final class LineHearing {
  private final LineSettings receiver;
  private final double bitsPerBit;
  private final boolean[] wire;
  private final int length;

  private LineHearing(boolean[] wire, int length, LineSettings sender, LineSettings receiver) {
    this.wire = wire;
    this.length = length;
    this.receiver = receiver;
    this.bitsPerBit = (double) sender.baud() / receiver.baud();
  }

  /** The characters heard when these are sent without a pause, the line being idle before and after. */
  static byte[] heard(byte[] sent, LineSettings sender, LineSettings receiver) {
    int perByte = 2 + sender.dataBits() + 1 + sender.stopBits();
    boolean[] wire = new boolean[sent.length * perByte];
    int length = 0;
    for (byte b : sent) length = put(wire, length, b, sender);
    return new LineHearing(wire, length, sender, receiver).listen();
  }

  private static int put(boolean[] wire, int at, byte b, LineSettings sender) {
    wire[at++] = false;
    int ones = 0;
    for (int bit = 0; bit < sender.dataBits(); bit++) {
      boolean one = (b >> bit & 1) == 1;
      if (one) ones++;
      wire[at++] = one;
    }
    if (sender.parity() != Parity.NONE) wire[at++] = parity(sender.parity(), ones);
    for (int stop = 0; stop < sender.stopBits(); stop++) wire[at++] = true;
    return at;
  }

  private static boolean parity(Parity parity, int ones) {
    return switch (parity) {
      case NONE -> throw new AssertionError("there is no parity bit");
      case EVEN -> ones % 2 == 1;
      case ODD -> ones % 2 == 0;
      case MARK -> true;
      case SPACE -> false;
    };
  }

  private byte[] listen() {
    ByteArrayOutputStream heard = new ByteArrayOutputStream();
    boolean parityBit = receiver.parity() != Parity.NONE;
    double from = 0;
    while (true) {
      int edge = fallingEdge(from);
      if (edge < 0) return heard.toByteArray();
      if (level(edge, 0.5)) {
        from = edge + 0.5 * bitsPerBit;
        continue;
      }
      int character = 0;
      for (int bit = 0; bit < receiver.dataBits(); bit++)
        if (level(edge, bit + 1.5)) character |= 1 << bit;
      if (!parityBit || isWhole(edge, character)) heard.write(character);
      from = edge + (receiver.dataBits() + (parityBit ? 1 : 0) + 1.5) * bitsPerBit;
    }
  }

  private boolean isWhole(int edge, int character) {
    boolean parity = level(edge, receiver.dataBits() + 1.5);
    boolean stop = level(edge, receiver.dataBits() + 2.5);
    return stop && parity == parity(receiver.parity(), Integer.bitCount(character));
  }

  /** The first bit from a moment on that is low after a high one, or -1. */
  private int fallingEdge(double from) {
    int at = (int) Math.floor(from);
    boolean before = from == 0 || at >= length || wire[at];
    for (int next = from == 0 ? 0 : at + 1; next < length; next++) {
      if (before && !wire[next]) return next;
      before = wire[next];
    }
    return -1;
  }

  /** The line's level so many of the receiver's bits after an edge. */
  private boolean level(int edge, double receiverBits) {
    int at = (int) Math.floor(edge + receiverBits * bitsPerBit);
    return at >= length || wire[at];
  }
}
