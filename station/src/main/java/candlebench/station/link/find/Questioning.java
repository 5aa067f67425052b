package candlebench.station.link.find;

import candlebench.protocol.Candidate;
import candlebench.protocol.LineSettings;
import candlebench.protocol.Question;
import candlebench.protocol.Recognition;
import candlebench.protocol.Recognition.Finding;
import candlebench.protocol.ScaleFormat;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Asks a silent scale in every format and at every setting of its line; once it answers in a format that is known, asks on in that. An
 * answer that is read but not understood may have been hit: all is asked once more at that setting before it counts.
 */
final class Questioning implements Stage {
  private static final long MILLI = 1_000_000L;
  private static final long BETWEEN_QUESTIONS_NANOS = 90 * MILLI;
  private static final long LAST_ANSWER_NANOS = 400 * MILLI;
  private static final long BETWEEN_ASKING_ON_NANOS = 200 * MILLI;
  private static final long ASKED_ENOUGH_NANOS = 2_500 * MILLI;
  private static final int FEWEST_ANSWERS = 3;

  /** The bytes of one answer follow each other more closely. */
  private static final long ANSWER_ENDS_NANOS = 80 * MILLI;

  private final List<Question> questions;
  private LineSettings line;
  private int beginning;
  private int place;
  private boolean askedTwice;
  private Optional<ScaleFormat> guess = Optional.empty();
  private final Set<ScaleFormat> refuted = new HashSet<>();
  private long guessed;
  private boolean everAsked;
  private long asked;

  Questioning(List<Question> questions) {
    this.questions = questions;
    this.line = questions.get(0).line();
  }

  @Override
  public Search.Doing doing() {
    return Search.Doing.ASKING;
  }

  @Override
  public LineSettings line() {
    return line;
  }

  @Override
  public Optional<byte[]> ask(Visit visit, long nanos) {
    long pause = guess.isPresent() ? BETWEEN_ASKING_ON_NANOS : BETWEEN_QUESTIONS_NANOS;
    if (everAsked && nanos - asked < pause || isAnswering(visit, nanos)) return Optional.empty();
    Optional<byte[]> next =
        guess.isPresent() ? askOn(guess.get(), visit.heard().suggested()) : nextQuestion();
    if (next.isPresent()) {
      everAsked = true;
      asked = nanos;
    }
    return next;
  }

  @Override
  public Next next(Visit visit, long nanos) {
    if (isAnswering(visit, nanos)) return STAY;
    if (guess.isPresent()) return tryGuess(visit, nanos);
    Optional<ScaleFormat> better =
        fitting(visit).stream().filter(format -> !refuted.contains(format)).findFirst();
    if (better.isPresent()) {
      guess = better;
      guessed = nanos;
      return STAY;
    }
    if (hasMoreHere() || nanos - asked < LAST_ANSWER_NANOS) return STAY;
    boolean readable = visit.recognition().finding() == Finding.UNKNOWN_FORMAT;
    if (readable || !fitting(visit).isEmpty()) {
      if (askedTwice) return new Done(refuted.isEmpty() ? found(visit) : sentByChance(visit));
      askedTwice = true;
      place = beginning;
      refuted.clear();
      return REOPEN;
    }
    if (place == questions.size()) return OVER;
    beginning = place;
    line = questions.get(place).line();
    askedTwice = false;
    return REOPEN;
  }

  /** A single answer may be misread; a scale that is asked on in its own format answers again and again. */
  private Next tryGuess(Visit visit, long nanos) {
    Recognition recognition = visit.recognition();
    if (recognition.isSure()) return new Done(found(visit));
    if (nanos - guessed < ASKED_ENOUGH_NANOS) return STAY;
    boolean confirmed = recognition.fitting().stream()
        .anyMatch(each -> each.format() == guess.get() && each.written() >= FEWEST_ANSWERS);
    if (confirmed) return new Done(found(visit));
    refuted.add(guess.get());
    guess = Optional.empty();
    return STAY;
  }

  private static List<ScaleFormat> fitting(Visit visit) {
    if (visit.isSilent()) return List.of();
    return visit.recognition().fitting().stream().map(Candidate::format).toList();
  }

  private Optional<byte[]> askOn(ScaleFormat format, LineSettings own) {
    return Question.of(format, own, line).map(Question::bytes);
  }

  private boolean isAnswering(Visit visit, long nanos) {
    return !visit.isSilent()
        && visit.nanosSinceLastByte(nanos) < ANSWER_ENDS_NANOS
        && visit.nanosSinceFirstByte(nanos) < ASKED_ENOUGH_NANOS;
  }

  private boolean hasMoreHere() {
    return place < questions.size() && questions.get(place).line().equals(line);
  }

  private Optional<byte[]> nextQuestion() {
    return hasMoreHere() ? Optional.of(questions.get(place++).bytes()) : Optional.empty();
  }

  /** What was heard came while it was asked, but not because of it. */
  private static Found sentByChance(Visit visit) {
    return new Found(visit.heard(), Found.Sending.NOW_AND_THEN);
  }

  private static Found found(Visit visit) {
    return new Found(visit.heard(), Found.Sending.WHEN_ASKED);
  }
}
