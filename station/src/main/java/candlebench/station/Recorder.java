package candlebench.station;

import candlebench.shared.Stamp;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.Words;
import candlebench.station.journal.CrashPoints;
import candlebench.station.journal.CrashPoints.Point;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.EntryText;
import candlebench.station.journal.Journal;
import candlebench.station.journal.JournalFailed;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView.RecordView;
import candlebench.station.view.Views;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes events down before anyone is told, and says where the record stands. While the disk refuses, it is tried again at every
 * command, and otherwise about twice a second.
 */
final class Recorder {
  private static final Logger LOG = LoggerFactory.getLogger(Recorder.class);

  /** Shorter than the gap that breaks a run of steady readings, so that a weight that settled stays settled meanwhile. */
  private static final long RETRY_NANOS = 500_000_000L;

  private final Journal journal;
  private final CrashPoints crashPoints;
  private final ZoneId zone;
  private Optional<Words> last;
  private Optional<Words> trouble = Optional.empty();
  private long failedNanos;

  Recorder(Journal journal, CrashPoints crashPoints, ZoneId zone, Optional<GuidanceEvent> last) {
    this.journal = journal;
    this.crashPoints = crashPoints;
    this.zone = zone;
    this.last = last.map(Recorder::words);
  }

  /**
   * Writes events down, all or none.
   *
   * @param insists whether to try although the disk refused a moment ago
   * @return whether they are on disk
   */
  boolean isRecorded(List<GuidanceEvent> events, Stamp at, boolean insists) {
    boolean tooSoon = at.nanos() - failedNanos < RETRY_NANOS;
    if (trouble.isPresent() && tooSoon && !insists) return false;
    List<EntryText> texts = events.stream().map(EntryJson::text).toList();
    try {
      crashPoints.at(Point.BEFORE_APPEND);
      journal.append(DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(at.wall().atZone(zone)), texts);
      crashPoints.at(Point.AFTER_APPEND);
    } catch (JournalFailed failed) {
      if (trouble.isEmpty()) LOG.error("The record cannot be written.", failed);
      trouble = Optional.of(Words.of("record-trouble." + word(failed.trouble().name())));
      failedNanos = at.nanos();
      return false;
    }
    trouble = Optional.empty();
    last = Optional.of(words(events.get(events.size() - 1)));
    return true;
  }

  /** What keeps the record from being written, if anything does. */
  Optional<Words> trouble() {
    return trouble;
  }

  /** Where the record stands now, for a view in any unit. */
  Function<ShownUnit, RecordView> standing() {
    long entries = journal.length();
    String head = journal.head();
    Optional<Words> lastNow = last;
    Optional<Words> troubleNow = trouble;
    return unit -> new RecordView(
        entries,
        head,
        lastNow.map(words -> Views.say(words, unit)),
        troubleNow.map(words -> Views.say(words, unit)));
  }

  private static Words words(GuidanceEvent event) {
    Words words = Words.of("record." + EntryJson.kind(event));
    return event instanceof GuidanceEvent.WeightAccepted weight
        ? words.and("part", weight.name()).and("amount", weight.net())
        : words;
  }

  private static String word(String name) {
    return name.toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
