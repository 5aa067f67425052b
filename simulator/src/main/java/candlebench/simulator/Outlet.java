package candlebench.simulator;

import candlebench.protocol.LineSettings;
import java.util.Optional;

/** Where a virtual scale meets a program as a real scale would: a device node, or a socket. Used by one thread at a time. */
public interface Outlet extends AutoCloseable {

  /** What a program opens to reach it, such as a device's path or a host and port. */
  String address();

  /** Sends bytes to the program that listens; dropped, as by a wire, where none does or it does not keep up. Whether they went out. */
  boolean offer(byte[] bytes);

  /** The bytes the program has sent since last asked; never waits. */
  byte[] taken();

  /** How the program has set its end of the line, or empty where there is no such thing or nobody listens. */
  Optional<LineSettings> heardAs();

  /** Takes the plug out: the program sees its device or connection go. */
  void unplug();

  /** Puts the plug back in at the same address. */
  void replug();

  /** Unplugs for good. */
  @Override
  void close();
}
