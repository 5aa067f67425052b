package candlebench.protocol;

import candlebench.protocol.LineSettings.Parity;
import java.io.ByteArrayOutputStream;
import java.util.BitSet;
import java.util.List;

/** A serial line bit by bit: what a receiver with other settings than the sender's hears. */
final class SerialLine {
  private static final int IDLE_BITS_BETWEEN_FRAMES = 40;

  private final LineSettings sender;
  private final BitSet levels = new BitSet();
  private int length;

  private SerialLine(LineSettings sender) {
    this.sender = sender;
  }

  static byte[] heard(List<byte[]> frames, LineSettings sender, LineSettings receiver) {
    SerialLine line = new SerialLine(sender);
    for (byte[] frame : frames) {
      line.add(true, IDLE_BITS_BETWEEN_FRAMES);
      for (byte each : frame) line.send(each);
    }
    line.add(true, IDLE_BITS_BETWEEN_FRAMES);
    return line.receive(receiver);
  }

  private void send(byte b) {
    add(false, 1);
    int ones = 0;
    for (int bit = 0; bit < sender.dataBits(); bit++) {
      boolean one = (b >> bit & 1) == 1;
      if (one) ones++;
      add(one, 1);
    }
    switch (sender.parity()) {
      case NONE -> {}
      case EVEN -> add(ones % 2 == 1, 1);
      case ODD -> add(ones % 2 == 0, 1);
      case MARK -> add(true, 1);
      case SPACE -> add(false, 1);
    }
    add(true, sender.stopBits());
  }

  private void add(boolean level, int bits) {
    levels.set(length, length + bits, level);
    length += bits;
  }

  /** Samples the middle of each bit after a falling edge; a byte whose stop bit is wrong is delivered all the same. */
  private byte[] receive(LineSettings receiver) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    long bit = sender.baud();
    long end = (long) length * receiver.baud();
    long tick = 0;
    while (true) {
      tick = tickOfNext(false, tick, receiver);
      if (tick >= end) return bytes.toByteArray();
      long middle = tick + bit / 2;
      int value = 0;
      for (int at = 0; at < receiver.dataBits(); at++)
        if (level(middle + (at + 1) * bit, receiver)) value |= 1 << at;
      bytes.write(value);
      int parityBits = receiver.parity() == Parity.NONE ? 0 : 1;
      tick = middle + (receiver.dataBits() + parityBits + 1) * bit;
      tick = tickOfNext(true, tick, receiver);
    }
  }

  /** When the line is next at this level, from a tick on; beyond the end it stays high. */
  private long tickOfNext(boolean high, long tick, LineSettings receiver) {
    int at = (int) (tick / receiver.baud());
    if (level(tick, receiver) == high) return tick;
    int next = high ? levels.nextSetBit(at) : levels.nextClearBit(at);
    return (next < 0 || next > length ? length : next) * (long) receiver.baud();
  }

  private boolean level(long tick, LineSettings receiver) {
    long at = tick / receiver.baud();
    return at >= length || levels.get((int) at);
  }
}
