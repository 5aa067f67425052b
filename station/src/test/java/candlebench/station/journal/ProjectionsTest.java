package candlebench.station.journal;

import static candlebench.station.record.BatchScript.GLASS;
import static candlebench.station.record.BatchScript.OIL;
import static candlebench.station.record.BatchScript.WAX;
import static candlebench.station.record.BatchScript.lots;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.pour.Habits;
import candlebench.station.guidance.pour.PourKind;
import candlebench.station.guidance.pour.PourShown;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.BatchScript;
import candlebench.station.record.LotUse;
import candlebench.station.record.Recorded;
import candlebench.station.record.ScaleCheck;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProjectionsTest {
  private static final Map<String, String> LOTS = lots("W-1", "Q-31", "G-9", "K-2");

  @TempDir
  Path folder;

  private Path file() {
    return folder.resolve("record.db-projections");
  }

  private static MemoryJournal journal(List<Recorded> entries) throws JournalFailed {
    MemoryJournal journal = new MemoryJournal(Purpose.RECORD);
    append(journal, entries);
    return journal;
  }

  private static void append(MemoryJournal journal, List<Recorded> entries) throws JournalFailed {
    for (Recorded each : entries)
      journal.append(each.wall(), List.of(EntryJson.text(each.event())));
  }

  /** Three batches, with deliveries and learning between them, and a correction of the first after the second began. */
  private static BatchScript threeBatches() {
    BatchScript script = new BatchScript();
    script.event(new GuidanceEvent.LotReceived(
        script.now(), OIL, "Q-31", Mass.ofGrams("500"), "Dock Street Oils", "Robin"));
    batch(script, "20261125-1", LOTS);
    script.event(new GuidanceEvent.ZeroFound(
        script.now(), 0, Indication.of("-350.2", MassUnit.GRAM), Mass.ofGrams("350.2")));
    batch(script, "20261125-2", lots("W-1", "Q-32", "G-9", "K-2"));
    script.event(new GuidanceEvent.HabitsLearnt(
        script.now(),
        0,
        "Robin",
        PourKind.OIL,
        new PourShown(Map.of(PourShown.Of.STOP, 1.05)),
        Habits.unlearnt(PourKind.OIL)));
    script.event(new GuidanceEvent.Corrected(
        script.now(),
        "20261125-1",
        2,
        Correctable.LOT,
        GLASS,
        "G-9",
        "G-6",
        "upside down",
        "Sascha"));
    batch(script, "20261126-3", lots("W-2", "Q-31", "G-9", "K-2"));
    return script;
  }

  private static void batch(BatchScript script, String code, Map<String, String> lots) {
    script.start(code, HarbourLane.CANDLE, 2, lots).intoPot(HarbourLane.CANDLE, 2);
    script.vessel(0, "252").vessel(1, "252.1").done();
  }

  private Projections open(Journal journal) throws JournalFailed {
    return Projections.open(file(), journal);
  }

  @Test
  void from_a_lot_to_its_batches_and_vessels_and_back() throws JournalFailed {
    try (Projections projections = open(journal(threeBatches().entries()))) {
      assertThat(projections.batchesOf("Q-31", ""))
          .extracting(
              hit -> hit.batch().code(),
              hit -> hit.use().amount(),
              hit -> hit.use().vessels())
          .containsExactly(
              tuple("20261126-3", Mass.ofGrams("37.3"), List.of(1, 2)),
              tuple("20261125-1", Mass.ofGrams("37.3"), List.of(1, 2)));
      assertThat(projections.batchesOf("Q-31", WAX)).isEmpty();
      assertThat(projections.batchesOf("W-1", WAX)).hasSize(2);
      assertThat(projections.lotsOf("20261125-2"))
          .extracting(LotUse::material, LotUse::lot)
          .containsExactlyInAnyOrder(
              tuple(WAX, "W-1"),
              tuple(OIL, "Q-32"),
              tuple(GLASS, "G-9"),
              tuple(BatchRecord.WICK, "K-2"));
      assertThat(projections.lotsOf("20261125-9")).isEmpty();
    }
  }

  @Test
  void a_correction_made_after_the_next_batch_began_reaches_lots_and_sheet() throws JournalFailed {
    try (Projections projections = open(journal(threeBatches().entries()))) {
      assertThat(projections.batchesOf("G-6", ""))
          .extracting(hit -> hit.batch().code())
          .containsExactly("20261125-1");
      assertThat(projections.batchesOf("G-9", "")).hasSize(2);
      BatchRecord first = projections.record("20261125-1").orElseThrow();
      assertThat(first.corrections()).hasSize(1);
      BatchRecord second = projections.record("20261125-2").orElseThrow();
      assertThat(second.corrections()).isEmpty();
    }
  }

  @Test
  void what_is_left_of_a_lot_is_what_came_in_less_what_was_weighed_out() throws JournalFailed {
    try (Projections projections = open(journal(threeBatches().entries()))) {
      LotStock oil = projections.stock(100).stream()
          .filter(stock -> stock.lot().equals("Q-31"))
          .findFirst()
          .orElseThrow();
      assertThat(oil.left()).isEqualTo(Mass.ofGrams("425.4"));
      assertThat(oil.batches()).isEqualTo(2);
      assertThat(oil.isCounted()).isTrue();
      assertThat(projections.stock(100))
          .filteredOn(stock -> stock.lot().equals("W-1"))
          .allSatisfy(stock -> assertThat(stock.isCounted()).isFalse());
    }
  }

  @Test
  void the_last_check_of_a_scale_is_the_one_before_the_batch() throws JournalFailed {
    BatchScript script = new BatchScript();
    batch(script, "20261125-1", LOTS);
    check(script, "200.3");
    check(script, "200.2");
    batch(script, "20261125-2", LOTS);
    check(script, "200");
    try (Projections projections = open(journal(script.entries()))) {
      long first = projections.batch("20261125-1").orElseThrow().first();
      long second = projections.batch("20261125-2").orElseThrow().first();
      assertThat(projections.lastCheck("bench scale", first)).isEmpty();
      assertThat(projections.lastCheck("other scale", second)).isEmpty();
      ScaleCheck last = projections.lastCheck("bench scale", second).orElseThrow();
      assertThat(last.entry()).isEqualTo(second - 1);
      assertThat(last.difference()).isEqualTo(Mass.ofGrams("0.2"));
      // 200 g on class III with e = 0.1 g: ± 0.2 g in service (OIML R 76-1:2006, Table 6).
      assertThat(last.allowed()).isEqualTo(Mass.ofGrams("0.2"));
      assertThat(last.isWithin()).isTrue();
      ScaleCheck before = projections.lastCheck("bench scale", second - 1).orElseThrow();
      assertThat(before.isWithin()).isFalse();
    }
  }

  private static void check(BatchScript script, String shown) {
    script.event(new GuidanceEvent.ScaleChecked(
        script.now(),
        0,
        "bench scale",
        Mass.ofGrams("200"),
        Indication.of(shown, MassUnit.GRAM),
        Mass.ofGrams(shown),
        "Robin"));
  }

  @Test
  void batches_are_listed_newest_first_and_in_pages() throws JournalFailed {
    try (Projections projections = open(journal(threeBatches().entries()))) {
      List<BatchRow> newest = projections.batches(Long.MAX_VALUE, 2);
      assertThat(newest).extracting(BatchRow::code).containsExactly("20261126-3", "20261125-2");
      assertThat(projections.batches(newest.get(1).first(), 2))
          .extracting(BatchRow::code, BatchRow::ending, BatchRow::filled)
          .containsExactly(tuple("20261125-1", "done", 2));
    }
  }

  @Test
  void a_bench_that_goes_on_from_the_checkpoint_knows_what_one_that_read_everything_knows()
      throws JournalFailed, IOException {
    List<Recorded> entries = threeBatches().entries();
    long furthest = 0;
    for (int length = 0; length <= entries.size(); length++) {
      MemoryJournal journal = journal(entries.subList(0, length));
      BenchProgress whole = BenchProgress.EMPTY.after(
          entries.subList(0, length).stream().map(Recorded::event).toList());
      try (Projections projections = open(journal)) {
        Checkpoint from = projections.checkpoint();
        BenchProgress resumed = from.bench()
            .after(entries.subList((int) from.entries(), length).stream()
                .map(Recorded::event)
                .toList());
        assertThat(resumed).as("after %d entries", length).isEqualTo(whole);
        furthest = from.entries();
      }
      Files.delete(file());
    }
    assertThat(furthest).as("the second of three batches begins after entry").isGreaterThan(15);
  }

  @Test
  void kept_up_to_date_step_by_step_or_built_at_once_it_says_the_same() throws JournalFailed {
    List<Recorded> entries = threeBatches().entries();
    MemoryJournal growing = new MemoryJournal(Purpose.RECORD);
    List<String> stepByStep;
    try (Projections projections = open(growing)) {
      for (Recorded each : entries) {
        append(growing, List.of(each));
        projections.catchUp();
      }
      stepByStep = all(projections);
    }
    try (Projections again = open(growing)) {
      assertThat(all(again)).isEqualTo(stepByStep);
    }
    try (Projections atOnce = Projections.open(folder.resolve("other"), growing)) {
      assertThat(all(atOnce)).isEqualTo(stepByStep);
    }
  }

  @Test
  void projections_of_another_journal_or_of_a_longer_one_are_built_anew() throws JournalFailed {
    List<Recorded> entries = threeBatches().entries();
    try (Projections projections = open(journal(entries))) {
      assertThat(projections.batches(Long.MAX_VALUE, 9)).hasSize(3);
    }
    int second = 17;
    try (Projections shorter = open(journal(entries.subList(0, second)))) {
      assertThat(shorter.batches(Long.MAX_VALUE, 9)).hasSize(1);
    }
    List<Recorded> other = BatchScript.candles("20270101-1", 3, LOTS).entries();
    try (Projections foreign = open(journal(other))) {
      assertThat(foreign.batches(Long.MAX_VALUE, 9))
          .extracting(BatchRow::code)
          .containsExactly("20270101-1");
    }
  }

  @Test
  void a_damaged_file_is_built_anew_without_a_word() throws Exception {
    MemoryJournal journal = journal(threeBatches().entries());
    try (Projections projections = open(journal)) {
      projections.catchUp();
    }
    Files.writeString(file(), "no database, but long enough to look like a file of one".repeat(9));
    try (Projections projections = open(journal)) {
      assertThat(projections.batches(Long.MAX_VALUE, 9)).hasSize(3);
    }
  }

  @Test
  void an_entry_that_cannot_be_read_is_named_and_what_came_before_it_stays() throws JournalFailed {
    MemoryJournal journal = journal(threeBatches().entries());
    try (Projections projections = open(journal)) {
      projections.catchUp();
      journal.append("2026-11-27T09:00:00+01:00", List.of(new EntryText("moon-landed", "{}")));
      org.assertj.core.api.Assertions.assertThatThrownBy(projections::catchUp)
          .isInstanceOf(JournalFailed.class)
          .hasMessageContaining("moon-landed");
    }
  }

  @Test
  void a_batch_under_way_is_listed_and_its_sheet_can_be_read() throws JournalFailed {
    BatchScript script = new BatchScript().start("20261125-1", HarbourLane.CANDLE, 3, LOTS);
    script.prepared().pot("350.2").part(0, "700").waited(Wait.MELT);
    try (Projections projections = open(journal(script.entries()))) {
      assertThat(projections.batch("20261125-1").orElseThrow().ending()).isEqualTo("running");
      assertThat(projections.record("20261125-1").orElseThrow().weighedIn())
          .isEqualTo(Mass.ofGrams("700"));
    }
  }

  private static List<String> all(Projections projections) throws JournalFailed {
    List<String> all = new ArrayList<>();
    for (BatchRow row : projections.batches(Long.MAX_VALUE, 99)) {
      all.add(row.toString());
      all.add(projections.lotsOf(row.code()).toString());
      all.add(projections.record(row.code()).orElseThrow().entries().stream()
          .map(entry -> entry.entry() + " " + entry.event().hashCode())
          .toList()
          .toString());
    }
    all.add(projections.stock(99).toString());
    all.add(projections.checkpoint().toString());
    return all;
  }
}
