package candlebench.station;

import candlebench.station.Bench.Watch;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import candlebench.station.view.StationView.Say;
import candlebench.station.view.StationView.ScaleView;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The newest view, and who is told of a newer one. Shown by the station's thread, read by any. */
final class Showing {
  private static final Logger LOG = LoggerFactory.getLogger(Showing.class);

  private final List<Runnable> watchers = new CopyOnWriteArrayList<>();
  private volatile Shown shown;

  Showing(ShownUnit usual, Function<ShownUnit, StationView> first) {
    shown = new Shown(usual, first.apply(usual), first);
  }

  /** One moment of the bench: its view in the usual unit and, made when a page asks, in any other. */
  private record Shown(ShownUnit usual, StationView view, Function<ShownUnit, StationView> made) {
    StationView in(ShownUnit unit) {
      return unit == usual ? view : made.apply(unit).as(view.revision());
    }
  }

  StationView newest() {
    return shown.view();
  }

  StationView newest(ShownUnit unit) {
    return shown.in(unit);
  }

  Watch watch(Runnable newerView) {
    watchers.add(newerView);
    return () -> watchers.remove(newerView);
  }

  /** Shows a moment under the next revision and tells those who watch. */
  void show(Function<ShownUnit, StationView> made) {
    show(made, made.apply(shown.usual()));
  }

  private void show(Function<ShownUnit, StationView> made, StationView view) {
    shown = new Shown(shown.usual(), view.as(newest().revision() + 1), made);
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

  /** Shows a moment if its view says anything else than the newest; that a number has grown older is nothing else. */
  void showIfOther(Function<ShownUnit, StationView> made) {
    StationView view = made.apply(shown.usual());
    if (!view.bench().equals(newest().bench())
        || !view.record().equals(newest().record())
        || !ageless(view.scales()).equals(ageless(newest().scales()))) show(made, view);
  }

  /** Shows that the bench has stopped: what was seen last, and that nothing is being done any more. */
  void stopped(long nanos) {
    Shown last = shown;
    show(unit -> last.in(unit).stopped(nanos, Say.of("station.stopped")));
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
