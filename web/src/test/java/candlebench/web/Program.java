package candlebench.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/** The packaged program as a process of its own. */
final class Program {
  private static final String JAVA =
      Path.of(System.getProperty("java.home"), "bin", "java").toString();

  /** Tests run in the module's folder, programs among them from the root. */
  private static final String JAR =
      Files.isDirectory(Path.of("web")) ? "web/target/candlebench.jar" : "target/candlebench.jar";

  private static final int PATIENCE_SECONDS = 60;

  private Program() {}

  /** What a run came to. */
  record Outcome(int code, String out, String err) {}

  static ProcessBuilder command(String... args) {
    List<String> command = new ArrayList<>(List.of(JAVA, "-jar", JAR));
    command.addAll(List.of(args));
    return new ProcessBuilder(command);
  }

  /** Runs it to its end, with these bytes as its standard input. */
  static Outcome run(byte[] in, String... args) throws IOException, InterruptedException {
    Process process = command(args).start();
    CompletableFuture<String> out = text(process.getInputStream());
    CompletableFuture<String> err = text(process.getErrorStream());
    try (var stdin = process.getOutputStream()) {
      stdin.write(in);
    } catch (IOException leftUnread) {
      // A program that refused its arguments reads nothing; its answer is what counts.
    }
    if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("still running: " + String.join(" ", args));
    }
    return new Outcome(process.exitValue(), out.join(), err.join());
  }

  static Outcome run(String... args) throws IOException, InterruptedException {
    return run(new byte[0], args);
  }

  private static CompletableFuture<String> text(InputStream stream) {
    return CompletableFuture.supplyAsync(() -> {
      try {
        return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
      } catch (IOException cut) {
        throw new UncheckedIOException(cut);
      }
    });
  }
}
