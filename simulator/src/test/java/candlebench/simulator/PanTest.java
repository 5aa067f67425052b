package candlebench.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import candlebench.shared.Mass;
import org.junit.jupiter.api.Test;

class PanTest {
  private static final long SECOND = 1_000_000_000L;

  private final Pan pan = new Pan();

  @Test
  void what_flows_goes_into_the_thing_put_on_last_to_the_picogram() {
    pan.putOn("pot", Mass.ofGrams("450"));
    pan.flow(5, 0);
    for (int step = 1; step <= 777; step++) pan.advanceTo(step * SECOND / 777);
    pan.flow(0, 0);
    pan.advanceTo(2 * SECOND);
    assertThat(pan.of("pot").minus(Mass.ofGrams("455")).abs().picograms()).isLessThanOrEqualTo(1);
    assertThat(pan.truth()).isEqualTo(pan.of("pot"));
  }

  @Test
  void a_pot_lifted_off_takes_its_contents_along_and_brings_them_back() {
    pan.putOn("pot", Mass.ofGrams("450"));
    pan.add(Mass.ofGrams("56"));
    Mass lifted = pan.liftOff("pot");
    assertThat(lifted).isEqualTo(Mass.ofGrams("506"));
    assertThat(pan.truth()).isEqualTo(Mass.ZERO);
    pan.putOn("pot", lifted);
    assertThat(pan.truth()).isEqualTo(Mass.ofGrams("506"));
  }

  @Test
  void what_flows_on_after_the_pot_is_lifted_lies_on_the_bare_pan_until_wiped() {
    pan.putOn("pot", Mass.ofGrams("450"));
    pan.flow(2, 0);
    pan.advanceTo(SECOND);
    pan.liftOff("pot");
    pan.advanceTo(2 * SECOND);
    assertThat(pan.truth()).isEqualTo(Mass.ofGrams("2"));
    assertThat(pan.spilt()).isEqualTo(Mass.ofGrams("2"));
    pan.wipe();
    assertThat(pan.truth()).isEqualTo(Mass.ZERO);
  }

  @Test
  void a_spoon_left_beside_the_pot_counts_but_is_not_in_it() {
    pan.putOn("pot", Mass.ofGrams("450"));
    pan.putOn("spoon", Mass.ofGrams("31"));
    pan.receiveIn("pot");
    pan.add(Mass.ofGrams("3"));
    assertThat(pan.truth()).isEqualTo(Mass.ofGrams("484"));
    assertThat(pan.of("pot")).isEqualTo(Mass.ofGrams("453"));
    assertThat(pan.liftOff("spoon")).isEqualTo(Mass.ofGrams("31"));
  }

  @Test
  void a_hand_a_stream_and_a_knock_press_without_being_there() {
    pan.putOn("pot", Mass.ofGrams("100"));
    pan.lean("sleeve", 9);
    pan.lean("hand", 3);
    assertThat(pan.pressure()).isCloseTo(112, within(1e-9));
    pan.lean("hand", 0);
    pan.lean("sleeve", 0);
    pan.flow(9.81, 0.5);
    assertThat(pan.pressure()).isCloseTo(100.5, within(1e-9));
    pan.flow(0, 0);
    pan.knock(40);
    pan.advanceTo(30_000_000);
    assertThat(Math.abs(pan.pressure() - 100)).isBetween(5.0, 40.0);
    pan.advanceTo(2 * SECOND);
    assertThat(pan.pressure()).isEqualTo(100);
    assertThat(pan.truth()).isEqualTo(Mass.ofGrams("100"));
  }

  @Test
  void the_blow_of_a_dropped_piece_is_its_mass_times_its_speed_over_gravity() {
    pan.putOn("pot", Mass.ofGrams("100"));
    pan.drop(Mass.ofGrams("10"), 0.05);
    assertThat(pan.takeBlows()).isCloseTo(10 * 0.9905 / 9.81, within(0.001));
    assertThat(pan.takeBlows()).isZero();
    assertThat(pan.truth()).isEqualTo(Mass.ofGrams("110"));
  }

  @Test
  void nothing_can_stand_there_twice_or_be_lifted_from_where_it_is_not() {
    pan.putOn("pot", Mass.ofGrams("1"));
    assertThatThrownBy(() -> pan.putOn("pot", Mass.ofGrams("1")))
        .hasMessageContaining("stands on the pan already");
    assertThatThrownBy(() -> pan.liftOff("cup")).hasMessage("no cup stands on the pan");
  }
}
