package candlebench.web;

import candlebench.station.Station;
import candlebench.station.StationConfig;
import candlebench.station.Ticker;
import candlebench.station.journal.CrashPoints;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.Projections;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.link.NativeLibraries;
import candlebench.station.link.Stamps;
import candlebench.station.link.SystemStamps;
import candlebench.web.Main.WrongUse;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.function.Function;

/** A bench open for work: its journal, its station and the page's server, closed in the other order. */
final class OpenBench implements AutoCloseable {
  private final Deque<AutoCloseable> open = new ArrayDeque<>();
  private final WebServer server;

  /**
   * Opens the journal and what is folded from it, then the station that goes on from there, then the page.
   *
   * @param search the search for more scales, where one may be made
   * @param hands made of the station, where this is the practice bench
   */
  OpenBench(
      StationConfig config,
      Path data,
      Listening listening,
      Optional<ScaleSearch> search,
      Function<Station, Optional<Site.Hands>> hands)
      throws WrongUse {
    Stamps stamps = new SystemStamps();
    try {
      NativeLibraries.unpackInto(data.resolve("native"));
      SqliteJournal journal =
          kept(SqliteJournal.open(config.purpose().under(data), config.purpose()));
      Projections lists =
          kept(Projections.open(Projections.beside(config.purpose().under(data)), journal));
      Station station = kept(Station.start(
          config, journal, lists.checkpoint(), stamps, Ticker.SYSTEM, CrashPoints.NONE));
      Site site = new Site(
          station,
          () -> stamps.now().nanos(),
          config.setup().products(),
          search,
          Optional.of(new RecordBook(journal, lists)),
          hands.apply(station));
      server = kept(listening.serve(site));
    } catch (JournalFailed refused) {
      close();
      throw new WrongUse(refused.getMessage());
    } catch (IOException unwritable) {
      close();
      throw new WrongUse("cannot use '" + data + "' as the data folder: " + unwritable.getMessage()
          + ". Name another with --data");
    } catch (JavalinBindException taken) {
      close();
      throw listening.taken();
    }
  }

  WebServer server() {
    return server;
  }

  /** Closes what was opened, the last first; a part that fails to close does not keep the others open. */
  @Override
  public synchronized void close() {
    while (!open.isEmpty()) {
      try {
        open.pop().close();
      } catch (Exception ours) {
        System.err.println("candlebench: closing failed: " + ours);
      }
    }
  }

  private <T extends AutoCloseable> T kept(T opened) {
    open.push(opened);
    return opened;
  }
}
