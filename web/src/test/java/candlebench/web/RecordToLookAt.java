package candlebench.web;

import candlebench.station.journal.Projections;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.view.ShownUnit;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Not a test: serves a record with batches in it until the line is ended, to be looked at. */
final class RecordToLookAt {

  private RecordToLookAt() {}

  public static void main(String[] args) throws Exception {
    Path file = Purpose.RECORD.under(Files.createTempDirectory("candlebench-look"));
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      RecordScenes scenes = new RecordScenes(journal);
      scenes.twelveWithTroubles("20261125-1").three("20261125-2");
      try (Projections lists = Projections.open(Projections.beside(file), journal);
          WebServer server = new WebServer(
              new Site(
                  new BenchWithoutScale(ShownUnit.GRAM),
                  System::nanoTime,
                  List.of(),
                  Optional.empty(),
                  Optional.of(new RecordBook(journal, lists)),
                  Optional.empty()),
              InetAddress.getLoopbackAddress(),
              args.length > 0 ? Integer.parseInt(args[0]) : 0)) {
        System.out.println(server.address());
        while (System.in.read() >= 0) {}
      }
    }
  }
}
