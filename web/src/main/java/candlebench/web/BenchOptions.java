package candlebench.web;

import candlebench.station.guidance.BenchSetup.Timing;
import candlebench.station.view.ShownUnit;
import candlebench.web.Main.WrongUse;
import java.math.BigDecimal;
import java.time.Duration;
import picocli.CommandLine.Option;

/** The options that say in which unit a bench shows weights, and how long it waits. */
final class BenchOptions {

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      defaultValue = "g",
      description =
          "the unit in which pages show weights: g, kg, oz or lb:oz (default: ${DEFAULT-VALUE}). Each screen can choose its own; the record keeps what the scale shows")
  private String unit;

  @Option(
      names = "--count-in",
      paramLabel = "SECONDS",
      defaultValue = "2",
      description =
          "how long a settled weight is counted in before it is taken (default: ${DEFAULT-VALUE})")
  private BigDecimal countIn;

  @Option(
      names = "--undo",
      paramLabel = "SECONDS",
      defaultValue = "10",
      description =
          "how long the last step may be taken back (default: ${DEFAULT-VALUE}); 0 leaves no undo")
  private BigDecimal undo;

  ShownUnit unit() throws WrongUse {
    return ShownUnit.of(unit)
        .orElseThrow(() -> new WrongUse("--unit is g, kg, oz or lb:oz, not '" + unit + "'"));
  }

  Timing timing() throws WrongUse {
    return new Timing(seconds("--count-in", countIn), seconds("--undo", undo));
  }

  private static Duration seconds(String option, BigDecimal given) throws WrongUse {
    boolean possible = given.signum() >= 0 && given.compareTo(Timing.MOST_SECONDS) <= 0;
    if (!possible)
      throw new WrongUse(option + " is 0 to " + Timing.MOST_SECONDS + " seconds, not " + given);
    return Duration.ofMillis(given.movePointRight(3).longValue());
  }
}
