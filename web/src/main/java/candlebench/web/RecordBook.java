package candlebench.web;

import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Noted;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.journal.BatchRow;
import candlebench.station.journal.Journal;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.Projections;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.Recorded;
import candlebench.station.record.Spread;
import candlebench.station.record.WeighingLine;
import java.util.Locale;
import java.util.Optional;

/** The record as its pages read it. Whoever asks waits for the disk; the bench does not. */
record RecordBook(Journal journal, Projections lists) {

  /** So many vessels say enough about a maker's pouring. */
  private static final int FILLS_ENOUGH = 60;

  /** So many batches back they are looked for. */
  private static final int BATCHES_BACK = 40;

  BatchRecord batch(String code) throws JournalFailed {
    return lists
        .record(code)
        .orElseThrow(() ->
            new RequestGuard.TurnedAway(404, "no batch '" + code + "': see the list of batches"));
  }

  /** How far a maker's fills lay off their targets, in a batch and in the last ones of the same recipe before it. */
  Spread offsets(BatchRecord batch) throws JournalFailed {
    Spread offsets = with(Spread.NONE, batch);
    for (BatchRow row : lists.batches(batch.firstEntry(), BATCHES_BACK)) {
      if (offsets.count() >= FILLS_ENOUGH) break;
      if (!row.recipe().equals(batch.recipe().name()) || !row.person().equals(batch.person()))
        continue;
      Optional<BatchRecord> earlier = lists.record(row.code());
      if (earlier.isPresent()) offsets = with(offsets, earlier.get());
    }
    return offsets;
  }

  private static Spread with(Spread offsets, BatchRecord batch) {
    Spread more = offsets;
    for (WeighingLine vessel : batch.vesselLines()) more = more.and(vessel.difference());
    return more;
  }

  /** Refuses a correction or a note of what is not there; throws {@link IllegalArgumentException} in words for whoever wrote it. */
  void check(MakerCommand command) throws JournalFailed {
    if (command instanceof MakerCommand.Note note) batch(note.batch());
    if (!(command instanceof MakerCommand.Correct correct)) return;
    BatchRecord batch = batch(correct.batch());
    Recorded entry = batch.entries().stream()
        .filter(each -> each.entry() == correct.entry())
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("entry " + correct.entry()
            + " is not of batch " + correct.batch() + ": take it from the batch's sheet"));
    if (!has(correct.what(), entry.event(), entry.entry() == batch.firstEntry()))
      throw new IllegalArgumentException("entry " + correct.entry() + " has no "
          + correct.what().name().toLowerCase(Locale.ROOT)
          + " to correct: take it from the batch's sheet");
  }

  private static boolean has(Correctable what, GuidanceEvent event, boolean isStart) {
    return switch (what) {
      case WEIGHT -> event instanceof WeightAccepted;
      case NOTE -> event instanceof Noted;
      case LOT -> event instanceof WeightAccepted || isStart;
    };
  }
}
