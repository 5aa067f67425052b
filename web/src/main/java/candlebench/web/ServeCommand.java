package candlebench.web;

import candlebench.station.StationConfig;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.journal.Purpose;
import candlebench.station.link.NativeLibraries;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScaleUri;
import candlebench.web.Main.WrongUse;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Runs the bench with real scales: those named on the command line; or, where none is, those that its page was told to use, and then the
 * page can find more. Each time it is told of one, the bench is opened anew with it.
 */
@Command(
    name = "candlebench serve",
    description = "Runs the bench with the scales named, and serves its page.")
final class ServeCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Option(
      names = "--scale",
      paramLabel = "URI",
      description =
          "a scale: serial:DEVICE?format=ID or tcp:HOST:PORT?format=ID; may be given several times. Without one, those in scales.txt of the data folder; the page finds them")
  private List<String> scales = List.of();

  @Option(
      names = "--recipe",
      paramLabel = "FILE",
      description =
          "a plan file whose recipe and pots the bench is to know; may be given several times. Without one, every .json in the folder recipes of the data folder; candlebench plan --example prints one to start from")
  private List<Path> recipes = List.of();

  @Mixin
  private BenchOptions bench;

  @Mixin
  private Listening listening;

  /** What is open now, for whoever ends the program. */
  private final AtomicReference<Runnable> closing = new AtomicReference<>(() -> {});

  Listening listening() {
    return listening;
  }

  @Override
  public Integer call() throws WrongUse {
    Runtime.getRuntime().addShutdownHook(new Thread(() -> closing.get().run(), "closing"));
    for (boolean first = true; !Thread.currentThread().isInterrupted(); first = false) {
      CountDownLatch again = new CountDownLatch(1);
      try (ScaleSearch search = new ScaleSearch(new Kept(again))) {
        Runnable close = open(search, first);
        Listening.stayUntil(again);
        close.run();
      }
    }
    return Main.DONE;
  }

  /** Opens the bench, or the way to a scale; says where its page is the first time, and gives what closes it. */
  private Runnable open(ScaleSearch search, boolean first) throws WrongUse {
    List<ScaleSettings> settings = settings();
    Runnable close;
    WebServer server;
    if (settings.isEmpty()) {
      server = withoutScale(search);
      close = server::close;
    } else {
      OpenBench opened = new OpenBench(
          config(settings),
          listening.data(),
          listening,
          scales.isEmpty() ? Optional.of(search) : Optional.empty(),
          station -> Optional.empty());
      server = opened.server();
      close = opened::close;
    }
    closing.set(close);
    listening.keep(server.port());
    if (first) Listening.announce("Candlebench", server);
    return close;
  }

  private List<ScaleSettings> settings() throws WrongUse {
    try {
      if (scales.isEmpty()) return saved().all();
      List<ScaleSettings> settings = new ArrayList<>();
      Set<String> ports = new HashSet<>();
      for (String scale : scales) {
        settings.add(ScaleUri.of(scale));
        if (!ports.add(SavedScales.place(scale)))
          throw new WrongUse("'" + SavedScales.place(scale)
              + "' is named twice, and one port speaks to one scale: leave one of them out");
      }
      return settings;
    } catch (IllegalArgumentException malformed) {
      throw new WrongUse(malformed.getMessage());
    } catch (IOException unreadable) {
      throw unusable(unreadable);
    }
  }

  private StationConfig config(List<ScaleSettings> settings) throws WrongUse {
    Products products = Products.of(recipes, listening.data());
    try {
      return new StationConfig(
          Purpose.RECORD,
          settings,
          new BenchSetup(
              StationConfig.named(settings),
              products.pots(),
              products.all(),
              bench.timing(),
              ZoneId.systemDefault()),
          bench.unit());
    } catch (IllegalArgumentException malformed) {
      throw new WrongUse(malformed.getMessage());
    }
  }

  private WebServer withoutScale(ScaleSearch search) throws WrongUse {
    Site site = new Site(
        new BenchWithoutScale(bench.unit()),
        System::nanoTime,
        List.of(),
        Optional.of(search),
        Optional.empty(),
        Optional.empty());
    try {
      NativeLibraries.unpackInto(listening.data().resolve("native"));
      return listening.serve(site);
    } catch (IOException unwritable) {
      throw unusable(unwritable);
    } catch (JavalinBindException taken) {
      throw listening.taken();
    }
  }

  private SavedScales saved() {
    return new SavedScales(listening.data());
  }

  private WrongUse unusable(IOException why) {
    return new WrongUse("cannot use '" + listening.data() + "' as the data folder: "
        + why.getMessage() + ". Name another with --data");
  }

  /** Keeps the scale that a page chose in the data folder, and has the bench opened anew. */
  private final class Kept implements ScaleSearch.Chosen {
    private final CountDownLatch again;

    Kept(CountDownLatch again) {
      this.again = again;
    }

    @Override
    public void keep(String uri) throws IOException {
      saved().add(uri);
    }

    @Override
    public void openAnew() {
      again.countDown();
    }
  }
}
