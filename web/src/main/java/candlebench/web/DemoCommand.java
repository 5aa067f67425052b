package candlebench.web;

import candlebench.station.Bench;
import candlebench.station.StationConfig;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.journal.Purpose;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScaleUri;
import candlebench.web.Main.WrongUse;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Runs the practice bench: a scale that does not exist, the invented Harbour Lane Workshop, and a journal that is no record. */
@Command(
    name = "candlebench demo",
    description =
        "Runs the practice bench: a virtual scale, invented recipes, nothing recorded as real.")
final class DemoCommand implements Callable<Integer> {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "this help")
  private boolean help;

  @Option(
      names = "--play",
      description =
          "let a virtual maker do the work; without it you are the maker, with keys on the page")
  private boolean play;

  @Mixin
  private BenchOptions options;

  @Mixin
  private Listening listening;

  @Override
  public Integer call() throws WrongUse {
    try (PracticeBench practice = PracticeBench.start();
        OpenBench bench = new OpenBench(
            config(practice),
            listening.data(),
            listening,
            Optional.empty(),
            station -> hands(practice, station))) {
      Listening.announceAndStay("Candlebench practice bench", bench.server(), bench::close);
    }
    return Main.DONE;
  }

  private Optional<Site.Hands> hands(PracticeBench practice, Bench station) {
    if (!play) return Optional.of(new PracticeHands(practice, station));
    practice.play(new PracticeMaker(station, practice.pan()));
    return Optional.empty();
  }

  private StationConfig config(PracticeBench practice) throws WrongUse {
    List<ScaleSettings> scales = List.of(ScaleUri.of(practice.uri()));
    return new StationConfig(
        Purpose.PRACTICE,
        scales,
        new BenchSetup(
            StationConfig.named(scales),
            List.of(),
            HarbourLane.all(),
            options.timing(),
            ZoneId.systemDefault()),
        options.unit());
  }
}
