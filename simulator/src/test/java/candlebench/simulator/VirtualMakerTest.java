package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import candlebench.simulator.Perceived.Told;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;

class VirtualMakerTest {
  private static final long SECOND = 1_000_000_000L;
  private static final long TICK = 10_000_000;

  private final Pan pan = new Pan();
  private long nanos;

  @Test
  void nothing_is_poured_before_it_is_asked_for_and_only_after_a_reaction() {
    VirtualMaker maker = usual(1);
    pan.putOn("pot", Mass.ofGrams("450"));
    run(maker, 3, at -> Perceived.told(Told.NOTHING));
    assertThat(pan.truth()).isEqualTo(Mass.ofGrams("450"));
    run(maker, 0.15, at -> Perceived.told(Told.POUR));
    assertThat(maker.isPouring()).isFalse();
    run(maker, 2, at -> Perceived.told(Told.POUR));
    assertThat(pan.flow()).isBetween(2.0, 20.0);
  }

  @Test
  void slow_lets_a_thin_stream_run_and_stop_ends_it_with_a_wrist_of_a_second_at_most() {
    VirtualMaker maker = usual(2);
    pan.putOn("pot", Mass.ofGrams("450"));
    run(maker, 3, at -> Perceived.told(Told.POUR));
    run(maker, 3, at -> Perceived.told(Told.SLOW));
    assertThat(pan.flow()).isBetween(0.3, 2.0);
    run(maker, 3, at -> Perceived.told(Told.STOP));
    assertThat(pan.flow()).isZero();
    assertThat(maker.isPouring()).isFalse();
  }

  @Test
  void reactions_have_the_median_and_the_spreads_they_claim() {
    List<Double> medians = new ArrayList<>();
    List<Double> within = new ArrayList<>();
    for (int maker = 0; maker < 400; maker++) {
      SplittableRandom random = new SplittableRandom(maker);
      Reactions reactions = new Reactions(MakerTraits.drawn(random), Slips.none(), random.split());
      List<Double> own = new ArrayList<>();
      for (int cue = 0; cue < 41; cue++) own.add(reactions.seconds());
      medians.add(quantile(own, 0.5));
      for (double seconds : own) within.add(Math.log(seconds / quantile(own, 0.5)));
    }
    assertThat(quantile(medians, 0.5)).isCloseTo(0.35, within(0.015));
    assertThat(deviation(medians.stream().map(Math::log).toList())).isCloseTo(0.28, within(0.04));
    assertThat(deviation(within)).isCloseTo(0.15, within(0.01));
  }

  @Test
  void a_moment_foreseen_is_met_far_closer_than_a_sign_is_answered() {
    List<Double> foreseen = new ArrayList<>();
    List<Double> answered = new ArrayList<>();
    for (int seed = 0; seed < 200; seed++) {
      foreseen.add(turnsBackAfter(
          seed,
          at -> at < 3 * SECOND
              ? Perceived.stopIn(Told.POUR, Duration.ofNanos(3 * SECOND - at))
              : Perceived.told(Told.STOP)));
      answered.add(
          turnsBackAfter(seed, at -> Perceived.told(at < 3 * SECOND ? Told.POUR : Told.STOP)));
    }
    assertThat(quantile(foreseen, 0.5)).isCloseTo(0, within(0.025));
    assertThat(deviation(foreseen)).isBetween(0.05, 0.11);
    assertThat(quantile(answered, 0.5)).isCloseTo(0.36, within(0.04));
    assertThat(quantile(foreseen, 0.95)).isLessThan(quantile(answered, 0.10));
  }

  @Test
  void a_countdown_that_changes_is_followed_until_it_is_too_near() {
    VirtualMaker maker = usual(3);
    run(maker, 2, at -> Perceived.stopIn(Told.POUR, Duration.ofNanos(3 * SECOND - at)));
    run(maker, 2.5, at -> Perceived.stopIn(Told.POUR, Duration.ofNanos(5 * SECOND - at)));
    assertThat(maker.isPouring()).isTrue();
    long before = nanos;
    run(maker, 0.4, at -> Perceived.stopIn(Told.POUR, Duration.ofNanos(5 * SECOND - at)));
    assertThat(nanos).isEqualTo(before + 4 * SECOND / 10);
    run(maker, 1.5, at -> Perceived.told(Told.NOTHING));
    assertThat(pan.flow()).as("stopped at 5 s with no other word").isZero();
  }

  @Test
  void a_countdown_that_stays_just_ahead_does_not_put_the_stop_off_for_ever() {
    VirtualMaker maker = usual(4);
    run(maker, 2, at -> Perceived.told(Told.POUR));
    run(maker, 2, at -> Perceived.stopIn(Told.SLOW, Duration.ofMillis(100)));
    assertThat(pan.flow()).isZero();
  }

