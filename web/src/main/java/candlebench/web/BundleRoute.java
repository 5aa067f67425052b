package candlebench.web;

import candlebench.station.Diagnosis;
import candlebench.station.DiagnosisFile;
import candlebench.station.Station;
import candlebench.station.journal.JournalFailed;
import candlebench.station.link.Counters;
import candlebench.station.link.ScaleLink;
import candlebench.web.RequestGuard.TurnedAway;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.Map;
import java.util.Optional;

/** Hands out, as one file, what the running bench can be played again from on another computer. */
final class BundleRoute {
  static final String PATH = "/api/bundle";
  static final String NAME = "candlebench-bundle.zip";

  private BundleRoute() {}

  static void routes(JavalinConfig config, Site site) {
    config.routes.get("/api/bundle", request -> send(site, request));
  }

  private static void send(Site site, Context request) throws JournalFailed, IOException {
    if (!(site.bench() instanceof Station station) || site.book().isEmpty())
      throw new TurnedAway(
          404, "no bench is at work here: start the station with a scale, and try again");
    Diagnosis diagnosis = Diagnosis.of(station, site.book().get().lists().checkpoint());
    request
        .contentType("application/zip")
        .header("Content-Disposition", "attachment; filename=\"" + NAME + "\"");
    DiagnosisFile.write(
        diagnosis,
        Map.of("program.txt", program(), "counters.txt", counters(station)),
        request.outputStream());
  }

  private static String program() {
    Runtime java = Runtime.getRuntime();
    return String.join(
        "\n",
        "candlebench = " + version(),
        "java = " + System.getProperty("java.vendor") + " " + Runtime.version(),
        "system = " + System.getProperty("os.name") + " " + System.getProperty("os.version") + " "
            + System.getProperty("os.arch"),
        "processors = " + java.availableProcessors(),
        "memory = " + (java.totalMemory() - java.freeMemory() >> 20) + " of at most "
            + (java.maxMemory() >> 20) + " MB",
        "threads = " + ManagementFactory.getThreadMXBean().getThreadCount(),
        "running for = " + ManagementFactory.getRuntimeMXBean().getUptime() / 1000 + " s");
  }

  /** Of this program; empty where it was not packaged. */
  static String version() {
    return Optional.ofNullable(Main.class.getPackage().getImplementationVersion())
        .orElse("");
  }

  private static String counters(Station station) {
    StringBuilder text = new StringBuilder();
    int number = 0;
    for (ScaleLink link : station.links()) {
      Counters counted = link.counters();
      text.append("scale ")
          .append(++number)
          .append(": bytes ")
          .append(counted.bytes())
          .append(", frames ")
          .append(counted.frames())
          .append(", refused ")
          .append(counted.refused())
          .append(' ')
          .append(counted.refusedByReason())
          .append(", passed over ")
          .append(counted.passedOver())
          .append(", opened ")
          .append(counted.openings())
          .append('\n');
    }
    return text.toString();
  }
}
