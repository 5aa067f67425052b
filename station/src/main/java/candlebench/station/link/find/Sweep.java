package candlebench.station.link.find;

import candlebench.protocol.Heard;
import candlebench.protocol.LineSettings;
import candlebench.protocol.Question;
import candlebench.protocol.Recognition;
import candlebench.protocol.ScaleFormat;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * The search for an unknown scale on one line: how the line is to be set, what to ask, and what was found. Pure: time comes with every
 * call.
 *
 * <p>First it listens; then, if the line is silent, it asks; then it has someone press the scale's PRINT key.
 */
final class Sweep {
  private final List<ScaleFormat> formats;
  private final Deque<Stage> stages = new ArrayDeque<>();
  private final List<Heard> heard = new ArrayList<>();
  private Optional<Visit> visit = Optional.empty();
  private Optional<Found> found = Optional.empty();

  Sweep(List<ScaleFormat> formats) {
    this.formats = formats;
    List<LineSettings> lines = Heard.plan(formats);
    List<Question> questions = Question.plan(formats);
    stages.add(new Listening(lines));
    if (!questions.isEmpty()) stages.add(new Questioning(questions));
    stages.add(new WaitingForPrint(lines));
  }

  Search.Doing doing() {
    return stages.element().doing();
  }

  /** How the line is to be set when it is opened next. */
  LineSettings line() {
    return stages.element().line();
  }

  /** What the search came to, once it is over. */
  Optional<Found> found() {
    return found;
  }

  /** Whether the line is to stay open as it is. */
  boolean isOpen() {
    return visit.isPresent() && found.isEmpty();
  }

  /** The line was opened as it is to be set. */
  void opened(long nanos) {
    visit = Optional.of(new Visit(formats, line(), nanos));
  }

  /** What to send now, if anything. */
  Optional<byte[]> ask(long nanos) {
    return stages.element().ask(visit.orElseThrow(), nanos);
  }

  /** Takes in what was heard by now, which may be nothing. */
  void heard(byte[] bytes, int count, long nanos) {
    Visit here = visit.orElseThrow();
    if (count > 0) here.heard(bytes, count, nanos);
    follow(stages.element().next(here, nanos), here);
  }

  private void follow(Stage.Next next, Visit here) {
    if (next instanceof Stage.Stay) return;
    if (next instanceof Stage.Done done) {
      found = Optional.of(done.found());
      return;
    }
    if (!here.isSilent()) heard.add(here.heard());
    visit = Optional.empty();
    if (next instanceof Stage.Reopen) return;
    if (next instanceof Stage.GiveUp || stages.size() == 1) found = Optional.of(nothing(here));
    else stages.remove();
  }

  /** What is to be said where no scale was found: the best that was heard, if anything was. */
  private Found nothing(Visit last) {
    Heard best = Heard.best(heard).orElseGet(last::heard);
    boolean silent = best.recognition().finding() == Recognition.Finding.TOO_LITTLE;
    return new Found(best, silent ? Found.Sending.NEVER : Found.Sending.BY_ITSELF);
  }
}
