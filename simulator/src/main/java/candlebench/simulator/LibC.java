package candlebench.simulator;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** The few calls of the C library that a pseudo-terminal needs. Constants are those of Linux on x86-64 and ARM64. */
final class LibC {
  static final int READABLE = 0x01;
  static final int WRITABLE = 0x04;
  static final int HUNG_UP = 0x10;

  private static final int O_RDWR = 2;
  private static final int O_NOCTTY = 0x100;
  private static final int O_CLOEXEC = 0x80000;
  private static final int EIO = 5;
  private static final int B9600 = 13;
  private static final int TERMIOS_ROOM = 128;
  private static final int PATH_ROOM = 128;
  private static final NativeLong TCGETS2 = new NativeLong(0x802C542AL);

  private interface Calls extends Library {
    Calls C = Native.load("c", Calls.class);

    int posix_openpt(int flags) throws LastErrorException;

    int grantpt(int fd) throws LastErrorException;

    int unlockpt(int fd) throws LastErrorException;

    int ptsname_r(int fd, byte[] name, NativeLong room) throws LastErrorException;

    int open(String path, int flags) throws LastErrorException;

    int close(int fd) throws LastErrorException;

    int poll(Pointer each, NativeLong count, int millis) throws LastErrorException;

    NativeLong read(int fd, byte[] into, NativeLong room) throws LastErrorException;

    NativeLong write(int fd, byte[] from, NativeLong length) throws LastErrorException;

    int tcgetattr(int fd, Pointer termios) throws LastErrorException;

    int tcsetattr(int fd, int when, Pointer termios) throws LastErrorException;

    void cfmakeraw(Pointer termios);

    int cfsetspeed(Pointer termios, int speed) throws LastErrorException;

    int ioctl(int fd, NativeLong request, Object... arguments) throws LastErrorException;
  }

  private LibC() {}

  /** Opens a new pseudo-terminal, whose far end is unlocked, and gives its descriptor. */
  static int openPseudoTerminal() {
    int fd = Calls.C.posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC);
    Calls.C.grantpt(fd);
    Calls.C.unlockpt(fd);
    return fd;
  }

  static String farEnd(int fd) {
    byte[] name = new byte[PATH_ROOM];
    Calls.C.ptsname_r(fd, name, new NativeLong(name.length));
    return Native.toString(name, StandardCharsets.US_ASCII);
  }

  /**
   * As a serial port is before a program sets it: 9600 baud; and raw: no echo, no change of any byte, as otherwise what is sent before a
   * reader opens comes back to the sender.
   */
  static void makeRaw(int fd) {
    try (Memory termios = new Memory(TERMIOS_ROOM)) {
      Calls.C.tcgetattr(fd, termios);
      Calls.C.cfmakeraw(termios);
      Calls.C.cfsetspeed(termios, B9600);
      Calls.C.tcsetattr(fd, 0, termios);
    }
  }

  static int open(String path) {
    return Calls.C.open(path, O_RDWR | O_NOCTTY | O_CLOEXEC);
  }

  static void close(int fd) {
    Calls.C.close(fd);
  }

  /** What a descriptor is ready for now; never waits. */
  static int ready(int fd) {
    try (Memory each = new Memory(8)) {
      each.setInt(0, fd);
      each.setShort(4, (short) (READABLE | WRITABLE));
      each.setShort(6, (short) 0);
      Calls.C.poll(each, new NativeLong(1), 0);
      return each.getShort(6) & 0xFFFF;
    }
  }

  /** How many bytes were read, or zero where the far end is closed. */
  static int read(int fd, byte[] into) {
    try {
      return Math.max(0, Calls.C.read(fd, into, new NativeLong(into.length)).intValue());
    } catch (LastErrorException e) {
      if (e.getErrorCode() == EIO) return 0;
      throw e;
    }
  }

  /** How many bytes were written, or zero where the far end is closed. */
  static int write(int fd, byte[] from) {
    try {
      return Calls.C.write(fd, from, new NativeLong(from.length)).intValue();
    } catch (LastErrorException e) {
      if (e.getErrorCode() == EIO) return 0;
      throw e;
    }
  }

  /** The {@code termios2} of a terminal: four words of flags, 20 bytes, then both speeds in plain numbers. */
  static Optional<Terminal> terminal(int fd) {
    try (Memory termios = new Memory(TERMIOS_ROOM)) {
      Calls.C.ioctl(fd, TCGETS2, termios);
      return Optional.of(new Terminal(termios.getInt(0), termios.getInt(8), termios.getInt(40)));
    } catch (LastErrorException e) {
      return Optional.empty();
    }
  }

  /** A terminal's flags of input and control, and its speed. */
  record Terminal(int input, int control, int baud) {}
}
