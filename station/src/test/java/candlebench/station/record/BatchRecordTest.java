package candlebench.station.record;

import static candlebench.station.record.BatchScript.GLASS;
import static candlebench.station.record.BatchScript.OIL;
import static candlebench.station.record.BatchScript.WAX;
import static candlebench.station.record.BatchScript.lots;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;

import candlebench.shared.Mass;
import candlebench.shared.Verdict;
import candlebench.station.batch.Fraction;
import candlebench.station.batch.HarbourLane;
import candlebench.station.guidance.BatchProgress.End;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Wait;
import candlebench.station.guidance.Place;
import candlebench.station.record.Deviation.Kind;
import candlebench.station.record.WeighingLine.Standing;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class BatchRecordTest {
  private static final Map<String, String> LOTS = lots("W-1", "Q-31", "G-9", "K-2");

  private static Mass g(String grams) {
    return Mass.ofGrams(grams);
  }

  private static BatchScript upToOil() {
    return new BatchScript()
        .start("20261125-1", HarbourLane.CANDLE, 3, LOTS)
        .prepared()
        .pot("350.2")
        .part(0, "700")
        .waited(Wait.MELT)
        .reweighed();
  }

  @Test
  void a_batch_that_went_by_its_recipe_has_no_deviations() {
    BatchRecord batch = BatchScript.candles("20261125-1", 3, LOTS).record();
    assertThat(batch.code()).isEqualTo("20261125-1");
    assertThat(batch.batch().end()).isEqualTo(End.DONE);
    assertThat(batch.started()).isEqualTo("2026-11-25T09:00:00+01:00");
    assertThat(batch.end()).isPresent();
    assertThat(batch.deviations()).isEmpty();
    assertThat(batch.partLines(0)).extracting(WeighingLine::net).containsExactly(g("700"));
    assertThat(batch.fills()).containsExactly(g("252.1"), g("252.3"), g("252.1"));
    assertThat(batch.scales()).containsExactly("bench scale");
  }

  @Test
  void the_load_is_told_of_the_wax_and_of_the_total_from_what_is_really_there() {
    BatchRecord batch = upToOil().part(1, "56").waited(Wait.MIX).record();
    LoadReached oil = batch.loads().get(0);
    assertThat(oil.ofWax()).contains(Fraction.percent("8"));
    assertThat(oil.ofTotal()).isEqualTo(Fraction.of(2, 27));
    assertThat(oil.overLimit()).isFalse();
  }

  @Test
  void yield_is_what_went_into_vessels_of_what_went_into_the_pot() {
    BatchRecord batch = BatchScript.candles("20261125-1", 3, LOTS).record();
    assertThat(batch.planned()).isEqualTo(g("756"));
    assertThat(batch.weighedIn()).isEqualTo(g("756"));
    assertThat(batch.filled()).isEqualTo(g("756.5"));
  }

  @Test
  void an_over_pour_that_was_kept_shows_its_load_its_reason_and_that_it_is_over() {
    BatchRecord batch = upToOil()
        .part(1, "75")
        .keep(1, "19", "tested up to 11 %")
        .waited(Wait.MIX)
        .record();
    assertThat(batch.loads().get(0).overLimit()).isTrue();
    assertThat(batch.deviations())
        .extracting(Deviation::kind, Deviation::about, Deviation::amount, Deviation::reason)
        .contains(
            tuple(Kind.OUT_OF_TOLERANCE, OIL, "19 g", ""),
            tuple(Kind.OVER_LIMIT, OIL, "10.71 %", ""))
        .anyMatch(line -> line.toList().contains("tested up to 11 %"));
  }

  @Test
  void a_weight_taken_back_stays_on_the_sheet_and_counts_no_more() {
    BatchRecord batch =
        upToOil().part(1, "57").undone().part(1, "56").waited(Wait.MIX).record();
    assertThat(batch.weighings()).hasSize(3);
    assertThat(batch.weighings().get(1).standing()).isEqualTo(Standing.TAKEN_BACK);
    assertThat(batch.partLines(1)).extracting(WeighingLine::net).containsExactly(g("56"));
    assertThat(batch.inPot()).containsEntry(1, g("56"));
    assertThat(batch.deviations()).extracting(Deviation::kind).containsExactly(Kind.TAKEN_BACK);
  }

  @Test
  void a_weight_that_moved_by_itself_is_marked_as_reopened() {
    BatchScript script = upToOil().part(1, "56");
    BatchRecord batch = script
        .event(new GuidanceEvent.AcceptanceReopened(
            script.now(), new Place(Place.Kind.PART, 1), g("56"), g("56.4")))
        .part(1, "56.4")
        .record();
    assertThat(batch.weighings().get(1).standing()).isEqualTo(Standing.REOPENED);
    assertThat(batch.standing()).hasSize(2);
  }

  @Test
  void which_weighings_stand_is_what_the_bench_itself_counts() {
    BatchScript script = upToOil().part(1, "57").undone().part(1, "56").waited(Wait.MIX);
    BatchRecord batch = script.vessel(0, "252").vessel(1, "252.2").record();
    assertThat(batch.standing())
        .extracting(WeighingLine::written)
        .containsExactlyElementsOf(script.bench().batch().orElseThrow().charge().weights());
  }

  @Test
  void a_weight_corrected_by_hand_counts_anew_and_the_old_one_stays_readable() {
    BatchScript script = upToOil().byHand(1, "65", "scale was silent").waited(Wait.MIX);
    long entry = script.entries().stream()
        .filter(each -> each.event() instanceof GuidanceEvent.WeightAccepted)
        .mapToLong(Recorded::entry)
        .max()
        .orElseThrow();
    BatchRecord batch = script
        .vessel(0, "252")
        .vessel(1, "252")
        .vessel(2, "251")
        .done()
        .corrected(entry, Correctable.WEIGHT, "", "65", "56", "digits swapped")
        .record();
    WeighingLine oil = batch.partLines(1).get(0);
    assertThat(oil.written().net()).isEqualTo(g("65"));
    assertThat(oil.written().verdict()).isEqualTo(Verdict.OVER);
    assertThat(oil.net()).isEqualTo(g("56"));
    assertThat(oil.counts().verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(oil.corrections().get(0).corrected().reason()).isEqualTo("digits swapped");
    assertThat(batch.loads().get(0).ofWax()).contains(Fraction.percent("8"));
    assertThat(batch.weighedIn()).isEqualTo(g("756"));
    assertThat(batch.deviations()).extracting(Deviation::kind).containsExactly(Kind.BY_HAND);
    assertThat(batch.corrections()).hasSize(1);
  }

  @Test
  void a_note_corrected_twice_reads_as_corrected_last() {
    BatchScript script = BatchScript.candles("20261125-1", 1, LOTS).noted("frosting on glas 3");
    long note = script.last();
    BatchRecord batch = script
        .corrected(
            note, Correctable.NOTE, "", "frosting on glas 3", "frosting on glass 2", "number")
        .corrected(
            note, Correctable.NOTE, "", "frosting on glass 2", "frosting on glass 1", "again")
        .record();
    assertThat(batch.remarks()).hasSize(1);
    assertThat(batch.remarks().get(0).text()).isEqualTo("frosting on glass 1");
    assertThat(batch.remarks().get(0).written().text()).isEqualTo("frosting on glas 3");
    assertThat(batch.remarks().get(0).corrections()).hasSize(2);
  }

  @Test
  void lots_of_what_is_weighed_and_of_what_is_counted_reach_every_vessel() {
    BatchRecord batch = BatchScript.candles("20261125-1", 3, LOTS).record();
    List<Integer> all = List.of(1, 2, 3);
    assertThat(batch.lotUses())
        .containsExactlyInAnyOrder(
            new LotUse(WAX, "W-1", g("700"), all),
            new LotUse(OIL, "Q-31", g("56"), all),
            new LotUse(GLASS, "G-9", Mass.ZERO, all),
            new LotUse(BatchRecord.WICK, "K-2", Mass.ZERO, all));
  }

  @Test
  void a_lot_that_was_not_named_is_marked_as_unknown_and_kept() {
    BatchRecord batch =
        BatchScript.candles("20261125-1", 2, Map.of(WAX, "W-1", OIL, "Q-31")).record();
    assertThat(batch.lotUses())
        .filteredOn(LotUse::isUnknown)
        .extracting(LotUse::material)
        .containsExactlyInAnyOrder(GLASS, BatchRecord.WICK);
    assertThat(batch.deviations())
        .extracting(Deviation::kind, Deviation::about)
        .containsExactlyInAnyOrder(
            tuple(Kind.LOT_UNKNOWN, GLASS), tuple(Kind.LOT_UNKNOWN, BatchRecord.WICK));
  }

  @Test
  void a_bottle_that_ran_out_in_mid_pour_splits_the_weighing_between_its_lots() {
    BatchRecord batch = upToOil()
        .lotChanged(OIL, "Q-31", "Q-32", "31.4")
        .lotChanged(OIL, "Q-32", "Q-33", "50")
        .part(1, "56")
        .waited(Wait.MIX)
        .vessel(0, "252")
        .record();
    assertThat(batch.lotUses())
        .filteredOn(use -> use.material().equals(OIL))
        .extracting(LotUse::lot, LotUse::amount)
        .containsExactly(tuple("Q-31", g("31.4")), tuple("Q-32", g("18.6")), tuple("Q-33", g("6")));
  }

  @Test
  void a_lot_changed_in_mid_pour_is_still_split_after_the_weight_was_taken_back_and_taken_again() {
    BatchRecord batch = upToOil()
        .lotChanged(OIL, "Q-31", "Q-32", "31.4")
        .part(1, "55.8")
        .undone()
        .part(1, "56")
        .record();
    assertThat(batch.partLines(1).get(0).lots())
        .containsExactly(new LotShare("Q-31", g("31.4")), new LotShare("Q-32", g("24.6")));
  }

  @Test
  void a_box_of_wicks_that_ran_out_between_vessels_leaves_each_vessel_its_own_lot() {
    BatchRecord batch = upToOil()
        .part(1, "56")
        .waited(Wait.MIX)
        .vessel(0, "252")
        .lotChanged(BatchRecord.WICK, "K-2", "K-3", "0")
        .vessel(1, "252")
        .vessel(2, "251.5")
        .record();
    assertThat(batch.lotUses())
        .filteredOn(use -> use.material().equals(BatchRecord.WICK))
        .extracting(LotUse::lot, LotUse::vessels)
        .containsExactly(tuple("K-2", List.of(1)), tuple("K-3", List.of(2, 3)));
  }

  @Test
  void a_vessel_on_the_scale_keeps_its_lot_though_the_next_box_is_named_while_it_is_filled() {
    BatchScript script = upToOil().part(1, "56").waited(Wait.MIX);
    BatchRecord batch = script
        .emptyVessel(0)
        .lotChanged(GLASS, "G-9", "G-10", "120")
        .fill(0, "252")
        .vessel(1, "252.1")
        .record();
    assertThat(batch.lotUses())
        .filteredOn(use -> use.material().equals(GLASS))
        .extracting(LotUse::lot, LotUse::vessels)
        .containsExactly(tuple("G-9", List.of(1)), tuple("G-10", List.of(2)));
    assertThat(batch.vesselLines().get(0).lots()).containsExactly(new LotShare("G-9", g("252")));
  }

  @Test
  void a_vessels_lot_is_corrected_at_that_vessel_only() {
    BatchScript script = upToOil().part(1, "56").waited(Wait.MIX).vessel(0, "252");
    long first = script.last() - 1;
    BatchRecord batch = script
        .vessel(1, "252.1")
        .corrected(first, Correctable.LOT, "", "G-9", "G-6", "upside down")
        .record();
    assertThat(batch.lotUses())
        .filteredOn(use -> use.material().equals(GLASS))
        .extracting(LotUse::lot, LotUse::vessels)
        .containsExactly(tuple("G-6", List.of(1)), tuple("G-9", List.of(2)));
  }

  @Test
  void a_lot_misread_at_one_weighing_is_corrected_there_only() {
    BatchScript script = upToOil().part(1, "56");
    BatchRecord batch = script
        .corrected(script.last(), Correctable.LOT, "", "Q-31", "Q-13", "digits swapped")
        .record();
    assertThat(batch.partLines(1).get(0).lots()).containsExactly(new LotShare("Q-13", g("56")));
    assertThat(batch.partLines(1).get(0).written().lot()).isEqualTo("Q-31");
    assertThat(batch.partLines(0).get(0).lots()).containsExactly(new LotShare("W-1", g("700")));
  }

  @Test
  void a_lot_misread_at_the_start_is_corrected_wherever_it_was_taken_over() {
    BatchRecord batch = BatchScript.candles("20261125-1", 2, Map.of(OIL, "Q-31", GLASS, "G-9"))
        .corrected(1, Correctable.LOT, OIL, "Q-31", "Q-13", "digits swapped")
        .corrected(1, Correctable.LOT, GLASS, "G-9", "G-6", "upside down")
        .corrected(1, Correctable.LOT, BatchRecord.WICK, "", "K-7", "found the box")
        .record();
    assertThat(batch.lotUses())
        .extracting(LotUse::material, LotUse::lot)
        .containsExactlyInAnyOrder(
            tuple(WAX, ""),
            tuple(OIL, "Q-13"),
            tuple(GLASS, "G-6"),
            tuple(BatchRecord.WICK, "K-7"));
  }

  @Test
  void a_batch_given_up_keeps_what_was_recorded_and_says_why() {
    BatchScript script = upToOil();
    BatchRecord batch = script
        .event(new GuidanceEvent.BatchAbandoned(script.now(), "power cut"))
        .record();
    assertThat(batch.batch().end()).isEqualTo(End.ABANDONED);
    assertThat(batch.deviations())
        .extracting(Deviation::kind, Deviation::reason)
        .contains(tuple(Kind.GIVEN_UP, "power cut"));
    assertThat(batch.weighedIn()).isEqualTo(g("700"));
  }

  @Test
  void entries_that_do_not_begin_with_a_batch_are_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> BatchRecord.of(List.of()));
    List<Recorded> tail = BatchScript.candles("20261125-1", 1, LOTS).entries();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> BatchRecord.of(tail.subList(1, tail.size())));
  }
}
