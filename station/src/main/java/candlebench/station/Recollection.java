package candlebench.station;

import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.journal.Checkpoint;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.Journal;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.JournalFailed;
import java.util.Optional;
import java.util.function.Consumer;

/** What a bench knows after a restart: all that its journal says, folded in order, from the beginning or from a checkpoint. */
final class Recollection implements Consumer<JournalEntry> {
  private BenchProgress progress;
  private final CommandMemory commands = new CommandMemory();
  private Optional<GuidanceEvent> last = Optional.empty();
  private Optional<JournalFailed> unreadable = Optional.empty();

  private Recollection(BenchProgress progress) {
    this.progress = progress;
  }

  static Recollection of(Journal journal) throws JournalFailed {
    return of(journal, Checkpoint.START);
  }

  /**
   * Folds a journal from a checkpoint on, or as a whole where the checkpoint is not of it; an entry that is not as it was written, or
   * not of this program, ends it with its number.
   */
  static Recollection of(Journal journal, Checkpoint from) throws JournalFailed {
    Checkpoint start = from.isOf(journal) ? from : Checkpoint.START;
    Recollection recollection = new Recollection(start.bench());
    journal.read(start.entries() + 1, recollection);
    if (recollection.unreadable.isPresent()) throw recollection.unreadable.get();
    return recollection;
  }

  @Override
  public void accept(JournalEntry entry) {
    if (unreadable.isPresent()) return;
    try {
      GuidanceEvent event = EntryJson.event(entry);
      progress = progress.after(event);
      if (event instanceof GuidanceEvent.CommandTaken taken) {
        commands.name(taken.commandId(), taken.command());
        commands.keep(taken.commandId(), Station.DONE);
      } else last = Optional.of(event);
    } catch (JournalFailed failed) {
      unreadable = Optional.of(failed);
    }
  }

  BenchProgress progress() {
    return progress;
  }

  CommandMemory commands() {
    return commands;
  }

  /** The last event, if there was one. */
  Optional<GuidanceEvent> last() {
    return last;
  }
}
