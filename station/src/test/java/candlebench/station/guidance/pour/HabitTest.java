package candlebench.station.guidance.pour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class HabitTest {
  private final Habit unlearnt = new Habit(1.3, 0.3, 0.2);

  @Test
  void ten_alike_pours_are_learnt() {
    Habit habit = unlearnt;
    for (int i = 0; i < 10; i++) habit = habit.learn(0.8, 0.2, 3.5);
    assertThat(habit.usual()).isCloseTo(0.8, within(0.1));
    assertThat(habit.uncertainty()).isLessThan(unlearnt.uncertainty());
  }

  @Test
  void one_freak_pour_moves_it_by_less_than_a_fifth() {
    for (double freak : new double[] {0.2, 3.5, 40, -40}) {
      Habit after = unlearnt.learn(freak, 0.2, 3.5);
      assertThat(Math.abs(after.usual() / unlearnt.usual() - 1)).isLessThan(0.2);
    }
  }

  @Test
  void a_freak_pour_makes_it_less_sure_not_more() {
    Habit learnt = unlearnt;
    for (int i = 0; i < 10; i++) learnt = learnt.learn(0.8, 0.2, 3.5);
    assertThat(learnt.learn(3.5, 0.2, 3.5).spread()).isGreaterThan(learnt.spread());
  }

  @Test
  void it_stays_within_its_bounds() {
    Habit habit = unlearnt;
    for (int i = 0; i < 50; i++) habit = habit.learn(40, 0.2, 3.5);
    assertThat(habit.usual()).isLessThanOrEqualTo(3.5);
  }
}
