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
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A bench at work in a process of its own, to be killed: a maker works by what the view says, batch after batch. It writes one line
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

  /** Names the recipe, where that is not the one of oil alone. */
  static final String RECIPE = "CRASHED_BENCH_RECIPE";

  static final String OIL = "harbour-lane-oil";
  static final String WHOLE_BATCH = "harbour-lane-quick";
  static final int VESSELS = 2;

  static final String POT = "350.2";
  private static final double VESSEL = 181.6;
  private static final double PIECE = 6;
  private static final double OIL_STREAM = 2;
  private static final double WAX_STREAM = 6;
  private static final int PATIENCE = 3_000;
  private static final Set<String> CLEAR = Set.of("detail.clear-scale", "detail.that-is-the-pot");
  private static final Instant FIRST_DAY = Instant.parse("2026-11-25T08:00:00Z");

  private final FileOutputStream out = new FileOutputStream(FileDescriptor.out);
  private final StationRig rig;
  private final String recipe;
  private double pan;
  private long shown = -1;

  private CrashedBench(StationRig rig, String recipe, double pan) {
    this.rig = rig;
    this.recipe = recipe;
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
      CrashedBench bench = new CrashedBench(
          rig, System.getenv().getOrDefault(RECIPE, OIL), Double.parseDouble(args[2]));
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
        clear();
        say(
            "start-" + rig.view().record().entries(),
            new MakerCommand.StartBatch(
                recipe, recipe.equals(OIL) ? 1 : VESSELS, "Robin", Map.of()));
      }
      case "PREPARE", "PLACE_POT" -> {
        if (pan == 0) clear();
        put(Double.parseDouble(POT));
        rig.show(text(pan), 5);
      }
      case "ADD_PART" ->
        add(view, view.bench().cue() == StationView.Cue.PIECES ? PIECE : OIL_STREAM);
      case "PLACE_VESSEL" -> placeVessel(view);
      case "FILL_VESSEL" -> add(view, WAX_STREAM);
      case "LIFT_VESSEL" -> clear();
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

  /** So much more, or what is missing. */
  private void add(StationView view, double most) {
    view.bench()
        .weighing()
        .map(StationView.WeighingView::toGo)
        .filter(toGo -> !toGo.isEmpty())
        .map(Double::parseDouble)
        .filter(toGo -> toGo > 0)
        .ifPresent(toGo -> put(pan + Math.min(most, toGo)));
    rig.show(text(pan), 1);
  }

  private void placeVessel(StationView view) {
    boolean toBeCleared =
        view.bench().detail().filter(said -> CLEAR.contains(said.key())).isPresent();
    if (toBeCleared || pan > VESSEL) clear();
    put(VESSEL);
    rig.show(text(pan), 5);
  }

  private void clear() {
    put(0);
    rig.show(text(0), 15);
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
        .map(part -> part.state() + ":" + plain(part.actual()))
        .collect(Collectors.joining(","));
    return bench.batch().map(StationView.BatchView::code).orElse("none") + "|" + parts;
  }

  /** The same number whatever the step of the scale that shows it: a restarted bench has not heard its scale yet. */
  private static String plain(String number) {
    return number.isEmpty() ? "" : new BigDecimal(number).stripTrailingZeros().toPlainString();
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
