package candlebench.station;

import candlebench.station.Bench.Watch;
import candlebench.station.view.StationView;
import candlebench.station.view.StationView.RecordView;
import candlebench.station.view.StationView.Say;
import candlebench.station.view.StationView.ScaleView;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The newest view, and who is told of a newer one. Shown by the station's thread, read by any. */
final class Showing {
  private static final Logger LOG = LoggerFactory.getLogger(Showing.class);

  private final List<Runnable> watchers = new CopyOnWriteArrayList<>();
  private volatile StationView newest;

  Showing(StationView first) {
    newest = first;
  }

  StationView newest() {
    return newest;
  }

  Watch watch(Runnable newerView) {
    watchers.add(newerView);
    return () -> watchers.remove(newerView);
  }

  /** Shows a view under the next revision and tells those who watch. */
  void show(StationView made) {
    newest = new StationView(
        newest.revision() + 1,
        made.madeAtNanos(),
        made.practice(),
        made.scales(),
        made.bench(),
        made.record());
    for (Runnable watcher : watchers) {
      try {
        watcher.run();
      } catch (RuntimeException itsOwn) {
        watchers.remove(watcher);
        LOG.error(
            "A page failed when told of a newer view, and is told no more. The bench goes on.",
            itsOwn);
      }
    }
  }

  /** Shows a view if it says anything else than the newest; that a number has grown older is nothing else. */
  void showIfOther(StationView made) {
    if (!made.bench().equals(newest.bench())
        || !made.record().equals(newest.record())
        || !ageless(made.scales()).equals(ageless(newest.scales()))) show(made);
  }

  /** Shows that the bench has stopped: what was seen last, and that nothing is being done any more. */
  void stopped(long nanos) {
    Say words = Say.of("station.stopped");
    StationView last = newest;
    show(new StationView(
        0,
        nanos,
        last.practice(),
        last.scales(),
        last.bench().stopped(words),
        new RecordView(
            last.record().entries(),
            last.record().head(),
            last.record().last(),
            Optional.of(words))));
  }

  private static List<ScaleView> ageless(List<ScaleView> scales) {
    return scales.stream()
        .map(scale -> new ScaleView(
            scale.name(),
            scale.link(),
            scale.format(),
            scale.shown(),
            scale.unit(),
            scale.stability(),
            0,
            scale.unitAssumed(),
            scale.framesRead(),
            scale.framesRefused(),
            scale.trouble()))
        .toList();
  }
}
