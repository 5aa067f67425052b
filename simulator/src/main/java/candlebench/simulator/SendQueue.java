package candlebench.simulator;

import candlebench.protocol.LineSettings;
import candlebench.protocol.LineSettings.Parity;
import java.util.ArrayDeque;
import java.util.SplittableRandom;

/** Frames on their way to the host: the line carries one at a time, a link may hold them back, their order stays. */
final class SendQueue {
  private static final int LONGEST = 4096;
  private static final double UNEVEN_SECONDS = 0.019;
  private static final double GAP_CHANCE = 0.007;

  private record Sent(long due, byte[] bytes) {}

  private final double nanosPerByte;
  private final long delay;
  private final boolean uneven;
  private final SplittableRandom random;
  private final ArrayDeque<Sent> waiting = new ArrayDeque<>();
  private long lineFree;
  private long lastDue;

  SendQueue(LineSettings line, long delayNanos, boolean uneven, SplittableRandom random) {
    this.nanosPerByte = 1e9 * bitsPerByte(line) / line.baud();
    this.delay = delayNanos;
    this.uneven = uneven;
    this.random = random;
  }

  /** Whether the last frame is still going out: a scale then leaves this one out. */
  boolean isBusy(long nanos) {
    return nanos < lineFree || waiting.size() >= LONGEST;
  }

  void send(long nanos, byte[] bytes) {
    lineFree = Math.max(nanos, lineFree) + Math.round(nanosPerByte * bytes.length);
    lastDue = Math.max(lastDue, lineFree + delay + unevenness());
    waiting.add(new Sent(lastDue, bytes));
  }

  /** Hands on what has arrived by a moment. */
  void deliver(long moment, WireSink sink) {
    for (Sent next = waiting.peek(); next != null && next.due <= moment; next = waiting.peek()) {
      waiting.remove();
      sink.bytes(next.due, next.bytes);
    }
  }

  void clear() {
    waiting.clear();
  }

  private long unevenness() {
    if (!uneven) return 0;
    double seconds = Math.abs(UNEVEN_SECONDS * 1.6 * random.nextGaussian());
    if (random.nextDouble() < GAP_CHANCE) seconds += 0.15 + 0.55 * random.nextDouble();
    return Math.round(seconds * 1e9);
  }

  private static int bitsPerByte(LineSettings line) {
    return 1 + line.dataBits() + (line.parity() == Parity.NONE ? 0 : 1) + line.stopBits();
  }
}
