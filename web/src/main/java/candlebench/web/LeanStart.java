package candlebench.web;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Native;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Starts the program over, in the same process, with a Java machine set for one small bench that runs all day: {@code java -jar} alone
 * takes it for a server with gigabytes to fill. Linux only; elsewhere, or if anything is in the way, the program just goes on.
 *
 * <p>Whoever gives the Java machine settings of their own keeps them: only a bare {@code java -jar} is started over, and what it becomes
 * is not bare any more, so that it happens once.
 */
final class LeanStart {

  /** The simple collector and compiler: less memory at rest and a quicker start, for a program that is idle nearly all the time. */
  static final List<String> SETTINGS =
      List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xms16m", "-Xmx96m", "-Xss512k");

  private static final Path COMMAND = Path.of("/proc/self/cmdline");
  private static final Path PROGRAM = Path.of("/proc/self/exe");
  private static final Path OPEN_FILES = Path.of("/proc/self/fd");
  private static final int SET_DESCRIPTOR_FLAGS = 2;
  private static final int CLOSE_ON_EXEC = 1;
  private static final int LAST_STANDARD_STREAM = 2;

  /** The system's own library. */
  private interface C extends Library {
    int execv(String path, String[] arguments) throws LastErrorException;

    int fcntl(int descriptor, int command, int flags);
  }

  private LeanStart() {}

  /** Comes back only where the program was not started over. */
  static void once() {
    if (!Files.isReadable(COMMAND)) return;
    try {
      List<String> command = command();
      if (command.size() < 3 || !command.get(1).equals("-jar")) return;
      command.addAll(1, SETTINGS);
      String program = PROGRAM.toRealPath().toString();
      C system = Native.load("c", C.class);
      closeFilesOnTheWay(system);
      system.execv(program, command.toArray(String[]::new));
    } catch (IOException | LastErrorException | LinkageError inTheWay) {
      // The settings save memory and time and nothing else: without them all goes on as well.
    }
  }

  private static List<String> command() throws IOException {
    String text = Files.readString(COMMAND, StandardCharsets.UTF_8);
    return new ArrayList<>(List.of(text.substring(0, text.length() - 1).split("\0", -1)));
  }

  private static void closeFilesOnTheWay(C system) throws IOException {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(OPEN_FILES)) {
      for (Path file : files) {
        int descriptor = Integer.parseInt(file.getFileName().toString());
        if (descriptor > LAST_STANDARD_STREAM)
          system.fcntl(descriptor, SET_DESCRIPTOR_FLAGS, CLOSE_ON_EXEC);
      }
    }
  }
}
