package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.CommandTaken;
import candlebench.station.guidance.GuidanceEvent.HabitsLearnt;
import candlebench.station.guidance.GuidanceEvent.Noted;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.JournalAudit;
import candlebench.station.journal.JournalDials;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFile;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.view.StationView;
import candlebench.station.view.StationView.Say;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Lets the disk run full at some point of a batch, has the bench go on against it for a while, makes room, and compares the batch with
 * one that was never in trouble.
 */
final class FullDiskRuns {
  private static final int FRAMES_AGAINST_IT = 12;

  private final Path folder;
  private int run;

  /** What happened: how many entries were there when the disk was full, or that it never was. */
  record Left(int entriesThen, boolean wasFull) {}

  FullDiskRuns(Path folder) {
    this.folder = folder;
  }

  /** A batch on a disk that has no more room from the start than the file takes, with so long a note in it before. */
  Left run(int noteLength, List<String> undisturbed) throws Exception {
    Path data = folder.resolve("full-" + run++);
    Path file = Purpose.RECORD.under(data);
    int[] fullAt = {-1};
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD)) {
      journal.append("2026-11-25T09:00:00+01:00", List.of(EntryJson.text(note(noteLength))));
      JournalDials.fillDisk(journal);
      try (StationRig rig = StationRig.on(journal)) {
        batch(rig, () -> {
          if (fullAt[0] < 0 && rig.view().record().trouble().isPresent())
            fullAt[0] = full(rig, journal);
        });
        assertThat(rig.view().bench().step()).isEqualTo("DONE");
        assertThat(rig.view().record().entries()).isEqualTo(journal.length());
      }
    }
    List<JournalEntry> entries = entries(file);
    assertThat(summary(entries.subList(1, entries.size()))).isEqualTo(undisturbed);
    return new Left(fullAt[0], fullAt[0] >= 0);
  }

  /** What a batch writes down where the disk has room. */
  List<String> undisturbed() throws Exception {
    Path file = Purpose.RECORD.under(folder.resolve("undisturbed"));
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD);
        StationRig rig = StationRig.on(journal)) {
      batch(rig, () -> {});
      assertThat(rig.view().bench().step()).isEqualTo("DONE");
    }
    return summary(entries(file));
  }

  /** The disk is full: the page says so, and that stands while scale and maker go on. Then there is room again. */
  private static int full(StationRig rig, SqliteJournal journal) {
    long shown = rig.view().record().entries();
    assertThat(rig.view().record().trouble()).contains(Say.of("record-trouble.full"));
    assertThat(journal.length()).isEqualTo(shown);
    String before = rig.view().bench().step();
    for (int i = 0; i < FRAMES_AGAINST_IT; i++) rig.tick();
    StationView against = rig.view();
    assertThat(against.record().entries()).as("nothing is called recorded").isEqualTo(shown);
    assertThat(against.bench().step()).as("nothing goes on").isEqualTo(before);
    JournalDials.makeRoom(journal);
    return (int) shown;
  }

  /** A batch of one part, scripted: each frame is shown, and again while the record is in trouble. */
  private static void batch(StationRig rig, Runnable look) {
    show(rig, "0.0", 20, look);
    while (!rig.startOil().done()) look.run();
    show(rig, "0.0", 20, look);
    show(rig, "350.2", 50, look);
    for (double grams = 350.2; grams < 406.2; grams += 4)
      show(rig, String.format(java.util.Locale.ROOT, "%.1f", grams), 1, look);
    show(rig, "406.2", 80, look);
  }

  private static void show(StationRig rig, String grams, int frames, Runnable look) {
    for (int i = 0; i < frames; i++) {
      rig.show(grams, 1);
      look.run();
    }
  }

  private static GuidanceEvent note(int length) {
    return new Noted(
        new candlebench.shared.Stamp(java.time.Instant.EPOCH, 0), "none", "x".repeat(length), "");
  }

  private static List<JournalEntry> entries(Path file) throws JournalFailed {
    List<JournalEntry> entries = new ArrayList<>();
    JournalAudit audit = JournalAudit.of(Purpose.RECORD);
    try (JournalFile reading = JournalFile.open(file)) {
      reading.scan(1, entry -> {
        audit.accept(entry);
        entries.add(entry);
      });
    }
    assertThat(audit.report().findings()).isEmpty();
    return entries;
  }

  /** What was written down, without what depends on the moment: times, learnt delays, and commands tried more than once. */
  private static List<String> summary(List<JournalEntry> entries) throws JournalFailed {
    List<String> kinds = new ArrayList<>();
    for (JournalEntry entry : entries) {
      GuidanceEvent event = EntryJson.event(entry);
      if (event instanceof HabitsLearnt || event instanceof CommandTaken) continue;
      kinds.add(
          event instanceof WeightAccepted weight
              ? entry.kind() + " " + weight.net()
              : entry.kind());
    }
    return kinds;
  }
}
