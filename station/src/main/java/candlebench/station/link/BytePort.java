package candlebench.station.link;

/**
 * The only door to a wire, open. One thread reads and writes; any thread may close it, which ends a read that waits.
 *
 * <p>Once a port is gone it stays gone: it is closed and another one opened.
 */
public interface BytePort extends AutoCloseable {

  /** What {@link #read} answers when the wire is gone. */
  int GONE = -1;

  /** How long a read waits for a first byte, in milliseconds; a serial driver may take a tenth of a second more or less. */
  int READ_WAIT_MILLIS = 100;

  /** Reads what has arrived, waiting a little for it: how many bytes, 0 where all is silent, {@link #GONE} once the wire is gone. */
  int read(byte[] into);

  /** Hands bytes to the wire; whether it took them all. Where it did not, the next read says why. */
  boolean write(byte[] bytes);

  /** Why the wire is gone, once a read said so. */
  LinkReport whyGone();

  @Override
  void close();
}
