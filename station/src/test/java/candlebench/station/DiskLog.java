package candlebench.station;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** All that a process did to the files below a folder, in order, as a small library preloaded into it wrote it down. */
final class DiskLog {
  private static final String SOURCE = "disk-log.c";

  /** What was done. {@link #TOLD} is a piece of standard output: what was shown. */
  enum Kind {
    CREATED('C'),
    WRITTEN('W'),
    CUT('T'),
    SYNCED('S'),
    REMOVED('U'),
    TOLD('M');

    private final char mark;

    Kind(char mark) {
      this.mark = mark;
    }
  }

  /** One step: at an offset of a file, with the bytes written or told; or a file cut to a length. */
  record Step(Kind kind, String file, long offset, long length, byte[] bytes) {}

  private DiskLog() {}

  /** Builds the library; none where there is no C compiler or the system is another. */
  static Optional<Path> library(Path folder) throws IOException, InterruptedException {
    if (!System.getProperty("os.name").equals("Linux")) return Optional.empty();
    Path source = folder.resolve(SOURCE);
    try (var in = DiskLog.class.getResourceAsStream(SOURCE)) {
      Files.copy(in, source);
    }
    Path library = folder.resolve("disk-log.so");
    try {
      Process compiler = new ProcessBuilder(
              "cc",
              "-shared",
              "-fPIC",
              "-O1",
              "-o",
              library.toString(),
              source.toString(),
              "-ldl",
              "-lpthread")
          .inheritIO()
          .start();
      if (!compiler.waitFor(60, TimeUnit.SECONDS) || compiler.exitValue() != 0)
        throw new IOException("the compiler refused " + source);
      return Optional.of(library);
    } catch (IOException none) {
      return Optional.empty();
    }
  }

  /** Has a process followed by the library from its start. */
  static void follow(ProcessBuilder process, Path library, Path root, Path log) {
    process.environment().put("LD_PRELOAD", library.toString());
    process.environment().put("DISK_LOG_ROOT", root.toString());
    process.environment().put("DISK_LOG_FILE", log.toString());
  }

  static List<Step> read(Path log) throws IOException {
    ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(log)).order(ByteOrder.nativeOrder());
    Map<Long, String> names = new HashMap<>();
    List<Step> steps = new ArrayList<>();
    while (in.hasRemaining()) {
      char mark = (char) in.getLong();
      long file = in.getLong();
      long offset = in.getLong();
      long length = in.getLong();
      byte[] bytes = new byte[(int) in.getLong()];
      in.get(bytes);
      if (mark == 'N') names.put(file, new String(bytes, StandardCharsets.UTF_8));
      else steps.add(new Step(kind(mark), names.getOrDefault(file, ""), offset, length, bytes));
    }
    return List.copyOf(steps);
  }

  private static Kind kind(char mark) {
    for (Kind kind : Kind.values()) if (kind.mark == mark) return kind;
    throw new AssertionError("a step that no bench should take: " + mark);
  }
}
