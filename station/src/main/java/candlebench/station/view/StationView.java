package candlebench.station.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that a page may show, whole, at one moment. Numbers are text in the maker's unit, as they are to be read; words are keys into
 * the page's message file with their arguments, so that no sentence is made here.
 *
 * @param revision rises by one with every view of this run
 * @param madeAtNanos when it was made, by the clock that never goes back
 * @param practice whether this is the practice bench, whose weights are no record
 * @param scales in the order in which they were named at the start
 * @param bench what is being done
 * @param record where the record stands
 */
public record StationView(
    long revision,
    long madeAtNanos,
    boolean practice,
    List<ScaleView> scales,
    BenchView bench,
    RecordView record) {

  /** The same under another revision. */
  public StationView as(long number) {
    return new StationView(number, madeAtNanos, practice, scales, bench, record);
  }

  /** The same with nothing going on any more, at a moment, and the words that say why. */
  public StationView stopped(long nanos, Say why) {
    RecordView kept =
        new RecordView(record.entries(), record.head(), record.last(), Optional.of(why));
    return new StationView(revision, nanos, practice, scales, bench.stopped(why), kept);
  }

  /** Words to be shown: a key of the message file and the values that go into the sentence. */
  public record Say(String key, Map<String, String> with) {
    public static Say of(String key) {
      return new Say(key, Map.of());
    }
  }

  /**
   * One scale.
   *
   * @param link how the line is: {@code connecting, live, silent, garbled, lost, held, denied, telnet}
   * @param shown decimal text as the scale showed it, empty where it shows no number
   * @param unit symbol, empty where none was stated
   * @param stability {@code stable, unstable, unstated, overload, underload, fault}, empty where nothing was heard
   * @param ageMillis how old the number is, or -1 where there is none
   * @param unitAssumed whether the unit was not in the frame
   * @param trouble what is wrong and what to do, if anything
   */
  public record ScaleView(
      String name,
      String link,
      String format,
      String shown,
      String unit,
      String stability,
      long ageMillis,
      boolean unitAssumed,
      long framesRead,
      long framesRefused,
      Optional<Say> trouble) {}

  /** How far the number on the page may be trusted. */
  public enum Trust {
    LIVE,
    MOVING,
    ASSUMED,
    STALE,
    NONE
  }

  /** What the stream should do now. */
  public enum Cue {
    NONE,
    POUR,
    SLOW,
    STOP,
    DROPS,
    PIECES,
    HOLD_STILL,
    OVER,
    WAITING
  }

  /**
   * What is being done on the bench.
   *
   * @param step the kind of step, such as {@code PLACE_POT}, {@code ADD_PART}, {@code FILL_VESSEL}, or {@code IDLE}
   * @param now a verb and a thing: what to do
   * @param detail a second line, such as why the target changed
   * @param stopInMillis the foreseen moment to stop, while a countdown runs
   * @param dropsToGo how many drops are missing, while topping up by drops
   * @param weighing the amounts, where something is being weighed
   * @param trouble stands in the number's place while the number may not be trusted
   * @param countIn a settled weight is about to be taken
   * @param undo the last acceptance may still be taken back
   * @param confirm the one large key, where it has a meaning now
   * @param timer a wait that runs
   * @param choices ways on from here, where one must be chosen
   * @param byHand whether a weight may be entered by hand, for no scale answers
   * @param pots where several take turns, how each stands: the one in hand first, then those that wait, then those to come
   */
  public record BenchView(
      String step,
      Say now,
      Optional<Say> detail,
      Cue cue,
      Optional<Long> stopInMillis,
      Optional<Integer> dropsToGo,
      Optional<WeighingView> weighing,
      Optional<Say> trouble,
      Optional<Countdown> countIn,
      Optional<Countdown> undo,
      Optional<Key> confirm,
      Optional<Countdown> timer,
      List<Choice> choices,
      List<PartView> parts,
      Optional<BatchView> batch,
      boolean byHand,
      List<PotView> pots) {

    /** The same with nothing going on any more, and the words that say why in the number's place. */
    public BenchView stopped(Say why) {
      return new BenchView(
          step,
          why,
          Optional.empty(),
          Cue.NONE,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.of(why),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          parts,
          batch,
          false,
          pots);
    }
  }

  /**
   * Amounts of the weighing that runs, text in {@code unit}; empty text where there is no number.
   *
   * @param scale the name of the scale whose number this is
   * @param unit the symbol of the maker's unit; numbers in {@code lb:oz} have a colon between the two
   * @param roundedTo the step of the figures, with its unit, where it is not the scale's own; else empty
   * @param toGo what is missing to the target; negative when over
   * @param fillPermille how full: 1000 is the target, more is over
   */
  public record WeighingView(
      String part,
      String scale,
      Trust trust,
      String net,
      String toGo,
      String target,
      String exactTarget,
      String under,
      String over,
      String unit,
      String roundedTo,
      int fillPermille) {}

  /** A time that runs out. */
  public record Countdown(Say what, long remainingMillis, long totalMillis) {}

  /** A key the maker may press: the command it sends and what is written on it. */
  public record Key(String command, Say label) {}

  /** A way on. An impossible one is shown with the reason, and cannot be taken. */
  public record Choice(
      String id,
      Say label,
      Optional<Say> cost,
      boolean possible,
      Optional<Say> whyNot,
      boolean needsReason) {}

  /** How a part of the batch stands. */
  public enum PartState {
    DONE,
    NOW,
    TO_COME,
    DROPPED
  }

  /** One part or vessel, done or to come; {@code actual} and {@code verdict} are empty until done. */
  public record PartView(
      String name,
      PartState state,
      String target,
      String actual,
      String unit,
      String verdict,
      boolean byHand) {}

  /** The batch as a whole. */
  public record BatchView(
      String code, String recipe, int vessels, String load, String loadBasis, String otherLoad) {}

  /** What one of several pots is about: it calls once its wait is over. */
  public enum PotState {
    IN_HAND,
    WAITING,
    CALLS,
    LEFT,
    TO_COME
  }

  /** One of several pots; {@code batch} is empty until it is begun. */
  public record PotView(
      String pot,
      String batch,
      PotState state,
      int vessels,
      int filled,
      Optional<Countdown> timer) {}

  /** Where the record stands: how many entries, its head, and what was last written down. */
  public record RecordView(long entries, String head, Optional<Say> last, Optional<Say> trouble) {}
}
