package candlebench.web;

import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.simulator.CellTraits;
import candlebench.simulator.Hands;
import candlebench.simulator.Outlet;
import candlebench.simulator.Pan;
import candlebench.simulator.Perceived;
import candlebench.simulator.Perceived.Told;
import candlebench.simulator.PseudoTerminal;
import candlebench.simulator.RunningBench;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.VirtualScale;
import com.microsoft.playwright.Page;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The packaged program as a process of its own, a virtual scale behind a real device node, and a maker whose hands know only what the
 * eyes read off the page.
 */
final class RealBench implements AutoCloseable {
  private static final Pattern ADDRESS = Pattern.compile("http://[^ :]+:(\\d+)/");
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(180);

  private final Path data;
  private final String format;
  private final Outlet outlet;
  private final Pan pan = new Pan();
  private final RunningBench bench;
  private volatile Perceived perceived = Perceived.told(Told.WAIT);
  private Process process;
  private int port;

  RealBench(Path folder, String format, double sendsPerSecond, Hands hands) {
    this(
        folder.resolve("data"),
        new PseudoTerminal(folder.resolve("scale")),
        format,
        sendsPerSecond,
        hands);
  }

  RealBench(Path data, Outlet outlet, String format, double sendsPerSecond, Hands hands) {
    this.data = data;
    this.format = format;
    this.outlet = outlet;
    ScaleFormat wire = ScaleFormats.of(format);
    LineSettings line = wire.lines().get(0);
    ScaleTraits traits = ScaleTraits.benchThreeKilograms()
        .with(new CellTraits(0.03, 0.5, 0, 0, 0, 0))
        .with(line)
        .withSendsPerSecond(sendsPerSecond);
    VirtualScale scale =
        new VirtualScale(traits, ScaleQuirks.none(), wire, wire.layouts().get(0), pan, 7);
    bench = RunningBench.start(
        List.of(new RunningBench.Station(scale, outlet)),
        nanos -> hands.advanceTo(nanos, perceived, pan));
  }

  /** Starts the program, or starts it again, and waits until its page answers. */
  void startProgram() throws IOException {
    String line = ScaleFormats.of(format).lines().get(0).toString();
    List<String> command = new ArrayList<>(Program.command(
            "serve",
            "--port",
            "0",
            "--data",
            data.toString(),
            "--scale",
            "serial:" + outlet.address() + "?format=" + format + "&line=" + line)
        .command());
    process = new ProcessBuilder(command)
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    port = CompletableFuture.supplyAsync(() -> portSaid(out))
        .orTimeout(PATIENCE_NANOS, TimeUnit.NANOSECONDS)
        .join();
  }

  /** Takes a program that runs already, served at this port, for its own. */
  void joins(int served) {
    port = served;
  }

  private static int portSaid(BufferedReader out) {
    return out.lines()
        .map(ADDRESS::matcher)
        .filter(Matcher::find)
        .mapToInt(address -> Integer.parseInt(address.group(1)))
        .findFirst()
        .orElseThrow(
            () -> new AssertionError("the program ended without saying where its page is"));
  }

  /** Ends the program as a power cut would. */
  void killProgram() throws InterruptedException {
    perceived = Perceived.told(Told.WAIT);
    process.destroyForcibly().waitFor();
  }

  int port() {
    return port;
  }

  Process process() {
    return process;
  }

  Path data() {
    return data;
  }

  RunningBench bench() {
    return bench;
  }

  /** What truly stands on the pan. */
  Pan pan() {
    return pan;
  }

  /** Lets the maker look at the page over and over until something is so; fails after a minute without. */
  void until(PageEyes eyes, BooleanSupplier so) {
    until(eyes, so, PATIENCE_NANOS);
  }

  void until(PageEyes eyes, BooleanSupplier so, long patienceNanos) {
    long deadline = System.nanoTime() + patienceNanos;
    while (!so.getAsBoolean()) {
      perceived = eyes.look();
      if (System.nanoTime() > deadline)
        throw new AssertionError("still not so; the page says '" + eyes.heading() + "', '"
            + eyes.words("Weight") + "', '" + eyes.words("Signal") + "'; on the pan are "
            + bench.ask(pan::truth));
    }
    perceived = eyes.look();
  }

  /** Starts a batch on the page as a person would. */
  static void start(PageEyes eyes, String recipe, int vessels) {
    var form = eyes.region("Start a batch");
    form.getByLabel("Recipe").selectOption(recipe);
    form.getByLabel("Vessels").fill(Integer.toString(vessels));
    form.getByRole(
            com.microsoft.playwright.options.AriaRole.BUTTON,
            new com.microsoft.playwright.Locator.GetByRoleOptions().setName("Start"))
        .click();
  }

  PageEyes open(PageBrowser browser) {
    Page page = browser.openProgram(port, 1280, 800);
    return new PageEyes(page);
  }

  @Override
  public void close() {
    if (process != null) process.destroyForcibly();
    bench.close();
  }
}
