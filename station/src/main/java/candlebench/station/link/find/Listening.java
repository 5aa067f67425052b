package candlebench.station.link.find;

import candlebench.protocol.LineSettings;
import candlebench.protocol.Recognition;
import java.util.List;

/**
 * Listens at one setting after the other. A scale that sends by itself is heard at any speed, if only as rubbish, so that a line which is
 * silent at the first is silent at all.
 */
final class Listening implements Stage {
  private static final long MILLI = 1_000_000L;

  /** The slowest usual scale sends once a second. */
  private static final long SILENT_NANOS = 1_300 * MILLI;

  private static final long ENOUGH_NANOS = 3_000 * MILLI;
  private static final long RUBBISH_NANOS = 400 * MILLI;
  private static final long LITTLE_RUBBISH_NANOS = 1_000 * MILLI;
  private static final int RUBBISH_BYTES = 24;

  private final List<LineSettings> lines;
  private int place;
  private int senseless;

  Listening(List<LineSettings> lines) {
    this.lines = lines;
  }

  @Override
  public Search.Doing doing() {
    return Search.Doing.LISTENING;
  }

  @Override
  public LineSettings line() {
    return lines.get(place);
  }

  @Override
  public Next next(Visit visit, long nanos) {
    if (visit.isSilent()) {
      if (visit.nanosOpen(nanos) < SILENT_NANOS) return STAY;
      return place == 0 ? OVER : nextLine();
    }
    long listened = visit.nanosSinceFirstByte(nanos);
    Recognition recognition = visit.recognition();
    if (recognition.isSure()) return new Done(new Found(visit.heard(), Found.Sending.BY_ITSELF));
    return switch (recognition.finding()) {
      case RECOGNISED, SEVERAL_REMAIN, UNKNOWN_FORMAT ->
        listened < ENOUGH_NANOS
            ? STAY
            : new Done(new Found(visit.heard(), Found.Sending.BY_ITSELF));
      case TOO_LITTLE, WRONG_SPEED -> {
        long patience = visit.length() < RUBBISH_BYTES ? LITTLE_RUBBISH_NANOS : RUBBISH_NANOS;
        if (listened < patience) yield STAY;
        senseless++;
        yield nextLine();
      }
    };
  }

  private Next nextLine() {
    if (place == lines.size() - 1) return senseless > lines.size() / 2 ? GIVE_UP : OVER;
    place++;
    return REOPEN;
  }
}
