package candlebench.station.link;

import candlebench.protocol.EscapedBytes;
import candlebench.shared.Stamp;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/** The last bytes of a wire as they came, piece by piece with their times, so that one bad day can be looked into afterwards. */
public final class ByteTrace {

  /** The most bytes kept: some six minutes of a scale that sends eighteen bytes ten times a second. */
  public static final int MOST_BYTES = 1 << 16;

  private record Piece(Stamp stamp, byte[] bytes) {}

  private final Deque<Piece> pieces = new ArrayDeque<>();
  private int kept;
  private long dropped;

  synchronized void keep(byte[] bytes, int length, Stamp stamp) {
    pieces.add(new Piece(stamp, Arrays.copyOf(bytes, length)));
    kept += length;
    while (kept > MOST_BYTES) {
      int oldest = pieces.remove().bytes().length;
      kept -= oldest;
      dropped += oldest;
    }
  }

  /** Writes one line for each piece: wall time, nanoseconds, bytes with control bytes escaped; the oldest first. */
  public void dump(Appendable out) throws IOException {
    List<Piece> copy;
    long before;
    synchronized (this) {
      copy = List.copyOf(pieces);
      before = dropped;
    }
    out.append("# ").append(Long.toString(before)).append(" earlier bytes are no longer kept\n");
    for (Piece piece : copy)
      out.append(piece.stamp().wall().toString())
          .append(' ')
          .append(Long.toString(piece.stamp().nanos()))
          .append(' ')
          .append(EscapedBytes.text(piece.bytes()))
          .append('\n');
  }
}
