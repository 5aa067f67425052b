package candlebench.station.journal;

/** The instants between which a kill must change nothing. A test stops the process at one; in use nothing happens at any. */
@FunctionalInterface
public interface CrashPoints {

  /** The instants on the way of one input, in their order. */
  enum Point {
    BEFORE_APPEND,
    BEFORE_COMMIT,
    AFTER_COMMIT,
    AFTER_APPEND,
    AFTER_STATE,
    AFTER_EFFECTS,
    AFTER_VIEW
  }

  /** Nothing happens. */
  CrashPoints NONE = point -> {};

  void at(Point point);
}