  @Test
  void who_stopped_too_early_pours_on_when_still_told_to() {
    VirtualMaker maker = usual(5);
    run(maker, 2, at -> Perceived.stopIn(Told.SLOW, Duration.ofMillis(100)));
    Mass early = pan.truth();
    run(maker, 4, at -> Perceived.told(Told.SLOW));
    assertThat(pan.truth().minus(early).roughGrams()).isGreaterThan(0.5);
  }

  @Test
  void drops_are_counted_out_one_by_one_and_asked_again_after_a_look() {
    VirtualMaker maker = usual(6);
    pan.putOn("pot", Mass.ofGrams("450"));
    List<Mass> drops = new ArrayList<>();
    Mass before = pan.truth();
    for (int tick = 0; tick < 500; tick++) {
      step(maker, Perceived.drops(3));
      if (pan.truth().isMoreThan(before)) drops.add(pan.truth().minus(before));
      before = pan.truth();
    }
    assertThat(drops.size())
        .as("three, a look, and some of the next three in 5 s")
        .isBetween(4, 6);
    assertThat(drops).allSatisfy(drop -> assertThat(drop.roughGrams()).isBetween(0.018, 0.045));
    Mass after = pan.truth();
    run(maker, 3, at -> Perceived.told(Told.HOLD_STILL));
    run(maker, 5, at -> Perceived.told(Told.HOLD_STILL));
    assertThat(pan.truth().minus(after).roughGrams())
        .as("at most what was begun")
        .isLessThan(0.1);
  }

  @Test
  void pieces_fall_with_a_blow_and_are_chosen_not_to_be_too_large() {
    VirtualMaker maker = usual(7);
    pan.putOn("pot", Mass.ofGrams("450"));
    double[] blows = new double[1];
    List<Mass> pieces = new ArrayList<>();
    Mass before = pan.truth();
    while (pan.truth().isLessThan(Mass.ofGrams("650"))) {
      double toGo = 650.0 - pan.truth().roughGrams();
      step(maker, Perceived.told(Told.PIECES).withToGo(toGo));
      blows[0] += pan.takeBlows();
      if (pan.truth().isMoreThan(before)) pieces.add(pan.truth().minus(before));
      before = pan.truth();
      assertThat(nanos).isLessThan(600 * SECOND);
    }
    assertThat(pan.truth().roughGrams()).isCloseTo(650, within(1e-9));
    assertThat(pieces)
        .allSatisfy(piece -> assertThat(piece.roughGrams()).isLessThanOrEqualTo(20.0));
    assertThat(pieces.size()).isBetween(12, 40);
    assertThat(blows[0]).as("200 g fallen 5 cm").isCloseTo(200 * 0.101, within(0.2));
  }

  @Test
  void a_pot_is_put_down_and_lifted_with_a_hand_that_is_felt_and_then_gone() {
    VirtualMaker maker = usual(8);
    maker.hand("pot", Mass.ofGrams("450"), false);
    double mostFelt = 0;
    for (int tick = 0; tick < 500; tick++) {
      step(maker, Perceived.told(Told.PLACE));
      if (pan.holds("pot")) mostFelt = Math.max(mostFelt, pan.pressure() - 450);
    }
    assertThat(pan.truth()).isEqualTo(Mass.ofGrams("450"));
    assertThat(mostFelt).isGreaterThan(5);
    assertThat(pan.pressure()).isEqualTo(450);
    assertThat(maker.held()).isEmpty();

    pan.add(Mass.ofGrams("56"));
    run(maker, 5, at -> Perceived.told(Told.LIFT));
    assertThat(pan.truth()).isEqualTo(Mass.ZERO);
    assertThat(pan.pressure()).isZero();
    assertThat(maker.held()).contains(new Held("pot", Mass.ofGrams("506"), false));
    assertThatThrownBy(() -> maker.hand("vessel", Mass.ofGrams("200"), false))
        .hasMessageContaining("holds pot already");
    maker.putAside();
    maker.hand("vessel", Mass.ofGrams("200"), false);
    run(maker, 5, at -> Perceived.told(Told.PLACE));
    assertThat(pan.holds("vessel")).isTrue();
  }

  @Test
  void slips_happen_as_often_as_asked_and_not_at_all_when_off() {
    int late = 0;
    int missed = 0;
    Reactions reactions =
        new Reactions(MakerTraits.usual(), new Slips(0.1, 0.05, 0, 0), new SplittableRandom(9));
    for (int cue = 0; cue < 4000; cue++) {
      double seconds = reactions.seconds();
      if (seconds >= 3) missed++;
      else if (seconds > 0.35 * 1.8) late++;
    }
    assertThat(missed / 4000.0).isCloseTo(0.05, within(0.015));
    assertThat(late / 4000.0).isCloseTo(0.095, within(0.02));

    Reactions never = new Reactions(MakerTraits.usual(), Slips.none(), new SplittableRandom(10));
    for (int cue = 0; cue < 4000; cue++) assertThat(never.seconds()).isLessThan(0.35 * 1.8);
  }

