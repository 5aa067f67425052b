package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.shared.Tolerance;
import candlebench.station.batch.Load;
import candlebench.station.batch.Loss;
import candlebench.station.batch.PartKind;
import candlebench.station.batch.Recipe;
import candlebench.station.batch.Recipes;
import candlebench.station.batch.VesselKind;
import candlebench.station.batch.Waits;
import candlebench.station.guidance.BenchSetup;
import candlebench.station.guidance.GuidanceEvent;
import candlebench.station.guidance.GuidanceEvent.BatchDone;
import candlebench.station.guidance.GuidanceEvent.MixCompared;
import candlebench.station.guidance.GuidanceEvent.VesselsLeftOut;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import candlebench.station.guidance.MakerCommand;
import candlebench.station.guidance.MixStanding;
import candlebench.station.guidance.Place;
import candlebench.station.guidance.Prompt;
import candlebench.station.record.BatchRecord;
import candlebench.station.record.Deviation;
import candlebench.station.record.LossLearnt;
import candlebench.station.record.Recorded;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Twelve vessels of 227 g: the mix left against the vessels left. */
class EnoughMixTest {
  private static final Recipe RECIPE = new Recipe(
      "twelve",
      "twelve",
      List.of(Recipes.WAX, Recipes.part("oil", PartKind.OIL, Load.ofWax("8"))),
      new VesselKind("glass", Mass.ofGrams("227"), Tolerance.ofGrams("3", "3")),
      true,
      Loss.NONE,
      Waits.NONE,
      "");

  private final VirtualBench bench =
      new VirtualBench(VirtualBench.Make.of(BenchSetup.of(List.of(RECIPE))));

  /** Wax and oil as planned, 2724 g in all, on a scale of 6 kg. */
  private void mixed() {
    bench.run(3);
    bench.start("twelve", 12);
    bench.run(1);
    bench.pan.putOn("pot", Mass.ofGrams("250"));
    bench.runUntil(Prompt.Kind.ADD_PART, 15);
    bench.pan.add(Mass.ofGrams("2522.2"));
    taken(1);
    bench.pan.add(Mass.ofGrams("201.8"));
    bench.runUntil(Prompt.Kind.PLACE_VESSEL, 15);
    bench.pan.liftOff("pot");
    bench.run(2);
  }

  private WeightAccepted taken(int count) {
    for (int tenth = 0; tenth < 200; tenth++) {
      List<WeightAccepted> all = bench.all(WeightAccepted.class);
      if (all.size() >= count) return all.get(all.size() - 1);
      bench.run(0.1);
      if (tenth % 40 == 39 && bench.prompt().step() == Prompt.Kind.OVER)
        bench.say(new MakerCommand.Choose("keep", ""));
    }
    throw new AssertionError(bench.prompt());
  }

  private Mass fill(int vessel, String grams) {
    bench.pan.putOn("glass", Mass.ofGrams("180"));
    bench.runUntil(Prompt.Kind.FILL_VESSEL, 15);
    bench.pan.add(Mass.ofGrams(grams));
    WeightAccepted weight = taken(2 + vessel);
    bench.pan.liftOff("glass");
    bench.run(1.5);
    return weight.target();
  }

  @Test
  void three_grams_more_in_each_is_said_by_the_fourth_vessel_and_the_rest_get_evenly_less() {
    mixed();
    for (int vessel = 1; vessel <= 3; vessel++) fill(vessel, "230");
    MixCompared said = bench.all(MixCompared.class).get(0);
    assertThat(said.vessel()).isLessThanOrEqualTo(3);
    assertThat(said.standing()).isEqualTo(MixStanding.EVENLY_LESS);
    assertThat(bench.prompt().detail().orElseThrow().key()).isEqualTo("detail.mix-evenly");
    // 2724 g less three times 230 g, over nine vessels.
    for (int vessel = 4; vessel <= 12; vessel++)
      assertThat(fill(vessel, "226").roughGrams()).isCloseTo(226, within(0.4));
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    assertThat(bench.all(MixCompared.class)).hasSize(1);
    assertThat(bench.all(VesselsLeftOut.class)).isEmpty();
  }

  private List<Recorded> recorded() {
    List<Recorded> entries = new ArrayList<>();
    for (GuidanceEvent event : bench.events)
      if (!entries.isEmpty() || event instanceof GuidanceEvent.BatchStarted)
        entries.add(new Recorded(entries.size() + 1, "2026-11-25T09:00:00+01:00", event));
    return entries;
  }

  @Test
  void what_was_spilt_is_missing_for_the_vessels_left_and_teaches_no_loss() {
    mixed();
    fill(1, "227");
    assertThat(bench.say(new MakerCommand.NoteSpill(Mass.ofGrams("5000")))).isPresent();
    assertThat(bench.say(new MakerCommand.NoteSpill(Mass.ofGrams("20")))).isEmpty();
    assertThat(bench.last(MixCompared.class).standing()).isEqualTo(MixStanding.EVENLY_LESS);
    // 2724 g less 227 g and 20 g, over eleven vessels.
    for (int vessel = 2; vessel <= 12; vessel++)
      assertThat(fill(vessel, "225.2").roughGrams()).isCloseTo(225.2, within(0.4));
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    BatchRecord spilt = BatchRecord.of(recorded());
    assertThat(spilt.deviations()).extracting(Deviation::kind).contains(Deviation.Kind.MIX_SPILT);
    assertThat(LossLearnt.of("twelve", List.of(spilt, spilt, spilt))).isEmpty();
  }

  @Test
  void three_batches_without_a_spill_teach_what_stayed_in_the_pot() {
    mixed();
    for (int vessel = 1; vessel <= 12; vessel++) fill(vessel, "226");
    BatchRecord batch = BatchRecord.of(recorded());
    assertThat(LossLearnt.of("twelve", List.of(batch, batch))).isEmpty();
    LossLearnt learnt = LossLearnt.of("twelve", List.of(batch, batch, batch)).orElseThrow();
    assertThat(learnt.loss().perPot().roughGrams()).isCloseTo(12, within(1.5));
    assertThat(learnt.batches()).isEqualTo(3);
  }

  @Test
  void where_it_cannot_last_the_last_vessel_may_be_left_out_and_the_others_are_full() {
    mixed();
    for (int vessel = 1; vessel <= 6; vessel++) fill(vessel, vessel < 5 ? "229" : "236");
    // The last two were too full and were kept: 1336 g are left for six vessels, 222.7 g each.
    assertThat(bench.last(MixCompared.class).standing()).isEqualTo(MixStanding.TOO_LITTLE);
    Prompt.Option way = bench.prompt().choices().get(0);
    assertThat(way.id()).isEqualTo("leave-out");
    assertThat(bench.say(new MakerCommand.Choose("leave-out", ""))).isEmpty();
    assertThat(bench.last(VesselsLeftOut.class).vessels()).isEqualTo(1);
    assertThat(bench.prompt().choices()).isEmpty();
    for (int vessel = 7; vessel <= 11; vessel++)
      assertThat(fill(vessel, "227")).isEqualTo(Mass.ofGrams("227"));
    assertThat(bench.all(BatchDone.class)).hasSize(1);
    assertThat(bench.all(WeightAccepted.class).stream()
            .filter(weight -> weight.place().kind() == Place.Kind.VESSEL))
        .hasSize(11);
  }
}
