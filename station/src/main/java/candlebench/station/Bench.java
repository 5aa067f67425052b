package candlebench.station;

import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.Words;
import candlebench.station.link.ScaleSettings;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import java.io.IOException;
import java.util.List;

/** The running bench as its pages see it: one view, and a door for what the maker says. */
public interface Bench {

  /** The scales as they are set, in the order of the view. */
  List<ScaleSettings> scales();

  /** The unit of what is shown, unless a page asks for another. */
  ShownUnit unit();

  /** The newest view, in the bench's usual unit. Safe from any thread. */
  StationView view();

  /** The newest view, in a unit. Safe from any thread. */
  StationView view(ShownUnit unit);

  /** Calls back, from the station's thread and without waiting, whenever there is a newer view. Close it to stop. */
  Watch watch(Runnable newerView);

  /**
   * Hands on what the maker said and waits until it was done and, where it is to be recorded, is on disk.
   *
   * @param commandId made by the page; a repeated one is answered as the first time and done once
   */
  Answer say(String commandId, MakerCommand command);

  /** Writes what reached the bench of late, one line each, to be looked into or played again after trouble. Any thread. */
  void writeInputs(Appendable out) throws IOException;

  /** What became of a command: done, or refused with words for the maker. */
  record Answer(boolean done, Words words) {}

  /** A callback in place. */
  interface Watch extends AutoCloseable {
    @Override
    void close();
  }
}
