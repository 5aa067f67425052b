package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.protocol.formats.ScaleFormats;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BenchProgress;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.journal.CrashPoints;
import candlebench.station.journal.CrashPoints.Point;
import candlebench.station.journal.EntryText;
import candlebench.station.journal.JournalEntry;
import candlebench.station.journal.JournalFailed;
import candlebench.station.journal.JournalFailed.Trouble;
import candlebench.station.journal.MemoryJournal;
import candlebench.station.journal.Purpose;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScriptedLine;
import candlebench.station.view.ShownUnit;
import candlebench.station.view.StationView;
import candlebench.station.view.StationView.PartState;
import candlebench.station.view.Views;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;

class StationTest {
  private final MemoryJournal journal = new MemoryJournal(Purpose.RECORD);

  @Test
  void a_pour_is_guided_from_bytes_to_the_record_with_no_touch_after_the_start() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      assertThat(rig.view().bench().step()).isEqualTo("IDLE");
      assertThat(rig.startOil().done()).isTrue();
      pourOil(rig);
      assertThat(kinds())
          .containsSubsequence(
              "command-taken", "batch-started", "pot-tared", "weight-accepted", "batch-done");
      StationView view = rig.view();
      assertThat(view.record().entries()).isEqualTo(journal.length());
      assertThat(view.record().head()).isEqualTo(journal.head());
      assertThat(view.bench().parts()).singleElement().satisfies(part -> {
        assertThat(part.state()).isEqualTo(PartState.DONE);
        assertThat(part.actual()).startsWith("56.0");
      });
    }
  }

  @Test
  void a_scale_is_shown_as_it_shows_itself() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.show("12.3", 1);
      assertThat(rig.view().scales()).singleElement().satisfies(scale -> {
        assertThat(scale.name()).isEqualTo("Scale 1");
        assertThat(scale.link()).isEqualTo("live");
        assertThat(scale.shown()).isEqualTo("12.30");
        assertThat(scale.unit()).isEqualTo("g");
        assertThat(scale.stability()).isEqualTo("stable");
        assertThat(scale.ageMillis()).isZero();
        assertThat(scale.trouble()).isEmpty();
      });
      rig.send("OL,+9999999E+19\r\n");
      rig.tick();
      assertThat(rig.view().scales().get(0).shown()).isEmpty();
      assertThat(rig.view().scales().get(0).stability()).isEqualTo("overload");
      rig.wires.get(0).unplug();
      rig.await(view -> view.scales().get(0).link().equals("lost"));
      assertThat(rig.view().scales().get(0).trouble())
          .hasValueSatisfying(say -> assertThat(say.key()).isEqualTo("scale.lost"));
      rig.wires.get(0).plugIn();
      rig.show("12.4", 1);
      rig.await(view -> view.scales().get(0).link().equals("live"));
    }
  }

  @Test
  void print_on_the_scale_goes_on_and_the_record_says_so() throws Exception {
    try (StationRig rig = StationRig.asking(journal)) {
      rig.startOil();
      rig.show("0.0", 10);
      rig.show("350.2", 50);
      rig.pour(350.2, 404.2, 0.5);
      rig.show("404.2", 40);
      assertThat(rig.view().bench().confirm()).isPresent();
      rig.send(StationRig.frame("404.2"));
      rig.show("404.2", 3);
      assertThat(rig.view().bench().parts()).singleElement().satisfies(part -> {
        assertThat(part.state()).isEqualTo(PartState.DONE);
        assertThat(part.actual()).startsWith("54.0");
      });
      assertThat(journal.entries())
          .filteredOn(entry -> entry.kind().equals("weight-accepted"))
          .singleElement()
          .satisfies(entry -> assertThat(entry.body()).contains("\"PRINT_KEY\""));
      assertThat(kinds()).containsSubsequence("pot-tared", "command-taken", "weight-accepted");
      assertThat(Replay.of(rig.trace(), rig.config, entries -> BenchProgress.EMPTY))
          .singleElement()
          .satisfies(piece -> assertThat(piece.entries()).isEqualTo(texts(journal, 0)));
    }
  }

  @Test
  void the_disk_comes_before_the_state_the_state_before_the_effects_and_these_before_the_view()
      throws Exception {
    List<String> order = new ArrayList<>();
    List<StationRig> rigs = new ArrayList<>();
    CrashPoints points = point -> {
      if (!rigs.isEmpty())
        order.add(
            point + " " + journal.length() + " " + rigs.get(0).view().record().entries());
    };
    try (StationRig rig = StationRig.on(journal, points)) {
      rig.show("0.0", 2);
      rigs.add(rig);
      rig.startOil();
    }
    assertThat(order.subList(0, 5))
        .containsExactly(
            Point.BEFORE_APPEND + " 0 0",
            Point.AFTER_APPEND + " 2 0",
            Point.AFTER_STATE + " 2 0",
            Point.AFTER_EFFECTS + " 2 0",
            Point.AFTER_VIEW + " 2 2");
  }

  @Test
  void after_a_restart_the_bench_is_at_the_same_step_and_what_was_folded_is_what_lived()
      throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      rig.show("0.0", 10);
      rig.show("350.2", 50);
      rig.pour(350.2, 380.2, 0.5);
      rig.show("380.2", 15);
      String step = rig.view().bench().step();
      String net = rig.view().bench().weighing().orElseThrow().net();
      assertThat(net).isEqualTo("30.00");
      MemoryJournal found = journal.reopened();
      try (StationRig again = StationRig.later(rig, found)) {
        again.show("380.2", 15);
        assertThat(again.view().bench().step()).isEqualTo(step);
        assertThat(again.view().bench().weighing().orElseThrow().net()).isEqualTo(net);
        assertThat(again.view().bench().batch()).isEqualTo(rig.view().bench().batch());
        again.pour(380.2, 406.2, 0.5);
        again.show("406.2", 60);
        assertThat(found.entries())
            .extracting(JournalEntry::kind)
            .containsOnlyOnce("weight-accepted", "batch-done");
      }
    }
  }

  @Test
  void a_tap_sent_again_is_answered_as_the_first_time_and_done_once_even_after_a_restart()
      throws Exception {
    MakerCommand start =
        new MakerCommand.StartBatch("harbour-lane-oil", 1, "Robin", java.util.Map.of());
    try (StationRig rig = StationRig.on(journal)) {
      assertThat(rig.station().say("tap", start).done()).isTrue();
      assertThat(rig.station().say("tap", start).done()).isTrue();
      assertThat(rig.station().say("other", start).words().key()).isEqualTo("refused.batch-runs");
      assertThat(rig.station().say("other", start).words().key()).isEqualTo("refused.batch-runs");
      assertThat(kinds()).containsExactly("command-taken", "batch-started");
      MemoryJournal found = journal.reopened();
      try (StationRig again = StationRig.later(rig, found)) {
        assertThat(again.station().say("tap", start).done()).isTrue();
        assertThat(found.length()).isEqualTo(2);
      }
    }
  }

  @Test
  void another_command_under_a_used_id_is_refused_also_after_a_restart() throws Exception {
    MakerCommand start =
        new MakerCommand.StartBatch("harbour-lane-oil", 1, "Robin", java.util.Map.of());
    MakerCommand abandon = new MakerCommand.Abandon("spilt");
    try (StationRig rig = StationRig.on(journal)) {
      assertThat(rig.station().say("tap", start).done()).isTrue();
      assertThat(rig.station().say("tap", abandon).words().key()).isEqualTo("station.id-used");
      try (StationRig again = StationRig.later(rig, journal.reopened())) {
        assertThat(again.station().say("tap", abandon).words().key()).isEqualTo("station.id-used");
        assertThat(again.station().say("another tap", abandon).done()).isTrue();
      }
    }
  }

  @Test
  void what_a_full_disk_refuses_is_not_done_is_said_and_can_be_said_again() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      journal.fail(Trouble.FULL);
      MakerCommand start =
          new MakerCommand.StartBatch("harbour-lane-oil", 1, "Robin", java.util.Map.of());
      Bench.Answer refused = rig.station().say("tap", start);
      assertThat(refused.done()).isFalse();
      assertThat(refused.words().key()).isEqualTo("record-trouble.full");
      assertThat(rig.view().bench().step()).isEqualTo("IDLE");
      assertThat(rig.view().record().trouble())
          .contains(Views.say(refused.words(), ShownUnit.GRAM));
      journal.mend();
      assertThat(rig.station().say("tap", start).done()).isTrue();
      assertThat(rig.view().record().trouble()).isEmpty();
      assertThat(rig.view().bench().step()).isEqualTo("PLACE_POT");
    }
  }

  @Test
  void a_weight_that_a_full_disk_refuses_is_taken_once_there_is_room_and_only_once()
      throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      rig.show("0.0", 10);
      rig.show("350.2", 50);
      rig.pour(350.2, 406.2, 0.5);
      journal.fail(Trouble.FULL);
      long before = journal.length();
      rig.show("406.2", 100);
      assertThat(journal.length()).isEqualTo(before);
      assertThat(journal.refusals())
          .as("tried again about once a second, not with every frame")
          .isBetween(3, 10);
      assertThat(rig.view().record().trouble()).isPresent();
      assertThat(rig.view().bench().step()).isEqualTo("ADD_PART");
      assertThat(rig.view().scales().get(0).shown()).isEqualTo("406.20");
      journal.mend();
      rig.show("406.2", 60);
      assertThat(kinds()).containsOnlyOnce("weight-accepted");
      assertThat(rig.view().record().trouble()).isEmpty();
    }
  }

  @Test
  void an_error_of_ours_stops_the_bench_says_so_and_leaves_the_record_as_it_was() throws Exception {
    boolean[] wrong = {false};
    CrashPoints points = point -> {
      if (wrong[0] && point == Point.BEFORE_APPEND)
        throw new IllegalStateException("made for this test");
    };
    try (StationRig rig = StationRig.on(journal, points)) {
      rig.show("1.0", 2);
      wrong[0] = true;
      Bench.Answer answer = rig.startOil();
      assertThat(answer.done()).isFalse();
      assertThat(answer.words().key()).isEqualTo("station.stopped");
      wrong[0] = false;
      assertThat(rig.view().record().trouble())
          .hasValueSatisfying(say -> assertThat(say.key()).isEqualTo("station.stopped"));
      assertThat(rig.view().bench().now().key()).isEqualTo("station.stopped");
      assertThat(rig.startOil().words().key()).isEqualTo("station.stopped");
      for (int i = 0; i < 3 * Mailbox.MOST_WAITING; i++) rig.send(StationRig.frame("2.0"));
      assertThat(journal.length()).isZero();
    }
  }

  @Test
  void a_page_in_trouble_of_its_own_does_not_stop_the_bench() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      int[] told = {0};
      rig.station().watch(() -> {
        throw new IllegalStateException("a page's own");
      });
      Bench.Watch watch = rig.station().watch(() -> told[0]++);
      rig.show("1.0", 3);
      int before = told[0];
      assertThat(before).isGreaterThanOrEqualTo(3);
      watch.close();
      rig.show("2.0", 3);
      assertThat(told[0]).isEqualTo(before);
      assertThat(rig.view().scales().get(0).shown()).isEqualTo("2.00");
    }
  }

  @Test
  void every_reading_makes_a_view_and_a_tick_only_where_something_changed() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.show("1.0", 1);
      rig.pass(Duration.ofSeconds(3));
      rig.tick();
      long revision = rig.view().revision();
      for (int i = 0; i < 20; i++) {
        rig.pass(Duration.ofMillis(100));
        rig.tick();
      }
      assertThat(rig.view().revision()).isEqualTo(revision);
      for (int i = 0; i < 5; i++) {
        rig.send(StationRig.frame("1.0"));
        rig.tick();
      }
      assertThat(rig.view().revision()).isBetween(revision + 5, revision + 6);
    }
  }

  @Test
  void a_reader_waits_while_the_bench_is_behind_and_nothing_is_dropped() throws Exception {
    CountDownLatch held = new CountDownLatch(1);
    CountDownLatch holding = new CountDownLatch(1);
    CrashPoints points = point -> {
      if (point != Point.BEFORE_APPEND) return;
      holding.countDown();
      awaitQuietly(held);
    };
    int many = 3 * Mailbox.MOST_WAITING;
    try (StationRig rig = StationRig.on(journal, points)) {
      Thread tap = new Thread(rig::startOil);
      tap.start();
      assertThat(holding.await(10, TimeUnit.SECONDS)).isTrue();
      for (int i = 0; i < many; i++) rig.wires.get(0).send(StationRig.frame("1.0"));
      rig.pass(Duration.ofMillis(700));
      held.countDown();
      rig.wires.get(0).awaitAllRead();
      tap.join();
      rig.tick();
      assertThat(rig.trace().lines().filter(line -> line.contains(" h 0 ST,"))).hasSize(many);
      assertThat(rig.view().scales().get(0).framesRead()).isEqualTo(many);
    }
  }

  @Test
  void a_bench_that_is_behind_says_so() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.show("1.0", 1);
      ScaleDial dial = new ScaleDial(
          "Scale 1", rig.config.scales().get(0), rig.station().links().get(0).counters());
      dial.changed(candlebench.station.link.LinkReport.of(candlebench.station.link.LinkState.LIVE));
      candlebench.protocol.Frame frame = new candlebench.protocol.Frame(
          0,
          StationRig.frame("1.0").getBytes(java.nio.charset.StandardCharsets.US_ASCII),
          rig.now());
      candlebench.protocol.Decoded decoded = ScaleFormats.of("and").decode(frame);
      dial.heard(frame, decoded, java.util.Optional.empty(), rig.now().nanos() + 400_000_000L);
      assertThat(dial.view(rig.now().nanos()).trouble()).isEmpty();
      dial.heard(frame, decoded, java.util.Optional.empty(), rig.now().nanos() + 600_000_000L);
      assertThat(dial.view(rig.now().nanos()).trouble())
          .hasValueSatisfying(say -> assertThat(say.key()).isEqualTo("scale.behind"));
    }
  }

  @Test
  void the_same_inputs_played_again_give_the_same_entries_byte_for_byte() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      rig.say(new MakerCommand.GoOn());
      pourOil(rig);
      rig.startOil();
      rig.show("0.0", 15);
      rig.send("ST,+0A012.30  g\r\n");
      rig.show("351.0", 15);
      journal.fail(Trouble.FULL);
      rig.show("351.0", 25);
      journal.mend();
      rig.show("351.0", 25);
      rig.say(new MakerCommand.Abandon("test of \"words\" \\ über alles"));
      List<EntryText> played = played(rig.trace(), rig.config, entries -> BenchProgress.EMPTY);
      assertThat(played).isEqualTo(texts(journal, 0));
      assertThat(played)
          .extracting(EntryText::kind)
          .contains("pot-tared", "weight-accepted", "batch-abandoned");
    }
  }

  @Test
  void after_a_restart_the_trace_begins_at_the_entry_where_the_record_stood() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      rig.show("0.0", 10);
      rig.show("350.2", 50);
    }
    MemoryJournal found = journal.reopened();
    long before = found.length();
    BenchProgress known = Recollection.of(journal.reopened()).progress();
    try (StationRig rig = StationRig.on(found)) {
      rig.show("350.2", 20);
      rig.pour(350.2, 406.2, 0.5);
      rig.show("406.2", 60);
      assertThat(played(rig.trace(), rig.config, entries -> {
            assertThat(entries).isEqualTo(before);
            return known;
          }))
          .isEqualTo(texts(found, before))
          .isNotEmpty();
    }
  }

  @Test
  void a_long_trace_begins_anew_at_a_quiet_moment_and_can_be_played_from_there() throws Exception {
    try (StationRig rig = StationRig.on(journal)) {
      rig.startOil();
      pourOil(rig);
      long entries = journal.length();
      BenchProgress known = Recollection.of(journal.reopened()).progress();
      String rubbish = "X".repeat(240) + "\r\n";
      for (int length = 0; length <= InputTrace.LONG_PIECE; length += rubbish.length())
        rig.send(rubbish);
      rig.tick();
      assertThat(rig.trace()).containsOnlyOnce("# from entry ");
      rig.pass(Duration.ofSeconds(70));
      rig.tick();
      // A tick counts as dealt with before the new piece begins; the next one comes after that.
      rig.tick();
      assertThat(rig.trace()).contains("# from entry " + entries + " at ");
      rig.startOil();
      rig.show("0.0", 10);
      rig.show("350.2", 50);
      String newest = rig.trace().substring(rig.trace().lastIndexOf("# from entry "));
      assertThat(played(newest, rig.config, at -> known))
          .isEqualTo(texts(journal, entries))
          .isNotEmpty();
    }
  }

  @Test
  void a_trace_line_that_cannot_be_played_is_named() {
    StationConfig config = StationConfig.of(
        Purpose.RECORD,
        List.of(ScaleSettings.of(new ScriptedLine(), ScaleFormats.of("and"))),
        HarbourLane.all(),
        ZoneOffset.UTC);
    String start = "# from entry 0 at 2026-11-25T08:00:00Z 5\n";
    assertThatThrownBy(() -> Replay.of("1 t\n", config, entries -> BenchProgress.EMPTY))
        .hasMessageContaining("line 1");
    assertThatThrownBy(
            () -> Replay.of(start + "1 t\n1 q 0 x\n", config, entries -> BenchProgress.EMPTY))
        .hasMessageContaining("line 3 of the trace cannot be played: 1 q 0 x");
    assertThat(Replay.of(
            "# its beginning is no longer kept, so\n1 t\n", config, entries -> BenchProgress.EMPTY))
        .isEmpty();
  }

  private static List<EntryText> played(
      String dump, StationConfig config, LongFunction<BenchProgress> known) {
    return Replay.of(dump, config, known).stream()
        .flatMap(piece -> piece.entries().stream())
        .toList();
  }

  @Test
  void practice_is_never_run_on_the_record() {
    StationConfig config = StationConfig.of(
        Purpose.PRACTICE,
        List.of(ScaleSettings.of(new ScriptedLine(), ScaleFormats.of("and"))),
        HarbourLane.all(),
        ZoneOffset.UTC);
    assertThatThrownBy(() -> Station.start(config, journal))
        .isInstanceOfSatisfying(
            JournalFailed.class,
            failed -> assertThat(failed.trouble()).isEqualTo(Trouble.OTHER_PURPOSE));
  }

  @Test
  void a_bench_without_scales_or_with_two_of_one_name_is_refused_with_what_to_do() {
    ScaleSettings scale = ScaleSettings.of(new ScriptedLine(), ScaleFormats.of("and"));
    ScaleSettings named = new ScaleSettings(
        scale.line(),
        scale.format(),
        java.util.Optional.of("Scale 1"),
        scale.division(),
        scale.capacity(),
        scale.unit(),
        scale.ask());
    assertThatThrownBy(
            () -> StationConfig.of(Purpose.RECORD, List.of(), HarbourLane.all(), ZoneOffset.UTC))
        .hasMessageContaining("--scale");
    assertThatThrownBy(() -> StationConfig.of(
            Purpose.RECORD, List.of(scale, scale, named), HarbourLane.all(), ZoneOffset.UTC))
        .hasMessageContaining("name=");
  }

  private static void pourOil(StationRig rig) {
    rig.show("0.0", 10);
    rig.show("350.2", 50);
    rig.pour(350.2, 406.2, 0.5);
    rig.show("406.2", 60);
  }

  private List<String> kinds() {
    return journal.entries().stream().map(JournalEntry::kind).toList();
  }

  private static List<EntryText> texts(MemoryJournal journal, long after) {
    return journal.entries().stream()
        .filter(entry -> entry.sequence() > after)
        .map(entry -> new EntryText(entry.kind(), entry.body()))
        .toList();
  }

  private static void awaitQuietly(CountDownLatch latch) {
    try {
      if (!latch.await(20, TimeUnit.SECONDS)) throw new AssertionError("never let go");
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }
}
