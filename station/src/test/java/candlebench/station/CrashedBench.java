package candlebench.station;

import candlebench.shared.Stamp;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.journal.CrashPoints;
import candlebench.station.journal.JournalDials;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.view.StationView;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A bench at work in a process of its own, to be killed: a maker pours oil by what the view says, batch after batch. It writes one line
 * for each thing that was shown, so that whoever kills it knows what a page had seen as recorded.
 *
 * <p>{@code CrashedBench FOLDER RUN PAN BATCHES [POINT NTH]}: the data folder, the number of this run, what stands on the pan, how
 * many batches to finish, and where to stop dead.
 */
final class CrashedBench {
  static final int STOPPED_DEAD = 42;
  static final int STUCK = 3;

  /** Names how the database is to sync, where that is not what the program does. */
  static final String SYNCHRONOUS = "CRASHED_BENCH_SYNCHRONOUS";

  static final String POT = "350.2";
  private static final double FULL = 406.2;
  private static final double STREAM = 4;
  private static final int PATIENCE = 3_000;
  private static final Instant FIRST_DAY = Instant.parse("2026-11-25T08:00:00Z");

  private final FileOutputStream out = new FileOutputStream(FileDescriptor.out);
  private final StationRig rig;
  private double pan;
  private long shown = -1;

  private CrashedBench(StationRig rig, double pan) {
    this.rig = rig;
    this.pan = pan;
  }

  public static void main(String[] args) throws Exception {
    int run = Integer.parseInt(args[1]);
    CrashPoints points =
        args.length > 4 ? stopAt(args[4], Integer.parseInt(args[5])) : CrashPoints.NONE;
    Instant start = FIRST_DAY.plus(Duration.ofHours(run));
    try (SqliteJournal journal =
            SqliteJournal.open(Purpose.RECORD.under(Path.of(args[0])), Purpose.RECORD, points);
        StationRig rig = new StationRig(
            journal, 1, points, new Stamp(start, start.toEpochMilli() * 1_000_000))) {
      String synchronous = System.getenv(SYNCHRONOUS);
      if (synchronous != null) JournalDials.synchronous(journal, synchronous);
      CrashedBench bench = new CrashedBench(rig, Double.parseDouble(args[2]));
      rig.station().watch(bench::tellNewest);
      bench.tell("ready");
      bench.work(Integer.parseInt(args[3]));
    }
  }

  /** Stops dead where an intake that is written down meets a named instant for the nth time. */
  private static CrashPoints stopAt(String point, int nth) {
    int[] met = {0};
    boolean[] writing = {false};
    return at -> {
      if (at == CrashPoints.Point.BEFORE_APPEND) writing[0] = true;
      if (writing[0] && at.name().equals(point) && ++met[0] == nth)
        Runtime.getRuntime().halt(STOPPED_DEAD);
      if (at == CrashPoints.Point.AFTER_VIEW) writing[0] = false;
    };
  }

  private void work(int batches) {
    int done = 0;
    long entries = -1;
    int idle = 0;
    boolean atWork = false;
    while (done < batches) {
      StationView view = rig.view();
      idle = view.record().entries() == entries ? idle + 1 : 0;
      entries = view.record().entries();
      if (idle > PATIENCE) {
        tell("stuck " + view.bench());
        Runtime.getRuntime().halt(STUCK);
      }
      boolean over = view.bench().step().equals("IDLE") || view.bench().step().equals("DONE");
      if (over && atWork) done++;
      atWork = !over;
      if (done < batches) act(view);
    }
  }

  private void act(StationView view) {
    switch (view.bench().step()) {
      case "IDLE", "DONE" -> {
        put(0);
        for (int i = 0; i < 15; i++) rig.show(text(0), 1);
        say(
            "start-" + rig.view().record().entries(),
            new MakerCommand.StartBatch("harbour-lane-oil", 1, "Robin", Map.of()));
      }
      case "PLACE_POT" -> {
        put(Double.parseDouble(POT));
        rig.show(text(pan), 5);
      }
      case "ADD_PART" -> {
        put(Math.min(FULL, pan + STREAM));
        rig.show(text(pan), 1);
      }
      case "ASK" -> {
        rig.show(text(pan), 15);
        rig.view().bench().choices().stream()
            .filter(StationView.Choice::possible)
            .findFirst()
            .ifPresent(way -> say(
                "choose-" + rig.view().record().entries(),
                new MakerCommand.Choose(way.id(), "restarted")));
      }
      default -> rig.show(text(pan), 5);
    }
  }

  private void say(String id, MakerCommand command) {
    if (rig.station().say(id, command).done()) tell("answered " + id);
  }

  private void put(double grams) {
    if (grams == pan) return;
    pan = grams;
    tell("pan " + text(pan));
  }

  private void tellNewest() {
    StationView view = rig.station().view();
    if (view.record().entries() == shown) return;
    shown = view.record().entries();
    tell("recorded " + shown + " " + view.record().head() + " " + signature(view.bench()));
  }

  /** What a page shows of the batch: its code, and how each part stands with its weight. */
  static String signature(StationView.BenchView bench) {
    String parts = bench.parts().stream()
        .map(part -> part.state() + ":" + part.actual())
        .collect(Collectors.joining(","));
    return bench.batch().map(StationView.BatchView::code).orElse("none") + "|" + parts;
  }

  private void tell(String line) {
    try {
      out.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
  }

  private static String text(double grams) {
    return String.format(Locale.ROOT, "%.1f", grams);
  }
}
