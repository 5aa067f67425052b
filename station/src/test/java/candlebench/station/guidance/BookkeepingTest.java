package candlebench.station.guidance;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Mass;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.GuidanceEvent.BatchStarted;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import candlebench.station.guidance.GuidanceEvent.LotChanged;
import candlebench.station.guidance.GuidanceEvent.LotReceived;
import candlebench.station.guidance.GuidanceEvent.Noted;
import candlebench.station.guidance.GuidanceEvent.ScaleChecked;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

class BookkeepingTest {
  private static final String OIL = "Quay Cedar (invented)";

  private static BenchRig pouringOil() {
    BenchRig bench = new BenchRig(BenchSetup.of(HarbourLane.all()), 10);
    bench.rest(1);
    bench.start("harbour-lane-oil", 1);
    bench.rest(1);
    bench.put("350.2");
    bench.rest(5);
    bench.pour(4, 5);
    return bench;
  }

  private static String refusal(BenchRig bench) {
    return bench.effects.get(bench.effects.size() - 1)
            instanceof GuidanceEffect.CommandRefused refused
        ? refused.words().key()
        : "";
  }

  @Test
  void a_bottle_that_runs_out_in_mid_pour_leaves_how_much_came_from_it() {
    BenchRig bench = pouringOil();
    bench.rest(1);
    bench.say(new MakerCommand.ChangeLot(OIL, "Q-32"));
    LotChanged changed = bench.last(LotChanged.class);
    assertThat(changed.from()).isEmpty();
    assertThat(changed.poured()).isBetween(Mass.ofGrams("19.5"), Mass.ofGrams("20.5"));

    bench.put("406.2");
    bench.rest(8);
    assertThat(bench.last(WeightAccepted.class).lot()).isEqualTo("Q-32");
  }

  @Test
  void a_change_of_lot_outlasts_the_undo_of_the_step_before_it() {
    BenchRig bench = new BenchRig(BenchSetup.of(HarbourLane.all()), 10);
    bench.rest(1);
    bench.start("harbour-lane-oil", 1);
    bench.put("350.2");
    bench.rest(4);
    bench.say(new MakerCommand.ChangeLot(OIL, "Q-32"));
    bench.say(new MakerCommand.Undo());
    assertThat(bench.state().progress().running().orElseThrow().started().lots())
        .containsEntry(OIL, "Q-32");
  }

  @Test
  void a_lot_cannot_change_without_a_batch_nor_while_the_weight_so_far_is_unknown() {
    BenchRig idle = new BenchRig(BenchSetup.of(HarbourLane.all()), 10);
    idle.say(new MakerCommand.ChangeLot(OIL, "Q-32"));
    assertThat(refusal(idle)).isEqualTo("refused.no-batch");

    BenchRig bench = pouringOil();
    bench.give(new GuidanceInput.LineChanged(0, false, bench.now()));
    bench.say(new MakerCommand.ChangeLot(OIL, "Q-32"));
    assertThat(refusal(bench)).isEqualTo("refused.no-weight-for-lot");
    assertThat(bench.all(LotChanged.class)).isEmpty();
  }

  @Test
  void a_scale_checked_with_a_known_mass_leaves_what_it_showed_and_nothing_made_good() {
    BenchRig bench = new BenchRig(BenchSetup.of(HarbourLane.all()), 10);
    bench.rest(2);
    bench.put("200.1");
    bench.rest(3);
    bench.say(new MakerCommand.CheckScale("scale", Mass.ofGrams("200"), "Robin"));
    ScaleChecked checked = bench.last(ScaleChecked.class);
    assertThat(checked.known()).isEqualTo(Mass.ofGrams("200"));
    assertThat(checked.shown()).isEqualTo(Mass.ofGrams("200.1"));
    assertThat(checked.indication().toString()).isEqualTo("200.1 g");
    assertThat(checked.scaleName()).isEqualTo("scale");
    assertThat(checked.person()).isEqualTo("Robin");
  }

