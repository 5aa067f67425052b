package candlebench.simulator;

import candlebench.protocol.LineSettings;
import java.io.ByteArrayOutputStream;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * One direction of a line that cuts, delays, loses, drops and flips by seed, garbles where its two ends are set differently, and can
 * be pulled out. It takes frames as a {@link WireSink} and hands on what has arrived when asked.
 */
public final class VirtualLine implements WireSink {
  private static final int LONGEST_RUBBISH = 8;
  private static final long PIECE_GAP_NANOS = 20_000_000;

  private record Piece(long due, byte[] bytes) {}

  private final LineFaults faults;
  private final LineSettings sender;
  private final SplittableRandom random;
  private final ArrayDeque<Piece> pieces = new ArrayDeque<>();
  private LineSettings receiver;
  private boolean plugged = true;
  private long lastDue;

  /** A line whose sender is set one way and whose receiver listens another way. */
  public VirtualLine(LineFaults faults, LineSettings sender, LineSettings receiver, long seed) {
    this.faults = faults;
    this.sender = sender;
    this.receiver = receiver;
    this.random = new SplittableRandom(seed);
  }

  /** A line set alike at both ends. */
  public VirtualLine(LineFaults faults, long seed) {
    this(faults, LineSettings.of("9600-8N1"), LineSettings.of("9600-8N1"), seed);
  }

  /** The receiver listens this way from now on. */
  public void listenAs(LineSettings settings) {
    receiver = settings;
  }

  /** Pulls the plug: what is under way and what is sent from now on is lost. */
  public void unplug() {
    plugged = false;
    pieces.clear();
  }

  public void replug() {
    plugged = true;
  }

  @Override
  public void bytes(long nanos, byte[] frame) {
    if (!plugged || happens(faults.lostShare())) return;
    byte[] heard = sender.equals(receiver) ? frame : LineHearing.heard(frame, sender, receiver);
    byte[] arriving = damaged(heard);
    long held = happens(faults.delayedShare())
        ? (long) (random.nextDouble() * faults.longestDelay().toNanos())
        : 0;
    long due = nanos + held;
    int from = 0;
    if (arriving.length > 1 && happens(faults.cutShare())) {
      int cuts = 1 + random.nextInt(3);
      for (int i = 0; i < cuts && from < arriving.length - 1; i++) {
        int to = from + 1 + random.nextInt(arriving.length - from - 1);
        add(due, Arrays.copyOfRange(arriving, from, to));
        from = to;
        due += (long) (random.nextDouble() * PIECE_GAP_NANOS);
      }
    }
    if (from < arriving.length) add(due, Arrays.copyOfRange(arriving, from, arriving.length));
  }

  /** Hands on, in order, what has arrived by a moment. */
  public void deliver(long moment, WireSink sink) {
    for (Piece next = pieces.peek(); next != null && next.due <= moment; next = pieces.peek()) {
      pieces.remove();
      sink.bytes(next.due, next.bytes);
    }
  }

  private void add(long due, byte[] bytes) {
    lastDue = Math.max(lastDue, due);
    pieces.add(new Piece(lastDue, bytes));
  }

  private byte[] damaged(byte[] frame) {
    if (faults.droppedShare() == 0 && faults.flippedShare() == 0 && faults.rubbishShare() == 0)
      return frame;
    ByteArrayOutputStream arriving = new ByteArrayOutputStream(frame.length + LONGEST_RUBBISH);
    if (happens(faults.rubbishShare())) {
      byte[] rubbish = new byte[1 + random.nextInt(LONGEST_RUBBISH)];
      random.nextBytes(rubbish);
      arriving.writeBytes(rubbish);
    }
    for (byte b : frame) {
      if (happens(faults.droppedShare())) continue;
      arriving.write(happens(faults.flippedShare()) ? b ^ 1 << random.nextInt(8) : b);
    }
    return arriving.toByteArray();
  }

  private boolean happens(double share) {
    return share > 0 && random.nextDouble() < share;
  }
}
