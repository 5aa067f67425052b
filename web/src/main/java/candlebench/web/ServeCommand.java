package candlebench.web;

import candlebench.station.StationConfig;
import candlebench.station.batch.HarbourLane;
import candlebench.station.journal.Purpose;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScaleUri;
import candlebench.web.Main.WrongUse;
import io.javalin.util.JavalinBindException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Runs the bench with real scales. */
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
          "a scale: serial:DEVICE?format=ID or tcp:HOST:PORT?format=ID; may be given several times. Without one the page leads to a scale")
  private List<String> scales = List.of();

  @Mixin
  private Listening listening;

  @Override
  public Integer call() throws WrongUse {
    if (scales.isEmpty()) return withoutScale();
    try (OpenBench bench =
        new OpenBench(config(), listening.data(), listening, station -> Optional.empty())) {
      Listening.announceAndStay("Candlebench", bench.server(), bench::close);
    }
    return Main.DONE;
  }

  private StationConfig config() throws WrongUse {
    try {
      List<ScaleSettings> settings = new ArrayList<>();
      for (String scale : scales) settings.add(ScaleUri.of(scale));
      return StationConfig.of(Purpose.RECORD, settings, HarbourLane.all(), ZoneId.systemDefault());
    } catch (IllegalArgumentException malformed) {
      throw new WrongUse(malformed.getMessage());
    }
  }

  private int withoutScale() throws WrongUse {
    Site site = new Site(new BenchWithoutScale(), System::nanoTime, List.of(), Optional.empty());
    try (WebServer server = listening.serve(site)) {
      Listening.announceAndStay("Candlebench", server, server::close);
    } catch (JavalinBindException taken) {
      throw listening.taken();
    }
    return Main.DONE;
  }
}
