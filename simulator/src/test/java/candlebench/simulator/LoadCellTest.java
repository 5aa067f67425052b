package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LoadCellTest {
  private static final long STEP = 12_500_000;
  private static final CellTraits STILL = new CellTraits(0, 0.3, 0, 0, 0, 0);

  private final Pan pan = new Pan();
  private long nanos;

  @Test
  void a_step_passes_the_filter_by_its_time_constant() {
    LoadCell cell = cell(STILL);
    pan.putOn("pot", Mass.ofGrams("100"));
    assertThat(feel(cell, 0.3)).isCloseTo(63.2, within(0.5));
    assertThat(feel(cell, 1.2)).isCloseTo(99.3, within(0.1));
  }

  @Test
  void a_dropped_piece_overshoots_by_its_blow_and_comes_down_to_its_weight() {
    LoadCell cell = cell(STILL);
    pan.putOn("pot", Mass.ofGrams("100"));
    feel(cell, 5);
    pan.drop(Mass.ofGrams("10"), 0.30);
    double most = 0;
    for (int i = 0; i < 80; i++) most = Math.max(most, feel(cell, STEP / 1e9));
    // The blow is 10 g at 2.43 m/s, 2.47 g s: at first 8.2 g in a filter of 0.3 s, less than the
    // weight that follows.
    assertThat(most).isLessThan(110.01);
    pan.drop(Mass.ofGrams("10"), 1.0);
    most = 0;
    for (int i = 0; i < 80; i++) most = Math.max(most, feel(cell, STEP / 1e9));
    assertThat(most).as("4.5 g s is 15 g at first, more than the weight").isGreaterThan(123);
    assertThat(feel(cell, 3)).isCloseTo(120, within(0.01));
  }

  @Test
  void a_fast_stream_reads_high_while_it_runs_and_what_is_in_the_air_is_already_counted() {
    LoadCell cell = cell(new CellTraits(0, 0, 0, 0, 0, 0));
    pan.putOn("pot", Mass.ofGrams("100"));
    pan.flow(10, 0.3);
    double felt = feel(cell, 1);
    assertThat(felt - pan.truth().roughGrams()).isCloseTo(0.306, within(0.001));
    pan.flow(0, 0);
    assertThat(feel(cell, 0.1)).isCloseTo(pan.truth().roughGrams(), within(1e-9));
  }

  @Test
  void a_hot_pot_walks_light_while_it_stands_there_and_the_pan_recovers_after_it() {
    LoadCell cell = cell(new CellTraits(0, 0, 0, 0, 0, 0.5));
    pan.putOnHot("pot", Mass.ofGrams("800"));
    assertThat(feel(cell, 10)).isBetween(799.90, 799.99);
    assertThat(feel(cell, 600)).isCloseTo(799.5, within(0.01));
    pan.liftOff("pot");
    assertThat(feel(cell, 1)).isCloseTo(-0.5, within(0.01));
    assertThat(feel(cell, 600)).isCloseTo(0, within(0.01));
  }

  /** OIML R 60 5.5.1: by 30 min a cell of 3,000 steps may creep by 0.7 of its permissible error, 0.7 g at 3 kg. */
  @Test
  void creep_under_full_load_stays_within_what_a_cell_may_do() {
    LoadCell cell =
        cell(new CellTraits(0, 0, 0, ScaleTraits.benchThreeKilograms().cell().creepShare(), 0, 0));
    pan.putOn("weight", Mass.ofGrams("3000"));
    double start = feel(cell, 5);
    double after = feel(cell, 1800);
    assertThat(after - start).isBetween(0.1, 0.7);
  }

  @Test
  void a_draught_pushes_by_what_it_was_set_to_and_dies_away() {
    LoadCell cell = cell(new CellTraits(0, 0, 0, 0, 0, 0));
    pan.draught(0.4);
    feel(cell, 5);
    double[] pushed = new double[20_000];
    for (int i = 0; i < pushed.length; i++) pushed[i] = feel(cell, STEP / 1e9);
    assertThat(Figures.deviation(pushed)).isCloseTo(0.4, within(0.06));
    pan.draught(0);
    assertThat(feel(cell, 15)).isCloseTo(0, within(0.001));
  }

  private LoadCell cell(CellTraits traits) {
    return new LoadCell(traits, pan, new SplittableRandom(1));
  }

  private double feel(LoadCell cell, double seconds) {
    long until = nanos + Math.round(seconds * 1e9);
    double felt = 0;
    while (nanos < until) {
      nanos += STEP;
      felt = cell.feel(nanos);
    }
    return felt;
  }
}
