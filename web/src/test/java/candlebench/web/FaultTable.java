package candlebench.web;

import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.simulator.CellTraits;
import candlebench.simulator.Outlet;
import candlebench.simulator.Pan;
import candlebench.simulator.PseudoTerminal;
import candlebench.simulator.RunningBench;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.TcpOutlet;
import candlebench.simulator.VirtualScale;
import candlebench.web.FaultyWire.Fault;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What happens to wires and processes on a real day, done to the packaged program in real time, as a table: the word that the page has for
 * it, how long until it was said and until the scale was live again with the right weight, and whether the record lost or gained anything.
 *
 * <p>{@code mvn -q -pl web -am package -DskipTests}, then in {@code web}, as root on Linux:
 * {@code java -cp target/test-classes:target/classes:target/lib/* candlebench.web.FaultTable 200}.
 */
final class FaultTable {
  private static final Pattern ADDRESS = Pattern.compile("http://[^ :]+:(\\d+)/");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Mass POT = Mass.ofGrams("412.3");
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(60);
  private static final long LOOK_NANOS = TimeUnit.MILLISECONDS.toNanos(10);
  private static final String USER = "nobody";

  private final Path folder;

  private FaultTable(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) throws Exception {
    int times = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    Path folder = Files.createTempDirectory("faults");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxrwxrwx"));
    FaultTable table = new FaultTable(folder);
    System.out.println(
        "| what was done | times | the page says | said after s, median (worst) | live again after s, median (worst) | record |");
    System.out.println("| --- | --- | --- | --- | --- | --- |");
    table.unplugged(times);
    table.wire("half-open TCP: the server stalls for 8 s", Fault.STALLED, true, "silent", 8);
    table.wire("one byte a second for 20 s", Fault.TRICKLING, false, "", 20);
    table.wire("rubbish as fast as the line takes it, 10 s", Fault.RUBBISH, false, "garbled", 10);
    table.stopped();
    table.held();
    table.denied();
    System.exit(0);
  }

  /** The device is made anew each time, so its node has another name; the link to it stays, as the by-id link of an adapter does. */
  private void unplugged(int times) throws Exception {
    try (Run run = new Run("unplugged", false)) {
      Times said = new Times();
      Times live = new Times();
      for (int i = 0; i < times; i++) {
        run.bench.unplug(0);
        said.add(run.until(view -> link(view).equals("lost")));
        run.bench.replug(0);
        live.add(run.until(run::isRight));
      }
      row(
          "unplugged, back as another device behind the same link",
          times,
          "unplugged",
          said,
          live,
          run);
    }
  }

  private void wire(String what, Fault fault, boolean tcp, String word, int seconds)
      throws Exception {
    try (Run run = new Run(fault.name(), tcp)) {
      Times said = new Times();
      Times live = new Times();
      long before = cpuTicks(run.process);
      long start = System.nanoTime();
      run.bench.act(() -> run.wire.is(fault));
      String words = word;
      if (word.isEmpty()) words = run.wordsFor(seconds);
      else said.add(run.until(view -> link(view).equals(word)));
      run.stay(seconds - (System.nanoTime() - start) / 1e9);
      double share = (cpuTicks(run.process) - before) / 100.0 / ((System.nanoTime() - start) / 1e9);
      run.bench.act(() -> run.wire.is(Fault.NONE));
      live.add(run.until(run::isRight));
      row(
          String.format("%s (%.0f %% of a core meanwhile)", what, share * 100),
          1,
          words,
          said,
          live,
          run);
    }
  }

  private void stopped() throws Exception {
    try (Run run = new Run("stopped", false)) {
      signal(run.process, "STOP");
      run.bench.act(() -> run.pan.add(Mass.ofGrams("30")));
      run.stay(5);
      signal(run.process, "CONT");
      Times live = new Times();
      live.add(run.until(run::isRight));
      row(
          "stopped for 5 s (SIGSTOP) while 30 g went in, then gone on",
          1,
          "nothing: it was not there",
          new Times(),
          live,
          run);
    }
  }

  private void held() throws Exception {
    try (Run first = new Run("held", false)) {
      Path data = folder.resolve("held-second");
      Process second = first.serve(data, List.of());
      int port = Run.portSaid(second);
      Times said = new Times();
      said.add(Run.until(port, view -> link(view).equals("held")));
      first.process.destroyForcibly().waitFor();
      Times live = new Times();
      live.add(Run.until(port, first::isRight));
      second.destroyForcibly().waitFor();
      row(
          "another program has the port; then it ends",
          1,
          "held by another program",
          said,
          live,
          first);
    }
  }

  private void denied() throws Exception {
    try (Run run = new Run("denied", false)) {
      Path device = Path.of(run.terminal.device());
      run.process.destroyForcibly().waitFor();
      run.stay(1);
      device = Path.of(run.bench.ask(run.terminal::device));
      Path data = Files.createDirectory(folder.resolve("denied-second"));
      Files.setPosixFilePermissions(data, PosixFilePermissions.fromString("rwxrwxrwx"));
      Files.setPosixFilePermissions(device, PosixFilePermissions.fromString("rw-------"));
      Process second = run.serve(data, List.of("setpriv", "--reuid=" + USER, "--clear-groups"));
      int port = Run.portSaid(second);
      Times said = new Times();
      said.add(Run.until(port, view -> link(view).equals("denied")));
      String with = RawHttp.get(port, "/api/view")
          .body()
          .replaceAll(".*\"with\":(\\{[^}]*group[^}]*}).*", "$1");
      Files.setPosixFilePermissions(device, PosixFilePermissions.fromString("rw-rw-rw-"));
      Times live = new Times();
      live.add(Run.until(port, run::isRight));
      second.destroyForcibly().waitFor();
      row(
          "an ordinary user may not open it (" + group(with) + "); then may",
          1,
          "not permitted, and which group to join",
          said,
          live,
          run);
    }
  }

  private static String group(String with) {
    Matcher group = Pattern.compile("\"group\":\"([^\"]+)\"").matcher(with);
    if (!group.find()) throw new AssertionError("no group is named in " + with);
    return "names the group " + group.group(1);
  }

  private void row(String what, int times, String word, Times said, Times live, Run run)
      throws Exception {
    System.out.printf(
        "| %s | %d | %s | %s | %s | %s |%n", what, times, word, said, live, run.record());
  }

  private static String link(JsonNode view) {
    return view.at("/scales/0/link").asText();
  }

  private static long cpuTicks(Process process) throws IOException {
    String stat = Files.readString(Path.of("/proc", Long.toString(process.pid()), "stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return Long.parseLong(fields[11]) + Long.parseLong(fields[12]);
  }

  private static void signal(Process process, String name) throws Exception {
    new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).start().waitFor();
  }

  /** Seconds that something took, each time. */
  private static final class Times {
    private final List<Double> seconds = new ArrayList<>();

    void add(double took) {
      seconds.add(took);
    }

    @Override
    public String toString() {
      if (seconds.isEmpty()) return "–";
      List<Double> sorted = new ArrayList<>(seconds);
      Collections.sort(sorted);
      return String.format(
          "%.2f (%.2f)", sorted.get(sorted.size() / 2), sorted.get(sorted.size() - 1));
    }
  }

  /** A virtual scale with a pot on it and the program beside it, in the midst of a weighing. */
  private final class Run implements AutoCloseable {
    private final Path data;
    private final Pan pan = new Pan();
    private final PseudoTerminal terminal;
    private final Outlet outlet;
    private final FaultyWire wire;
    private final RunningBench bench;
    private final Process process;
    private final int port;
    private final String before;

    Run(String name, boolean tcp) throws Exception {
      data = folder.resolve(name);
      terminal = new PseudoTerminal(folder.resolve(name + "-scale"));
      outlet = tcp ? new TcpOutlet(0) : terminal;
      wire = new FaultyWire(outlet);
      ScaleFormat format = ScaleFormats.of("and");
      ScaleTraits traits = ScaleTraits.benchThreeKilograms()
          .with(new CellTraits(0.01, 0.2, 1.8, 0, 0, 0))
          .with(format.lines().get(0));
      VirtualScale scale =
          new VirtualScale(traits, ScaleQuirks.none(), format, format.layouts().get(0), pan, 3);
      bench =
          RunningBench.start(List.of(new RunningBench.Station(scale, wire)), nanos -> wire.flood());
      process = serve(data, List.of());
      port = portSaid(process);
      until(view -> link(view).equals("live"));
      String start =
          "{\"id\":\"b1\",\"command\":\"start-batch\",\"recipe\":\"harbour-lane-oil\",\"vessels\":\"1\"}";
      int status = RawHttp.post(port, "/api/say", start, "Content-Type: application/json")
          .status();
      if (status != 200) throw new AssertionError("the batch did not start: " + status);
      bench.act(() -> pan.putOn("pot", POT));
      until(view -> export().contains("\"kind\":\"pot-tared\""));
      before = export();
    }

    Process serve(Path into, List<String> as) throws IOException {
      List<String> command = new ArrayList<>(as);
      String where = outlet == terminal ? "serial:" + outlet.address() : "tcp:" + outlet.address();
      command.addAll(Program.command(
              "serve",
              "--port",
              "0",
              "--data",
              into.toString(),
              "--scale",
              where
                  + (outlet == terminal
                      ? "?format=and&line=" + ScaleFormats.of("and").lines().get(0)
                      : "?format=and"))
          .command());
      return new ProcessBuilder(command)
          .redirectError(ProcessBuilder.Redirect.INHERIT)
          .start();
    }

    static int portSaid(Process process) {
      BufferedReader out = new BufferedReader(
          new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
      return out.lines()
          .map(ADDRESS::matcher)
          .filter(Matcher::find)
          .mapToInt(address -> Integer.parseInt(address.group(1)))
          .findFirst()
          .orElseThrow();
    }

    double until(Predicate<JsonNode> so) throws IOException {
      return until(port, so);
    }

    /** How long it took in seconds until the view was so. */
    static double until(int port, Predicate<JsonNode> so) throws IOException {
      long start = System.nanoTime();
      while (true) {
        String body = RawHttp.get(port, "/api/view").body();
        if (so.test(JSON.readTree(body))) return (System.nanoTime() - start) / 1e9;
        if (System.nanoTime() - start > PATIENCE_NANOS)
          throw new AssertionError("not so after a minute: " + body);
        LockSupport.parkNanos(LOOK_NANOS);
      }
    }

    /** The number that the scale shows; where there is none, one that nothing weighs. */
    private static String shown(JsonNode view) {
      String shown = view.at("/scales/0/shown").asText();
      return shown.isEmpty() ? "-9999" : shown;
    }

    /** Whether the scale is live, and shows what is truly there. */
    boolean isRight(JsonNode view) {
      return link(view).equals("live")
          && view.at("/scales/0/ageMillis").asLong() < 1_000
          && Mass.ofGrams(shown(view))
                  .minus(bench.ask(pan::truth))
                  .abs()
                  .compareTo(Mass.ofGrams("0.1"))
              <= 0;
    }

    /** What the page says of the scale over some seconds. */
    String wordsFor(int seconds) throws IOException {
      List<String> words = new ArrayList<>();
      long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
      while (System.nanoTime() < end) {
        JsonNode view = JSON.readTree(RawHttp.get(port, "/api/view").body());
        String word = link(view) + (view.at("/scales/0/ageMillis").asLong() > 1_000 ? ", old" : "");
        if (words.isEmpty() || !words.get(words.size() - 1).equals(word)) words.add(word);
        LockSupport.parkNanos(LOOK_NANOS);
      }
      return String.join(" → ", words);
    }

    void stay(double seconds) {
      long end = System.nanoTime() + (long) (seconds * 1e9);
      while (System.nanoTime() < end) LockSupport.parkNanos(LOOK_NANOS);
    }

    String export() {
      try {
        return Program.run("export", "--data", data.toString()).out();
      } catch (IOException | InterruptedException failed) {
        throw new AssertionError(failed);
      }
    }

    /** What became of the record: what it held is still there, no weight was taken, and its chain is whole. */
    String record() throws Exception {
      String after = export();
      if (!after.startsWith(before.substring(0, before.lastIndexOf("{\"kind\":\"head\""))))
        return "LOST: the beginning is another one";
      if (after.contains("\"kind\":\"weight-accepted\"")) return "WRONG: a weight was taken";
      Program.Outcome audit = Program.run("audit", "--data", data.toString());
      return audit.code() == 0 ? "whole, no weight taken" : "DAMAGED: " + audit.out();
    }

    @Override
    public void close() {
      process.destroyForcibly();
      bench.close();
    }
  }
}
