package candlebench.station.link.find;

import candlebench.protocol.LineSettings;
import java.util.List;

/** Waits for someone to make the scale send, by its PRINT key or by a load: one frame a time, so the next setting with each that is rubbish. */
final class WaitingForPrint implements Stage {
  private static final long MILLI = 1_000_000L;
  private static final long PATIENCE_NANOS = 15_000 * MILLI;
  private static final long FRAME_ENDS_NANOS = 250 * MILLI;

  private final List<LineSettings> lines;
  private int place;
  private boolean waiting;
  private long since;

  WaitingForPrint(List<LineSettings> lines) {
    this.lines = lines;
  }

  @Override
  public Search.Doing doing() {
    return Search.Doing.WAITING_FOR_PRINT;
  }

  @Override
  public LineSettings line() {
    return lines.get(place);
  }

  @Override
  public Next next(Visit visit, long nanos) {
    if (!waiting) since = nanos;
    waiting = true;
    if (nanos - since >= PATIENCE_NANOS) return OVER;
    if (visit.isSilent() || visit.nanosSinceLastByte(nanos) < FRAME_ENDS_NANOS) return STAY;
    return switch (visit.recognition().finding()) {
      case RECOGNISED, SEVERAL_REMAIN, UNKNOWN_FORMAT ->
        new Done(new Found(visit.heard(), Found.Sending.NOW_AND_THEN));
      case WRONG_SPEED, TOO_LITTLE -> {
        place = (place + 1) % lines.size();
        yield REOPEN;
      }
    };
  }
}