  @Test
  void a_check_is_refused_in_a_batch_unsettled_on_an_empty_scale_or_on_one_that_is_not_there() {
    MakerCommand check = new MakerCommand.CheckScale("scale", Mass.ofGrams("200"), "");
    BenchRig bench = pouringOil();
    bench.rest(3);
    bench.say(check);
    assertThat(refusal(bench)).isEqualTo("refused.check-between-batches");

    BenchRig idle = new BenchRig(BenchSetup.of(HarbourLane.all()), 10);
    idle.say(check);
    assertThat(refusal(idle)).isEqualTo("refused.not-settled");
    idle.rest(3);
    idle.say(check);
    assertThat(refusal(idle)).isEqualTo("refused.nothing-to-check-by");
    for (String other : List.of("0.1", "99.9", "400.1")) {
      idle.put(other);
      idle.rest(3);
      idle.say(check);
      assertThat(refusal(idle)).isEqualTo("refused.nothing-to-check-by");
      idle.put("0");
      idle.rest(3);
    }
    idle.put("200.1");
    idle.rest(3);
    idle.say(new MakerCommand.CheckScale("other", Mass.ofGrams("200"), ""));
    assertThat(refusal(idle)).isEqualTo("refused.no-such-scale");
    idle.say(new MakerCommand.CheckScale("scale", Mass.ZERO, ""));
    assertThat(refusal(idle)).isEqualTo("refused.no-weight");
    assertThat(idle.all(ScaleChecked.class)).isEmpty();
  }

  @Test
  void deliveries_remarks_and_corrections_are_written_down_at_any_stage() {
    BenchRig bench = pouringOil();
    bench.say(new MakerCommand.ReceiveLot(
        OIL, " Q-33 ", Mass.ofGrams("2500"), "Dock Street Oils", "Robin"));
    bench.say(new MakerCommand.Note("20261125-1", "cold room", "Robin"));
    bench.say(new MakerCommand.Correct(
        "20261125-1", 3, Correctable.LOT, "", "", "Q-31", "forgot to scan", "Robin"));
    assertThat(bench.last(LotReceived.class).lot()).isEqualTo("Q-33");
    assertThat(bench.last(Noted.class).text()).isEqualTo("cold room");
    assertThat(bench.last(Corrected.class).reason()).isEqualTo("forgot to scan");
  }

  @Test
  void a_correction_needs_a_reason_and_a_weight_waits_until_its_batch_is_done() {
    BenchRig bench = pouringOil();
    bench.say(
        new MakerCommand.Correct("20261125-1", 3, Correctable.LOT, "", "", "Q-31", "  ", "Robin"));
    assertThat(refusal(bench)).isEqualTo("refused.reason");
    bench.say(new MakerCommand.Correct(
        "20261125-1", 3, Correctable.WEIGHT, "", "56", "65", "digits swapped", "Robin"));
    assertThat(refusal(bench)).isEqualTo("refused.correct-when-done");
    bench.say(new MakerCommand.Correct(
        "20261124-9", 3, Correctable.WEIGHT, "", "56", "65 g", "digits swapped", "Robin"));
    assertThat(refusal(bench)).isEqualTo("refused.correct-weight");
    assertThat(bench.all(Corrected.class)).isEmpty();
  }

  @Test
  void the_code_carries_the_date_at_the_bench_not_that_of_greenwich() {
    BenchSetup usual = BenchSetup.of(HarbourLane.all());
    BenchSetup honolulu = new BenchSetup(
        usual.scales(), List.of(), usual.products(), usual.timing(), ZoneId.of("Pacific/Honolulu"));
    BenchRig bench = new BenchRig(honolulu, 10);
    bench.rest(1);
    bench.start("harbour-lane-oil", 1);
    assertThat(bench.last(BatchStarted.class).code()).isEqualTo("20261124-1");
  }
}
