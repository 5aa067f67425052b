package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Load;
import candlebench.station.batch.Loss;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.PotShare;
import candlebench.station.batch.Product;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.Recipes;
import candlebench.station.batch.VesselKind;
import candlebench.station.batch.Waits;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.PotTaken;
import candlebench.station.guidance.GuidanceEvent.PotTared;
import candlebench.station.guidance.GuidanceEvent.Told;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.GuidanceEvent.WorkDivided;
import candlebench.station.guidance.GuidanceEvent.WorkEnded;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.PotStanding;
import candlebench.station.guidance.PotStanding.Doing;
import candlebench.station.guidance.Prompt;
import candlebench.station.guidance.Words;
import candlebench.station.journal.EntryJson;
import candlebench.station.journal.Projections;
import candlebench.station.journal.Purpose;
import candlebench.station.journal.RecordExport;
import candlebench.station.journal.SqliteJournal;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.PotEntries;
import candlebench.station.record.Recorded;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two pots that take turns on one scale. */
class SeveralPotsTest {
  private static final Recipe CANDLE = new Recipe(
      "candle",
      "candle",
      List.of(Recipes.WAX, Recipes.part("oil", PartKind.OIL, Load.ofWax("8"))),
      new VesselKind("glass", Mass.ofGrams("200"), Tolerance.ofGrams("2", "3")),
      true,
      Loss.NONE,
      new Waits(Duration.ofMinutes(10), Duration.ofMinutes(1), Duration.ZERO),
      "");

  private static final String START = "2026-11-25T09:00:00+01:00";
  private static final Mass POT_A = Mass.ofGrams("400");
  private static final Mass POT_B = Mass.ofGrams("436");

  /** Two vessels to a pot, in turns. */
  private record InTurns() implements Product {
    @Override
    public String id() {
      return "candle";
    }

    @Override
    public String name() {
      return "candle";
    }

    @Override
    public Recipe forVessels(int vessels) {
      return CANDLE;
    }

    @Override
    public Optional<String> refusal(int vessels) {
      return Optional.empty();
    }

    @Override
    public List<PotShare> shares(int vessels) {
      return java.util.stream.IntStream.range(0, vessels / 2)
          .mapToObj(share -> new PotShare(share % 2 == 0 ? "Pot A" : "Pot B", 2, CANDLE))
          .toList();
    }
  }

  private static BenchSetup setup(Mass potB) {
    return new BenchSetup(
        List.of(BenchSetup.Scale.named("scale")),
        List.of(
            new BenchSetup.Pot("Pot A", POT_A, Mass.ZERO),
            new BenchSetup.Pot("Pot B", potB, Mass.ZERO)),
        List.of(new InTurns()),
        BenchSetup.Timing.USUAL,
        ZoneOffset.UTC);
  }

  private final VirtualBench bench = new VirtualBench(VirtualBench.Make.of(setup(POT_B)));
  private Mass inA = POT_A;
  private Mass inB = POT_B;

  private void begun(int vessels) {
    bench.run(3);
    bench.start("candle", vessels);
    bench.run(1);
  }

  private void on(String pot, Mass mass) {
    bench.pan.putOn(pot, mass);
  }

  private Mass off(String pot) {
    Mass was = bench.pan.liftOff(pot);
    bench.run(2);
    return was;
  }

  private WeightAccepted add() {
    int before = bench.all(WeightAccepted.class).size();
    bench.pan.add(bench.prompt().weighing().orElseThrow().target());
    for (int tenth = 0; tenth < 200 && bench.all(WeightAccepted.class).size() == before; tenth++)
      bench.run(0.1);
    assertThat(bench.all(WeightAccepted.class)).as("%s", bench.prompt()).hasSize(before + 1);
    return bench.last(WeightAccepted.class);
  }

  private String inHand() {
    return bench.state().progress().batch().orElseThrow().started().code();
  }

  private List<PotStanding> pots() {
    return bench.state().pots(bench.now());
  }

  /** Both pots have their wax, which melts. */
  private void bothMelt(int vessels) {
    begun(vessels);
    on("A", POT_A);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    add();
    bench.runUntil(Prompt.Kind.MELT, 10);
    inA = off("A");
    on("B", inB);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    add();
    bench.runUntil(Prompt.Kind.MELT, 10);
    inB = off("B");
  }

  private void fillTwo() {
    for (int vessel = 0; vessel < 2; vessel++) {
      on("glass", Mass.ofGrams("150"));
      bench.runUntil(Prompt.Kind.FILL_VESSEL, 15);
      add();
      off("glass");
    }
  }

