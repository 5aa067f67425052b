package candlebench.web;

import candlebench.simulator.PseudoTerminal;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The packaged program with scales on pseudo-terminals, and what the system says it takes. Linux only. */
final class MeasuredProgram implements AutoCloseable {
  private static final Pattern PORT = Pattern.compile("http://127\\.0\\.0\\.1:(\\d+)/");
  private static final long TICKS_A_SECOND = 100;

  private final List<PseudoTerminal> scales = new ArrayList<>();
  private final Process process;
  private final long begun = System.nanoTime();
  private final int port;

  MeasuredProgram(Path folder, int count) throws IOException {
    List<String> words = new ArrayList<>(
        List.of("serve", "--port", "0", "--data", folder.resolve("data").toString()));
    for (int i = 0; i < count; i++) {
      scales.add(new PseudoTerminal(folder.resolve("scale" + i)));
      words.addAll(
          List.of("--scale", "serial:" + scales.get(i).address() + "?format=and&line=9600-8N1"));
    }
    process = Program.command(words.toArray(String[]::new))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
    BufferedReader out = process.inputReader();
    Matcher address = PORT.matcher(String.valueOf(out.readLine()));
    if (!address.find()) throw new IOException("the program did not say where its page is");
    port = Integer.parseInt(address.group(1));
  }

  int port() {
    return port;
  }

  long begun() {
    return begun;
  }

  /** Waits until the program has opened every scale. */
  void awaitScales() {
    while (scales.stream().anyMatch(scale -> !scale.isOpened())) LockSupport.parkNanos(1_000_000);
  }

  /** Has a scale say a number, in hundredths of a gram. */
  void say(int scale, int hundredths) {
    String frame = String.format(Locale.ROOT, "ST,%+09.2f  g\r\n", hundredths / 100.0);
    scales.get(scale).offer(frame.getBytes(StandardCharsets.US_ASCII));
  }

  /** Processor time used so far, in seconds. */
  double processorSeconds() throws IOException {
    String stat = Files.readString(Path.of("/proc/" + process.pid() + "/stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return (Long.parseLong(fields[11]) + Long.parseLong(fields[12])) / (double) TICKS_A_SECOND;
  }

  /** Resident memory, in MB. */
  double residentMegabytes() throws IOException {
    return status("VmRSS") / 1024.0;
  }

  long threads() throws IOException {
    return status("Threads");
  }

  /** Open files, sockets and the like. */
  long handles() throws IOException {
    long count = 0;
    try (DirectoryStream<Path> open =
        Files.newDirectoryStream(Path.of("/proc/" + process.pid() + "/fd"))) {
      for (Path ignored : open) count++;
    }
    return count;
  }

  private long status(String key) throws IOException {
    for (String line : Files.readAllLines(Path.of("/proc/" + process.pid() + "/status")))
      if (line.startsWith(key + ":")) return Long.parseLong(line.replaceAll("[^0-9]", ""));
    throw new IOException("the system does not tell " + key);
  }

  @Override
  public void close() {
    process.destroy();
    process.onExit().join();
    scales.forEach(PseudoTerminal::close);
  }
}
