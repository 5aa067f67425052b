package candlebench.web;

import candlebench.shared.Division;
import candlebench.shared.Mass;
import candlebench.station.StationConfig;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.journal.JournalFailed;
import candlebench.station.link.Line;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.SerialLine;
import candlebench.station.link.TcpLine;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the page of the scales asks for, beside what each shows just now: where each is, how it speaks, what it can, and when it was tried. */
final class ScalesPage {

  private final Site site;

  private ScalesPage(Site site) {
    this.site = site;
  }

  static void routes(JavalinConfig config, Site site) {
    config.routes.get("/api/scales", new ScalesPage(site)::scales);
  }

  /**
   * One scale.
   *
   * @param capacity and {@code division}: empty where the maker did not say
   * @param askedEvery milliseconds between questions, by its settings; 0 where it is to send by itself
   * @param check the last one, or none
   */
  private record Scale(
      String name,
      String place,
      String format,
      String title,
      String capacity,
      String division,
      long askedEvery,
      List<SheetRows.Check> check) {}

  private record Scales(boolean search, boolean practice, List<Scale> scales) {}

  private void scales(Context request) throws JournalFailed {
    List<Scale> scales = new ArrayList<>();
    List<ScaleSettings> settings = site.bench().scales();
    List<BenchSetup.Scale> named = settings.isEmpty() ? List.of() : StationConfig.named(settings);
    for (int i = 0; i < settings.size(); i++)
      scales.add(scale(named.get(i).name(), settings.get(i)));
    Scales answer = new Scales(site.search().isPresent(), site.bench().view().practice(), scales);
    request.contentType("application/json").result(RecordJson.bytes(answer));
  }

  private Scale scale(String name, ScaleSettings settings) throws JournalFailed {
    return new Scale(
        name,
        place(settings.line()),
        settings.format().id(),
        settings.format().title(),
        settings.capacity().map(Mass::toString).orElse(""),
        settings.division().map(Division::step).map(Mass::toString).orElse(""),
        settings.ask().map(Duration::toMillis).orElse(0L),
        check(name));
  }

  private List<SheetRows.Check> check(String name) throws JournalFailed {
    if (site.book().isEmpty()) return List.of();
    return site.book().get().lists().lastCheck(name, Long.MAX_VALUE).stream()
        .map(last -> SheetRows.Check.of(name, Optional.of(last)))
        .toList();
  }

  private static String place(Line line) {
    if (line instanceof SerialLine serial) return serial.device() + ", " + serial.settings();
    if (line instanceof TcpLine tcp) return tcp.host() + ":" + tcp.port();
    return "";
  }
}