  @Test
  void what_is_spilt_lies_on_the_bare_pan_and_a_spoon_beside_the_pot_and_both_go_again() {
    VirtualMaker clumsy = new VirtualMaker(MakerTraits.usual(), new Slips(0, 0, 1, 1), 11, 0);
    clumsy.hand("pot", Mass.ofGrams("450"), false);
    run(clumsy, 4, at -> Perceived.told(Told.PLACE));
    assertThat(pan.of("spoon").roughGrams()).isBetween(20.0, 40.0);
    run(clumsy, 2, at -> Perceived.told(Told.POUR));
    assertThat(pan.spilt().roughGrams()).isBetween(0.2, 3.0);
    run(clumsy, 90, at -> Perceived.told(Told.HOLD_STILL));
    assertThat(pan.spilt()).isEqualTo(Mass.ZERO);
    assertThat(pan.holds("spoon")).isFalse();
    assertThat(pan.truth()).isEqualTo(pan.of("pot"));
  }

  @Test
  void wax_is_poured_faster_than_oil() {
    VirtualMaker maker = usual(12);
    maker.takes(PourKind.WAX_PITCHER);
    run(maker, 4, at -> Perceived.told(Told.POUR));
    assertThat(pan.flow()).isBetween(6.0, 45.0);
    run(maker, 4, at -> Perceived.told(Told.SLOW));
    assertThat(pan.flow()).isBetween(1.5, 7.0);
  }

  @Test
  void a_maker_who_pours_slowly_by_choice_does_so_from_the_start() {
    VirtualMaker maker =
        new VirtualMaker(MakerTraits.usual().withSlowShare(1), Slips.none(), 14, 0);
    run(maker, 12, at -> Perceived.told(Told.POUR));
    assertThat(pan.truth().roughGrams() / 11).isBetween(1.2, 4.8);
    VirtualMaker other = new VirtualMaker(MakerTraits.usual(), Slips.none(), 14, nanos);
    Mass before = pan.truth();
    run(other, 12, at -> Perceived.told(Told.POUR));
    assertThat(pan.truth().minus(before).roughGrams() / 11).isGreaterThan(4.8);
  }

  @Test
  void the_same_seed_pours_the_same_and_another_does_not() {
    assertThat(poured(20)).isEqualTo(poured(20)).isNotEqualTo(poured(21));
  }

  @Test
  void a_key_is_answered_in_a_second_or_two() {
    VirtualMaker maker = usual(13);
    for (int i = 0; i < 100; i++)
      assertThat((maker.answersAt(nanos) - nanos) / 1e9).isBetween(0.4, 6.0);
  }

  private static Mass poured(long seed) {
    VirtualMakerTest other = new VirtualMakerTest();
    VirtualMaker maker = VirtualMaker.drawn(Slips.tired(), seed);
    other.run(maker, 5, at -> Perceived.told(Told.POUR));
    other.run(maker, 5, at -> Perceived.told(Told.STOP));
    return other.pan.truth();
  }

  /** Seconds from the moment three seconds in until the stream starts to fall. */
  private static double turnsBackAfter(long seed, LongFunction<Perceived> told) {
    VirtualMaker maker = VirtualMaker.drawn(Slips.none(), seed);
    Pan pan = new Pan();
    for (long at = TICK; at < 10 * SECOND; at += TICK) {
      maker.advanceTo(at, told.apply(at), pan);
      if (at > 2 * SECOND && maker.isTurningBack()) return (at - 3 * SECOND) / 1e9;
    }
    throw new AssertionError("never stopped, seed " + seed);
  }

  private VirtualMaker usual(long seed) {
    return new VirtualMaker(MakerTraits.usual(), Slips.none(), seed, 0);
  }

  private void run(Hands hands, double seconds, LongFunction<Perceived> perceived) {
    long until = nanos + Math.round(seconds * 1e9);
    while (nanos < until) step(hands, perceived.apply(nanos));
  }

  private void step(Hands hands, Perceived perceived) {
    nanos += TICK;
    hands.advanceTo(nanos, perceived, pan);
  }

  private static double quantile(List<Double> values, double share) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    return sorted.get((int) (share * (sorted.size() - 1)));
  }

  private static double deviation(List<Double> values) {
    double mean = values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    return Math.sqrt(
        values.stream().mapToDouble(v -> (v - mean) * (v - mean)).average().orElseThrow());
  }
}
