package candlebench.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** The computer on which something was measured, in one line. */
final class Machine {

  private Machine() {}

  static String words() throws IOException {
    return processor() + ", " + Runtime.getRuntime().availableProcessors() + " cores, "
        + System.getProperty("os.name") + " " + System.getProperty("os.version") + ", Java "
        + Runtime.version() + ", load before "
        + Files.readString(Path.of("/proc/loadavg")).split(" ")[0];
  }

  private static String processor() throws IOException {
    try (Stream<String> lines = Files.lines(Path.of("/proc/cpuinfo"))) {
      return lines
          .filter(line -> line.startsWith("model name"))
          .map(line -> line.replaceFirst(".*: ", ""))
          .findFirst()
          .orElse(System.getProperty("os.arch"));
    }
  }
}
