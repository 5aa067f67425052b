package candlebench.station.link;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** A wire that does what the test says, piece by piece: each reading takes the next piece, and waits for it. */
public final class ScriptedLine implements Line {
  /** The tail of a frame. */
  static final String TAIL = ".00  g\r\n";

  private static final byte[] SILENCE = {};
  private static final byte[] UNPLUGGED = {};

  /** What one reading takes, and whether it has been dealt with. */
  private static final class Piece {
    private final byte[] bytes;
    private final CountDownLatch done = new CountDownLatch(1);

    private Piece(byte[] bytes) {
      this.bytes = bytes;
    }
  }

  private final BlockingQueue<Opening> openings = new LinkedBlockingQueue<>();
  private final BlockingQueue<Piece> pieces = new LinkedBlockingQueue<>();
  private volatile Piece newest = new Piece(SILENCE);
  public final BlockingQueue<String> written = new LinkedBlockingQueue<>();
  public final BlockingQueue<String> events = new LinkedBlockingQueue<>();

  public ScriptedLine() {
    newest.done.countDown();
  }

  /** The line is opened while a frame is under way, as mostly: its tail comes first. */
  public void plugIn() {
    plugInBetweenFrames();
    send(TAIL);
  }

  public void plugInBetweenFrames() {
    openings.add(new Opened(new Port()));
  }

  public void refuse(LinkReport why) {
    openings.add(new NotOpened(why));
  }

  public void send(String text) {
    add(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  public void silence() {
    add(SILENCE);
  }

  public void unplug() {
    add(UNPLUGGED);
  }

  @Override
  public Opening open() {
    events.add("open");
    return taken(openings);
  }

  /** Waits until all that was sent has been read and dealt with, which the next reading shows. */
  public void awaitAllRead() throws InterruptedException {
    Piece last = newest;
    if (!last.done.await(10, TimeUnit.SECONDS)) throw new AssertionError("the link does not read");
  }

  private void add(byte[] bytes) {
    newest = new Piece(bytes);
    pieces.add(newest);
  }

  private static <T> T taken(BlockingQueue<T> queue) {
    try {
      T next = queue.poll(30, TimeUnit.SECONDS);
      if (next == null)
        throw new AssertionError("the script has no more: the test forgot to close the link");
      return next;
    } catch (InterruptedException ended) {
      throw new AssertionError(ended);
    }
  }

  private final class Port implements BytePort {
    private boolean gone;
    private Piece current = new Piece(SILENCE);

    @Override
    public int read(byte[] into) {
      if (gone) throw new AssertionError("a port that is gone is never read again");
      current.done.countDown();
      current = taken(pieces);
      byte[] piece = current.bytes;
      if (piece == UNPLUGGED) {
        gone = true;
        current.done.countDown();
        return GONE;
      }
      System.arraycopy(piece, 0, into, 0, piece.length);
      return piece.length;
    }

    @Override
    public boolean write(byte[] bytes) {
      written.add(new String(bytes, StandardCharsets.US_ASCII));
      return true;
    }

    @Override
    public LinkReport whyGone() {
      return LinkReport.of(LinkState.LOST);
    }

    @Override
    public void close() {
      events.add("close");
      if (!gone) unplug();
    }
  }
}