  @Test
  void while_one_pot_melts_the_other_is_put_on_and_known_by_its_empty_weight() {
    bothMelt(4);
    assertThat(bench.all(WorkDivided.class)).hasSize(1);
    assertThat(bench.all(BatchStarted.class))
        .extracting(BatchStarted::code)
        .containsExactly("20261125-1", "20261125-2");
    assertThat(bench.all(PotTared.class))
        .extracting(PotTared::pot)
        .containsExactly("Pot A", "Pot B");
    assertThat(pots()).extracting(PotStanding::pot).containsExactly("Pot B", "Pot A");
    assertThat(pots()).extracting(PotStanding::doing).containsExactly(Doing.IN_HAND, Doing.WAITING);
    assertThat(pots().get(1).timer()).isPresent();
  }

  @Test
  void a_pot_whose_wait_is_over_calls_and_is_known_by_what_it_weighed() {
    bothMelt(4);
    bench.run(600);
    assertThat(pots()).extracting(PotStanding::doing).containsExactly(Doing.IN_HAND, Doing.CALLS);
    on("A", inA);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(inHand()).isEqualTo("20261125-1");
    assertThat(bench.last(PotTaken.class).told()).isEqualTo(Told.BY_WEIGHT);
    add();
    bench.runUntil(Prompt.Kind.MIX, 10);
    inA = off("A");
    on("B", inB);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(inHand()).isEqualTo("20261125-2");
    add();
    bench.runUntil(Prompt.Kind.MIX, 10);
    inB = off("B");
    bench.run(61);
    on("B", inB);
    bench.run(5);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.PLACE_VESSEL);
    off("B");
    fillTwo();
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    assertThat(bench.prompt().now().key()).isEqualTo("now.next-pot");
    on("A", inA);
    bench.runUntil(Prompt.Kind.PLACE_VESSEL, 15);
    off("A");
    fillTwo();
    assertThat(bench.all(BatchDone.class)).hasSize(2);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.DONE);
    assertThat(bench.replayed()).isEqualTo(bench.events);
    assertThat(oils()).isEqualTo(2);
    for (String code : List.of("20261125-1", "20261125-2")) {
      BatchRecord record = BatchRecord.of(PotEntries.of(code, recorded()));
      assertThat(record.code()).isEqualTo(code);
      assertThat(record.fills()).hasSize(2);
      assertThat(record.standing()).hasSize(4);
      assertThat(record.inPot()).hasSize(2);
      assertThat(record.end()).isPresent();
    }
  }

  private List<Recorded> recorded() {
    List<Recorded> entries = new ArrayList<>();
    for (GuidanceEvent event : bench.events)
      entries.add(new Recorded(entries.size() + 1, START, event));
    return entries;
  }

  @Test
  void the_lists_beside_the_record_and_a_table_of_weighings_know_both_pots_apart(
      @TempDir Path folder) throws Exception {
    a_pot_whose_wait_is_over_calls_and_is_known_by_what_it_weighed();
    Path file = folder.resolve("record.db");
    try (SqliteJournal journal = SqliteJournal.open(file, Purpose.RECORD);
        Projections lists = Projections.open(Projections.beside(file), journal)) {
      for (GuidanceEvent event : bench.events) {
        journal.append(START, List.of(EntryJson.text(event)));
        if (event instanceof PotTaken) lists.catchUp();
      }
      for (String code : List.of("20261125-1", "20261125-2")) {
        assertThat(lists.batch(code).orElseThrow().ending()).isEqualTo("done");
        assertThat(lists.batch(code).orElseThrow().filled()).isEqualTo(2);
        assertThat(lists.record(code).orElseThrow().fills()).hasSize(2);
      }
      List<BatchRecord> each = new ArrayList<>();
      RecordExport.eachBatch(reader -> journal.read(1, reader), each::add);
      assertThat(each)
          .extracting(BatchRecord::code)
          .containsExactlyInAnyOrder("20261125-1", "20261125-2");
      assertThat(each).allSatisfy(batch -> assertThat(batch.fills()).hasSize(2));
    }
  }

  private long oils() {
    return bench.all(WeightAccepted.class).stream()
        .filter(weight -> weight.name().equals("oil"))
        .count();
  }

  @Test
  void the_wrong_pot_brought_back_after_the_melt_is_its_own_weighing_and_no_oil_is_offered_twice() {
    bothMelt(4);
    bench.run(600);
    on("A", inA);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    add();
    bench.runUntil(Prompt.Kind.MIX, 10);
    inA = off("A");
    on("B", inB);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    off("B");
    on("A", inA);
    bench.run(5);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.ASK);
    Prompt.Option isA = bench.prompt().choices().get(0);
    assertThat(isA.label()).isEqualTo(Words.of("choice.is-pot").and("pot", "Pot A"));
    assertThat(bench.say(new MakerCommand.Choose(isA.id(), ""))).isEmpty();
    assertThat(inHand()).isEqualTo("20261125-1");
    bench.run(1);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.MIX);
    off("A");
    on("B", inB);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(inHand()).isEqualTo("20261125-2");
    add();
    assertThat(oils()).isEqualTo(2);
  }

  @Test
  void put_on_where_an_empty_pot_or_a_vessel_is_wanted_another_pot_is_no_tare() {
    bothMelt(6);
    bench.run(600);
    on("A", inA);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    add();
    inA = off("A");
    bench.run(61);
    assertThat(bench.prompt().step()).isEqualTo(Prompt.Kind.PLACE_VESSEL);
    on("B", inB);
    bench.run(6);
    assertThat(bench.all(GuidanceEvent.VesselTared.class)).isEmpty();
    assertThat(bench.prompt().detail().orElseThrow())
        .isEqualTo(Words.of("detail.that-is-pot").and("pot", "Pot B"));
    off("B");
    fillTwo();
    bench.say(new MakerCommand.Choose("next-3", ""));
    assertThat(bench.all(BatchStarted.class)).hasSize(3);
    bench.run(1);
    on("B", inB);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(inHand()).isEqualTo("20261125-2");
    assertThat(bench.all(PotTared.class)).hasSize(2);
  }

  @Test
  void pots_that_cannot_be_told_apart_by_weight_are_asked_for() {
    VirtualBench alike = new VirtualBench(VirtualBench.Make.of(setup(POT_A)));
    alike.run(3);
    alike.start("candle", 4);
    alike.run(1);
    for (int pot = 0; pot < 2; pot++) {
      alike.pan.putOn("pot", POT_A);
      alike.runUntil(Prompt.Kind.ADD_PART, 15);
      alike.pan.add(alike.prompt().weighing().orElseThrow().target());
      alike.runUntil(Prompt.Kind.MELT, 15);
      alike.pan.liftOff("pot");
      alike.run(2);
    }
    Mass full = POT_A.plus(Mass.ofGrams("370.4"));
    alike.pan.putOn("pot", full);
    alike.run(10);
    assertThat(alike.all(PotTaken.class)).isEmpty();
    assertThat(alike.prompt().choices())
        .extracting(Prompt.Option::id)
        .containsExactly("pot-20261125-1");
    assertThat(alike.say(new MakerCommand.Choose("pot-20261125-1", ""))).isEmpty();
    assertThat(alike.last(PotTaken.class).told()).isEqualTo(Told.BY_MAKER);
  }

  @Test
  void timers_of_pots_aside_and_which_pot_is_in_hand_survive_a_restart() {
    bothMelt(4);
    bench.run(60);
    bench.restart(Duration.ofMinutes(5));
    bench.run(3);
    assertThat(pots()).extracting(PotStanding::pot).containsExactly("Pot B", "Pot A");
    long left = pots().get(1).timer().orElseThrow().remainingNanos();
    assertThat(left / 1e9).isCloseTo(600 - 60 - 300 - 40, within(25.0));
    bench.run(left / 1e9 + 1);
    assertThat(pots().get(1).doing()).isEqualTo(Doing.CALLS);
    on("A", inA);
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    assertThat(inHand()).isEqualTo("20261125-1");
    assertThat(bench.replayed()).isEqualTo(bench.events);
  }

  @Test
  void giving_up_one_pot_begins_no_more_and_leaves_the_others_to_be_finished() {
    bothMelt(6);
    assertThat(bench.say(new MakerCommand.StartBatch("candle", 2, "Robin", java.util.Map.of())))
        .isPresent();
    assertThat(bench.say(new MakerCommand.Abandon("glass broke"))).isEmpty();
    assertThat(bench.all(WorkEnded.class)).hasSize(1);
    assertThat(pots()).extracting(PotStanding::pot).containsExactly("Pot A");
    on("A", inA);
    bench.run(3);
    assertThat(inHand()).isEqualTo("20261125-1");
  }
}
