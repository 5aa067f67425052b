package candlebench.web;

import candlebench.protocol.LineSettings;
import candlebench.simulator.Outlet;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Optional;
import java.util.Queue;
import java.util.SplittableRandom;

/** A wire on which something is wrong for a while; used by one thread at a time, as an outlet is. */
final class FaultyWire implements Outlet {
  private static final long TRICKLE_NANOS = 1_000_000_000L;
  private static final int RUBBISH_BYTES = 512;

  /** What is wrong with it. */
  enum Fault {
    NONE,
    /** Nothing goes through, and nobody is told. */
    STALLED,
    /** A byte of what was sent each second; the rest waits, and later frames are not taken. */
    TRICKLING,
    /** Random bytes, as many as the far end takes. */
    RUBBISH
  }

  private final Outlet wire;
  private final SplittableRandom random = new SplittableRandom(1);
  private final Queue<Byte> waiting = new ArrayDeque<>();
  private Fault fault = Fault.NONE;
  private long nextByte;

  FaultyWire(Outlet wire) {
    this.wire = wire;
  }

  void is(Fault now) {
    fault = now;
    waiting.clear();
  }

  /** Sends what comes of the fault itself; called at each step. */
  void flood() {
    if (fault == Fault.RUBBISH) {
      byte[] rubbish = new byte[RUBBISH_BYTES];
      for (int i = 0; i < rubbish.length; i++) rubbish[i] = (byte) random.nextInt(256);
      wire.offer(rubbish);
    }
    if (fault == Fault.TRICKLING && System.nanoTime() >= nextByte && !waiting.isEmpty()) {
      nextByte = System.nanoTime() + TRICKLE_NANOS;
      wire.offer(new byte[] {waiting.remove()});
    }
  }

  @Override
  public boolean offer(byte[] bytes) {
    switch (fault) {
      case NONE:
        return wire.offer(bytes);
      case TRICKLING:
        if (waiting.isEmpty()) for (byte b : bytes) waiting.add(b);
        return true;
      default:
        return true;
    }
  }

  @Override
  public byte[] taken() {
    byte[] taken = wire.taken();
    return fault == Fault.STALLED ? Arrays.copyOf(taken, 0) : taken;
  }

  @Override
  public String address() {
    return wire.address();
  }

  @Override
  public Optional<LineSettings> heardAs() {
    return wire.heardAs();
  }

  @Override
  public void unplug() {
    wire.unplug();
  }

  @Override
  public void replug() {
    wire.replug();
  }

  @Override
  public void close() {
    wire.close();
  }
}
