package candlebench.web;

import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.Projections;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.Optional;

/** A scripted bench with a real record of two batches, served. */
final class ServedRecord implements AutoCloseable {
  private final SqliteJournal journal;
  private final Projections lists;
  private final ScriptedBench bench = new ScriptedBench(Scenes.pouring());
  private final WebServer server;

  ServedRecord(Path folder) throws IOException, JournalFailed {
    Path file = Purpose.RECORD.under(folder);
    journal = SqliteJournal.open(file, Purpose.RECORD);
    new RecordScenes(journal).twelveWithTroubles("20261125-1").three("20261125-2");
    lists = Projections.open(Projections.beside(file), journal);
    Site bare = bench.site();
    server = new WebServer(
        new Site(
            bare.bench(),
            bare.nanos(),
            bare.products(),
            Optional.empty(),
            Optional.of(new RecordBook(journal, lists)),
            Optional.empty()),
        InetAddress.getLoopbackAddress(),
        0);
  }

  ScriptedBench bench() {
    return bench;
  }

  SqliteJournal journal() {
    return journal;
  }

  Projections lists() {
    return lists;
  }

  WebServer server() {
    return server;
  }

  @Override
  public void close() {
    server.close();
    lists.close();
    journal.close();
  }
}
