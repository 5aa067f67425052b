package candlebench.simulator;

import candlebench.protocol.LineSettings;
import candlebench.protocol.LineSettings.Parity;
import candlebench.simulator.LibC.Terminal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/**
 * A real serial device node with a virtual scale behind it, so that the real serial path is driven. Linux only.
 *
 * <p>A program opens it by a symbolic link of ours: numbers of pseudo-terminals are given out again at once, so that after a re-plug
 * the old number may be someone else's. The line's speed and parity mean nothing to a pseudo-terminal, but what the program asked for
 * can be read back: {@link #heardAs}.
 *
 * <p>It never blocks: before each write it asks whether anyone has it open and whether there is room, and otherwise drops the frame.
 * What was written just before an unplug may be lost before the reader sees it.
 */
public final class PseudoTerminal implements Outlet {
  private static final int ISTRIP = 0x20;
  private static final int INPCK = 0x10;
  private static final int CSTOPB = 0x40;
  private static final int PARODD = 0x200;
  private static final int CMSPAR = 0x40000000;
  private static final int ROOM = 4096;
  private static final int NONE = -1;

  private final Path link;
  private final byte[] incoming = new byte[ROOM];
  private int fd = NONE;
  private String device = "";
  private boolean opened;

  /** Creates the device and a link to it; throws {@link UncheckedIOException} if something else stands at the link's path. */
  public PseudoTerminal(Path link) {
    this.link = link.toAbsolutePath();
    replug();
  }

  @Override
  public String address() {
    return link.toString();
  }

  /** The device node the link leads to now; empty while unplugged. */
  public String device() {
    return device;
  }

  @Override
  public boolean offer(byte[] bytes) {
    if (fd == NONE) return false;
    int ready = LibC.ready(fd);
    if ((ready & LibC.HUNG_UP) != 0) {
      if (opened) renew();
      return false;
    }
    opened = true;
    if ((ready & LibC.WRITABLE) == 0) return false;
    return LibC.write(fd, bytes) == bytes.length;
  }

  @Override
  public byte[] taken() {
    if (fd == NONE || (LibC.ready(fd) & LibC.READABLE) == 0) return new byte[0];
    return Arrays.copyOf(incoming, LibC.read(fd, incoming));
  }

  /** Whether a program has it open. */
  public boolean isOpened() {
    return fd != NONE && (LibC.ready(fd) & LibC.HUNG_UP) == 0;
  }

  /**
   * The settings of the program that has it open. Seven data bits and parity cannot be set on a pseudo-terminal, but show in what goes
   * with them: the top bit is stripped, parity is checked.
   */
  @Override
  public Optional<LineSettings> heardAs() {
    if (!isOpened()) return Optional.empty();
    return LibC.terminal(fd)
        .filter(terminal -> terminal.baud() >= 50)
        .map(PseudoTerminal::settings);
  }

  private static LineSettings settings(Terminal terminal) {
    boolean odd = (terminal.control() & PARODD) != 0;
    boolean fixed = (terminal.control() & CMSPAR) != 0;
    Parity parity = Parity.NONE;
    if ((terminal.input() & INPCK) != 0)
      parity = fixed ? odd ? Parity.MARK : Parity.SPACE : odd ? Parity.ODD : Parity.EVEN;
    return new LineSettings(
        terminal.baud(),
        (terminal.input() & ISTRIP) != 0 ? 7 : 8,
        parity,
        (terminal.control() & CSTOPB) != 0 ? 2 : 1);
  }

  @Override
  public void unplug() {
    if (fd == NONE) return;
    removeLink();
    LibC.close(fd);
    fd = NONE;
    device = "";
    opened = false;
  }

  @Override
  public void replug() {
    if (fd != NONE) return;
    if (Files.exists(link, LinkOption.NOFOLLOW_LINKS))
      throw new UncheckedIOException(
          new IOException(
              link
                  + " is there already: choose another path for the virtual scale, or remove it if it is left over"));
    int opened = LibC.openPseudoTerminal();
    LibC.makeRaw(opened);
    device = LibC.farEnd(opened);
    // Until its far end was open once, a pseudo-terminal does not say that nobody listens.
    LibC.close(LibC.open(device));
    try {
      Files.createSymbolicLink(link, Path.of(device));
    } catch (IOException e) {
      LibC.close(opened);
      throw new UncheckedIOException("cannot make the link " + link + " to the virtual scale", e);
    }
    fd = opened;
  }

  /**
   * Makes the device anew once a program has let go of it. A program that was killed leaves a pseudo-terminal marked as its own, which
   * no other may then open; a serial port forgets such a mark when it is closed.
   */
  private void renew() {
    unplug();
    replug();
  }

  @Override
  public void close() {
    unplug();
  }

  /** Removes the link if it is still ours. */
  private void removeLink() {
    try {
      if (Files.isSymbolicLink(link) && Files.readSymbolicLink(link).equals(Path.of(device)))
        Files.delete(link);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot remove the link " + link + " of the virtual scale", e);
    }
  }
}
